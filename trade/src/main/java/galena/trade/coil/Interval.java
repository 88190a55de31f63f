package galena.trade.coil;

import galena.trade.wire.OutOfRange;

/**
 * A figure with what it may lie between.
 *
 * @param value best figure
 * @param low least that the uncertainties allow
 * @param high most that they allow
 */
public record Interval(double value, double low, double high) {
    public Interval {
        OutOfRange.require("low end of an interval", low, -Double.MAX_VALUE, value, "Low, value, high must ascend.");
        OutOfRange.require("high end of an interval", high, value, Double.MAX_VALUE, "Low, value, high must ascend.");
    }

    /** A figure known exactly. */
    public static Interval exactly(double value) {
        return new Interval(value, value, value);
    }

    /** A positive figure known within ± a fraction of itself. */
    public static Interval within(double value, double fraction) {
        OutOfRange.require("uncertainty as a fraction", fraction, 0, 0.9, "Give 0.02 for 2 %.");
        return new Interval(value, value * (1 - fraction), value * (1 + fraction));
    }

    /** The three figures multiplied by a positive number. */
    public Interval times(double factor) {
        OutOfRange.requirePositive("factor", factor);
        return new Interval(value * factor, low * factor, high * factor);
    }

    /** Widened by ± a fraction of the value. */
    public Interval widened(double fraction) {
        return new Interval(value, low - value * fraction, high + value * fraction);
    }
}
