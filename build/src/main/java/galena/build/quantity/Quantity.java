package galena.build.quantity;

/**
 * A number with its unit, and the text that it was read from.
 *
 * @param value in the SI unit of {@code unit} (kelvin for temperatures, a fraction for percent), finite
 * @param unit what it measures
 * @param text as written, without surrounding blanks
 */
public record Quantity(double value, Unit unit, String text) {
    public Quantity {
        if (!Double.isFinite(value)) throw new IllegalArgumentException("a quantity is finite, not " + value);
    }

    /** A quantity from a number, with the shortest text that reads back to the same number. */
    public static Quantity of(double value, Unit unit) {
        return new Quantity(value, unit, Engineering.exact(value, unit));
    }

    /** Reads one quantity of the given kind: {@code 4k7}, {@code 100 µH}. */
    public static Quantity read(String text, Unit unit) throws BadQuantity {
        String trimmed = Spelling.trim(text);
        return new Quantity(Spelling.read(trimmed, unit), unit, trimmed);
    }

    @Override
    public String toString() {
        return text;
    }
}
