package galena.trade.coil;

import static galena.trade.wire.SkinEffect.MU_0;
import static java.lang.Math.PI;

import galena.trade.wire.OutOfRange;

/**
 * Straight round wires: self-inductance, E. B. Rosa, Bull. Bur. Stand. 4 (1908) p. 301; mutual inductance of parallel
 * filaments by Neumann's integral. A lead has no inductance of its own until the loop it closes is known; these are the
 * parts that such a loop is added up from.
 */
public final class StraightWire {
    private StraightWire() {}

    /**
     * Partial self-inductance (H): (µ₀/2π)·[l·ln((l + √(l² + r²))/r) − √(l² + r²) + r + internal·l/4].
     *
     * @param length l (m)
     * @param diameter of the wire, not more than a fifth of the length (m)
     * @param internal 1 for uniform current, 0 for current in the skin
     */
    public static double inductance(double length, double diameter, double internal) {
        OutOfRange.require("wire diameter/length", diameter / length, 1e-9, 0.2, "A shorter stub is not a wire.");
        OutOfRange.require("share of internal inductance", internal, 0, 1, "1 at low frequency, 0 for a skin.");
        double r = diameter / 2, far = Math.hypot(length, r);
        return MU_0 / (2 * PI) * (length * Math.log((length + far) / r) - far + r + internal * length / 4);
    }

    /**
     * Mutual inductance of two parallel filaments, each centred on the same cross-line (H).
     *
     * @param length1 of one (m)
     * @param length2 of the other (m)
     * @param distance between them (m)
     */
    static double centredMutual(double length1, double length2, double distance) {
        double apart = Math.abs(length1 - length2) / 2, over = (length1 + length2) / 2;
        return MU_0 / (2 * PI) * (neumann(over, distance) - neumann(apart, distance));
    }

    /** Second integral of 1/√(t² + ρ²). */
    private static double neumann(double t, double rho) {
        double q = t / rho;
        return t * Math.log(q + Math.sqrt(1 + q * q)) - Math.hypot(t, rho);
    }
}
