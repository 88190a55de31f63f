package galena.trade.wire;

import org.hipparchus.complex.Complex;

/**
 * Alternating current in one straight round conductor, exactly: its own field (skin effect) and a field across it from
 * elsewhere (proximity effect). With b the radius, δ the skin depth and x = b·√2/δ = d/(√2·δ), everything follows from
 * Bessel functions of kb = x·e^(−jπ/4): Kelvin's solution, as in S. Ramo and others, Fields and Waves, and S.
 * Butterworth, Exp. Wireless 3 (1926). Non-magnetic metal, displacement current left out.
 *
 * <p>Handbooks tabulate against x (Terman, NBS Circular 74) or d/δ = √2·x; doors here take x.
 */
public final class SkinEffect {
    public static final double MU_0 = 4e-7 * Math.PI;

    /** Beyond it a strand is thousands of skin depths thick; nothing in a small transmitter is. */
    private static final double THICKEST = 5000;

    /** Below it every ratio differs from its limit by less than 1e-13. */
    private static final double THIN = 1e-3;

    private static final Complex MINUS_45_DEGREES = new Complex(Math.sqrt(0.5), -Math.sqrt(0.5));

    private SkinEffect() {}

    /**
     * Skin depth δ = √(2ρ/(ωµ0)) (m).
     *
     * @param resistivity Ω m
     * @param frequency Hz, more than 0
     */
    public static double depth(double resistivity, double frequency) {
        OutOfRange.requirePositive("resistivity (ohm m)", resistivity);
        OutOfRange.requirePositive("frequency (Hz)", frequency);
        return Math.sqrt(resistivity / (Math.PI * frequency * MU_0));
    }

    /**
     * The tables' argument x = d/(√2·δ); 0 at direct current.
     *
     * @param diameter of the conductor (m)
     * @param resistivity Ω m
     * @param frequency Hz, 0 or more
     */
    public static double argument(double diameter, double resistivity, double frequency) {
        OutOfRange.require("frequency (Hz)", frequency, 0, Double.MAX_VALUE, "Give a frequency of 0 or more.");
        return frequency == 0 ? 0 : diameter / (Math.sqrt(2) * depth(resistivity, frequency));
    }

    /** Resistance over direct-current resistance, H(x) = Re[(kb/2)·J0(kb)/J1(kb)]. */
    public static double resistanceRatio(double x) {
        return check(x) < THIN ? 1 : kb(x).divide(ratio(1, x).multiply(2)).getReal();
    }

    /** Internal inductance over its low-frequency value µ0/8π per metre: Im of the same quotient over x²/8. */
    public static double internalInductanceRatio(double x) {
        return check(x) < THIN ? 1 : kb(x).divide(ratio(1, x).multiply(2)).getImaginary() / (x * x / 8);
    }

    /**
     * G(x) = (x²/8)·|Im J2(kb)/J0(kb)|: a strand in a uniform field across it, of peak value H (A/m), turns 8πρH²·G
     * watts per metre into heat. Tends to x⁴/64 in thin wire and to (√2·x − 1)/8 in thick.
     */
    public static double proximityFactor(double x) {
        return x * x / 8 * Math.abs(reflection(1, x).getImaginary());
    }

    /**
     * What a conductor answers to the n-th harmonic of the vector potential about its axis: (r/b)^n cos nθ brings
     * J(n+1)/J(n−1)·(b/r)^n cos nθ. Tends to −1 in thick wire, to 0 in thin. Time goes as e^(jωt).
     *
     * @param n 1 for a uniform field
     */
    public static Complex reflection(int n, double x) {
        return check(x) == 0 ? Complex.ZERO : ratio(n + 1, x).multiply(ratio(n, x));
    }

    private static double check(double x) {
        return OutOfRange.require("d/(√2·skin depth)", x, 0, THICKEST, "Such a conductor is a sheet, not a wire.");
    }

    private static Complex kb(double x) {
        return MINUS_45_DEGREES.multiply(x);
    }

    /**
     * J(n)/J(n−1) at kb by the backward recurrence r(ν) = 1/(2ν/z − r(ν+1)), which contracts away from the real axis;
     * the start, {@code x + 40} orders up, is past where J falls off.
     */
    private static Complex ratio(int n, double x) {
        double re = 0, im = 0;
        double s = Math.sqrt(2) / x; // 2/z = s + s·j
        for (int nu = n + 40 + (int) x; nu >= n; nu--) {
            double a = nu * s - re, b = nu * s - im;
            double size = a * a + b * b;
            re = a / size;
            im = -b / size;
        }
        return new Complex(re, im);
    }
}
