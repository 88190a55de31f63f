package galena.trade.coil;

import static galena.trade.wire.SkinEffect.MU_0;
import static java.lang.Math.PI;
import static java.lang.Math.sqrt;

import galena.trade.wire.OutOfRange;

/**
 * Cylindrical current sheets: L = µ₀N²πa²K/ℓ with K after H. Nagaoka, J. Coll. Sci. Tokyo 27 (1909), art. 6, and the
 * mutual inductance of coaxial sheets by integration of {@link CoaxialLoops}. What round wire does instead of a sheet
 * is in {@link RoundWire}.
 */
public final class CurrentSheet {
    /** Past it E − k leaves fewer than nine digits. */
    private static final double FLATTEST = 1000;

    private CurrentSheet() {}

    /**
     * Inductance of a sheet (H).
     *
     * @param turns number of turns
     * @param radius axis to sheet (m)
     * @param length turns times pitch (m)
     * @throws OutOfRange when diameter/length exceeds 1000
     */
    public static double inductance(double turns, double radius, double length) {
        return MU_0 * turns * turns * PI * radius * radius / length * nagaoka(2 * radius / length);
    }

    /**
     * Nagaoka's K against u = diameter/length, 0 to 1000: 4/(3πk′)·[(k′²/k²)(K − E) + E − k] with k² = u²/(1 + u²).
     * (K − E)/k² is taken as one Carlson integral, so nothing cancels in long coils.
     */
    public static double nagaoka(double u) {
        OutOfRange.require("diameter/length", u, 0, FLATTEST, "So flat a coil is a loop: give it its true pitch.");
        double m = u * u / (1 + u * u), m1 = 1 / (1 + u * u);
        double bigD = CoaxialLoops.bigD(m1), bigE = CoaxialLoops.bigK(m1) - m * bigD;
        return 4 / (3 * PI * sqrt(m1)) * (m1 * bigD + bigE - sqrt(m));
    }

    /**
     * Mutual inductance of two coaxial sheets of one turn per metre each (H·m²/m²): multiply by both turns per metre.
     *
     * @param radius1 of one (m)
     * @param radius2 of the other, not equal (m)
     */
    static double mutualPerTurnsPerMetre(
            double radius1, double start1, double end1, double radius2, double start2, double end2) {
        return Bands.interaction(t -> CoaxialLoops.mutual(radius1, radius2, t), start1, end1, start2, end2);
    }
}
