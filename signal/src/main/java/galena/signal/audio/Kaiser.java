package galena.signal.audio;

/**
 * Low-pass filters by J. F. Kaiser's window: the ideal filter's response, weighted by I₀(β√(1−x²))/I₀(β) (A. V. Oppenheim and R. W.
 * Schafer, Discrete-Time Signal Processing, 2nd ed., 1999, §7.4, whose formula gives β for a stopband).
 */
final class Kaiser {
    /** Stopband, dB: below what 16 bits hold. */
    private static final double STOPBAND = 100;

    private static final double BETA = 0.1102 * (STOPBAND - 8.7);

    private Kaiser() {}

    /**
     * @param half taps on either side of the middle one
     * @param cutoff −6 dB, as a share of the rate, 0 to 0.5
     * @return 2 · half + 1 taps that sum to 1
     */
    static double[] lowPass(int half, double cutoff) {
        double[] taps = new double[2 * half + 1];
        double sum = 0;
        for (int k = -half; k <= half; k++) {
            double x = k / (half + 1.0), angle = 2 * Math.PI * cutoff * k;
            double ideal = k == 0 ? 2 * cutoff : Math.sin(angle) / (Math.PI * k);
            taps[k + half] = ideal * bessel(BETA * Math.sqrt(1 - x * x)) / bessel(BETA);
            sum += taps[k + half];
        }
        for (int k = 0; k < taps.length; k++) taps[k] /= sum;
        return taps;
    }

    /** I₀ by its power series, to rounding. */
    private static double bessel(double x) {
        double term = 1, sum = 1;
        for (int k = 1; term > 1e-17 * sum; k++) {
            term *= 0.25 * x * x / (k * (double) k);
            sum += term;
        }
        return sum;
    }
}
