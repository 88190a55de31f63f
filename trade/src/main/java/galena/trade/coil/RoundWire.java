package galena.trade.coil;

import static galena.trade.wire.SkinEffect.MU_0;
import static java.lang.Math.log;

/**
 * From a current sheet to round wire: ΔL = −µ₀aN(A + B), E. B. Rosa, Bull. Bur. Stand. 2 (1906) p. 161; F. W. Grover,
 * Inductance Calculations (1946). A mends the self-inductance of a turn, B the mutual ones.
 */
final class RoundWire {
    private RoundWire() {}

    /**
     * Change of inductance (H).
     *
     * @param internal internal inductance over its low-frequency value, 1 for uniform current, 0 for a skin
     */
    static double correction(double turns, double radius, double pitch, double diameter, double internal) {
        return -MU_0 * radius * turns * (selfTerm(diameter / pitch, internal) + mutualTerm(turns));
    }

    /** A = 5/4 − ln(2p/d) for uniform current, 3/2 − ln(2p/d) for current in the skin. */
    static double selfTerm(double diameterOverPitch, double internal) {
        return 1.5 - internal / 4 - log(2 / diameterOverPitch);
    }

    /**
     * B = (2/N)·Σ (N − m)·(ln m − ln R_m) over m below N, R_m the geometric mean distance of two tapes of one pitch's
     * width, m pitches apart in a plane. Holds, and is continuous, for part turns.
     */
    static double mutualTerm(double turns) {
        double sum = 0;
        for (int m = 1; m < turns; m++) sum += (turns - m) * (log(m) - logTapeDistance(m));
        return 2 * sum / turns;
    }

    /** ln R_m = ½[(m+1)²ln(m+1) + (m−1)²ln(m−1) − 2m²ln m] − 3/2, its series −1/(12m²) − 1/(60m⁴) beyond 100. */
    private static double logTapeDistance(int m) {
        if (m > 100) return log(m) - 1 / (12.0 * m * m) - 1 / (60.0 * m * m * m * m);
        double below = m == 1 ? 0 : (m - 1.0) * (m - 1) * log(m - 1);
        return ((m + 1.0) * (m + 1) * log(m + 1) + below - 2.0 * m * m * log(m)) / 2 - 1.5;
    }
}
