package galena.engine.law;

/**
 * exp(u), continued by its tangent above u = 80. A silicon junction at u = 80 would carry some 10²⁰ A: no solution lies
 * there, but an iterate on its way may, and must stay finite.
 */
final class Exponential {
    private static final double TOP = 80;
    private static final double AT_TOP = Math.exp(TOP);

    /** Ohms of a signal circuit's branch: where a junction's slope is as steep as this, it begins to decide. */
    private static final double YARDSTICK = 1e3;

    private Exponential() {}

    /** Where saturation · exp(v/width) begins to bend against a signal circuit's resistances, V. */
    static double knee(double saturation, double width) {
        return width * Math.log(width / (Math.sqrt(2) * saturation * YARDSTICK));
    }

    /**
     * How far a tangent laid at one voltage can be believed: to the voltage at which the law itself carries the current that the
     * tangent foresees further up. Without it Newton's method, thrown far up an exponential, comes down by one width a step.
     *
     * @param from where the tangent was laid, V
     * @param to where it leads, V
     * @param width volts in which the current grows by e
     * @param knee of {@link #knee}
     */
    static double led(double from, double to, double width, double knee) {
        double widths = (to - from) / width;
        if (to <= knee || widths <= 1) return to;
        return Math.min(to, Math.max(knee, from + width * Math.log1p(widths)));
    }

    static double value(double u) {
        return u < TOP ? Math.exp(u) : AT_TOP * (1 + (u - TOP));
    }

    /** The derivative, given the value. */
    static double slope(double u, double value) {
        return u < TOP ? value : AT_TOP;
    }
}
