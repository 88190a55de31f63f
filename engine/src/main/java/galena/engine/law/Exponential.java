package galena.engine.law;

/**
 * exp(u), continued by its tangent above u = 80. A silicon junction at u = 80 would carry some 10²⁰ A: no solution lies
 * there, but an iterate on its way may, and must stay finite.
 */
final class Exponential {
    private static final double TOP = 80;
    private static final double AT_TOP = Math.exp(TOP);

    private Exponential() {}

    static double value(double u) {
        return u < TOP ? Math.exp(u) : AT_TOP * (1 + (u - TOP));
    }

    /** The derivative, given the value. */
    static double slope(double u, double value) {
        return u < TOP ? value : AT_TOP;
    }
}
