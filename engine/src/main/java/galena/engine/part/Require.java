package galena.engine.part;

/** Checks of part values: what was found, what is allowed. */
final class Require {
    private Require() {}

    static void positive(String part, String what, double value, String unit) {
        if (!(value > 0) || Double.isInfinite(value)) refuse(part, what, value, unit, "must be above zero and finite");
    }

    static void notNegative(String part, String what, double value, String unit) {
        if (!(value >= 0) || Double.isInfinite(value))
            refuse(part, what, value, unit, "must be zero or above, and finite");
    }

    static void finite(String part, String what, double value, String unit) {
        if (!Double.isFinite(value)) refuse(part, what, value, unit, "must be finite");
    }

    static void within(String part, String what, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) {
            refuse(part, what, value, unit, "must lie within " + low + " and " + high);
        }
    }

    static void named(String name) {
        if (name.isBlank()) throw new IllegalArgumentException("a part has no name: give it one");
    }

    private static void refuse(String part, String what, double value, String unit, String rule) {
        throw new IllegalArgumentException(
                part + ": " + what + " " + value + (unit.isEmpty() ? "" : " " + unit) + " " + rule);
    }
}
