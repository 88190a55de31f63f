package galena.signal;

import java.util.function.DoubleUnaryOperator;

/**
 * A number and its 95 % interval, all three in the same unit.
 *
 * @param value best single value
 * @param low lower end of the interval
 * @param high upper end of the interval
 */
public record Estimate(double value, double low, double high) {
    /** Half the width of a 95 % interval in standard deviations of a normal law. */
    public static final double NORMAL_95 = 1.959963984540054;

    public Estimate {
        if (!(low <= value && value <= high) || Double.isInfinite(low) || Double.isInfinite(high)) {
            throw new IllegalArgumentException(
                    "An interval needs finite low <= value <= high, got " + low + ", " + value + ", " + high);
        }
    }

    /**
     * @param value best value
     * @param sigma its standard deviation, normally distributed
     */
    public static Estimate normal(double value, double sigma) {
        return new Estimate(value, value - NORMAL_95 * sigma, value + NORMAL_95 * sigma);
    }

    /** The estimate of f(x) for a monotone f, rising or falling. */
    public Estimate map(DoubleUnaryOperator f) {
        double a = f.applyAsDouble(low), b = f.applyAsDouble(high);
        return new Estimate(f.applyAsDouble(value), Math.min(a, b), Math.max(a, b));
    }

    /** The same value with an independent error joined to it, given by its own 95 % half-width (same unit). */
    public Estimate joined(double halfWidth) {
        return new Estimate(
                value, value - Math.hypot(value - low, halfWidth), value + Math.hypot(high - value, halfWidth));
    }

    /** Whether a number lies in the interval. */
    public boolean covers(double truth) {
        return low <= truth && truth <= high;
    }

    /** Half the width of the interval. */
    public double halfWidth() {
        return (high - low) / 2;
    }
}
