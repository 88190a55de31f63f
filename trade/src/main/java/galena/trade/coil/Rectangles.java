package galena.trade.coil;

import static galena.trade.wire.SkinEffect.MU_0;

/** Coaxial rectangles of thin wire with parallel sides, added up from straight ones: Grover (1946). */
final class Rectangles {
    private Rectangles() {}

    /**
     * Self-inductance (H). Sides by the thin-wire form (µ₀/2π)l[ln(2l/b) − 1 + internal/4], in which what a true corner
     * adds and the end term b takes away are both left out.
     *
     * @param b radius of the wire (m)
     * @param internal 1 for uniform current, 0 for current in the skin
     */
    static double inductance(double width, double height, double b, double internal) {
        return 2
                * (side(width, b, internal)
                        + side(height, b, internal)
                        - StraightWire.centredMutual(width, width, height)
                        - StraightWire.centredMutual(height, height, width));
    }

    private static double side(double length, double b, double internal) {
        return MU_0 / (2 * Math.PI) * length * (Math.log(2 * length / b) - 1 + internal / 4);
    }

    /** Mutual inductance (H) of two, not coinciding, {@code apart} along the axis (m). */
    static double mutual(double w1, double h1, double w2, double h2, double apart) {
        return 2 * (pairOfSides(w1, w2, h1, h2, apart) + pairOfSides(h1, h2, w1, w2, apart));
    }

    private static double pairOfSides(double length1, double length2, double across1, double across2, double apart) {
        double near = Math.hypot((across1 - across2) / 2, apart), far = Math.hypot((across1 + across2) / 2, apart);
        return StraightWire.centredMutual(length1, length2, near) - StraightWire.centredMutual(length1, length2, far);
    }
}
