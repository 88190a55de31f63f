package galena.trade.device;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Minimum, typical and maximum of one quantity in SI, as far as printed, and the rows they were taken from. Of a
 * negative voltage the value nearer to zero is the minimum, as sheets have it.
 *
 * @param rows the printed rows used; empty when nothing is printed
 */
public record Range(OptionalDouble min, OptionalDouble typ, OptionalDouble max, List<Printed> rows) {
    /** Nothing is printed. */
    public static final Range NONE =
            new Range(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), List.of());

    /** Typical over maximum of capacitances: the median of the rows of this library that print both, rounded. */
    public static final double TYPICAL_OF_MAXIMUM = 0.6;

    /** Typical over minimum of transconductances: the median of the rows that print both, rounded. */
    public static final double TYPICAL_OF_MINIMUM = 1.2;

    public Range {
        rows = List.copyOf(rows);
        ordered(min, typ);
        ordered(typ, max);
        ordered(min, max);
    }

    private static void ordered(OptionalDouble small, OptionalDouble large) {
        if (small.isPresent() && large.isPresent() && Math.abs(small.getAsDouble()) > Math.abs(large.getAsDouble())) {
            throw new IllegalArgumentException(
                    "minimum, typical, maximum are out of order: " + small.getAsDouble() + ", " + large.getAsDouble());
        }
    }

    public boolean isKnown() {
        return min.isPresent() || typ.isPresent() || max.isPresent();
    }

    /** The same without signs. */
    public Range magnitude() {
        return new Range(map(min, Math::abs), map(typ, Math::abs), map(max, Math::abs), rows);
    }

    /**
     * The typical device: as printed, else the geometric mean of both limits, else none. For quantities that spread by
     * ratio (currents, transconductances, capacitances).
     */
    public OptionalDouble typicalByRatio() {
        if (typ.isPresent() || min.isEmpty() || max.isEmpty()) return typ;
        return OptionalDouble.of(Math.signum(max.getAsDouble()) * Math.sqrt(min.getAsDouble() * max.getAsDouble()));
    }

    /** The typical device of a quantity that spreads by difference (junction voltages): arithmetic mean of limits. */
    public OptionalDouble typicalByDifference() {
        if (typ.isPresent() || min.isEmpty() || max.isEmpty()) return typ;
        return OptionalDouble.of((min.getAsDouble() + max.getAsDouble()) / 2);
    }

    /** As {@link #typicalByRatio}, else estimated from the one limit printed, else none. */
    public OptionalDouble typicalOrEstimate() {
        OptionalDouble typical = typicalByRatio();
        if (typical.isPresent()) return typical;
        if (max.isPresent()) return map(max, x -> TYPICAL_OF_MAXIMUM * x);
        return map(min, x -> TYPICAL_OF_MINIMUM * x);
    }

    /** How {@link #typicalOrEstimate} came about, for a {@link Step}. */
    public String typicalInWords() {
        if (typ.isPresent()) return "typical value as printed";
        if (min.isPresent() && max.isPresent()) return "mean of the printed limits";
        if (max.isPresent()) return "only a maximum is printed; " + TYPICAL_OF_MAXIMUM + " of it taken as typical";
        if (min.isPresent()) return "only a minimum is printed; " + TYPICAL_OF_MINIMUM + " times it taken as typical";
        return "not printed";
    }

    private static OptionalDouble map(OptionalDouble value, DoubleUnaryOperator change) {
        return value.isPresent() ? OptionalDouble.of(change.applyAsDouble(value.getAsDouble())) : value;
    }
}
