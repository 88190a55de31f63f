package galena.signal.carrier;

/**
 * Linear-phase low-pass by a Kaiser window (J. F. Kaiser's design formulas, as in A. V. Oppenheim and R. W. Schafer,
 * Discrete-Time Signal Processing, art. 7.5.3), 80 dB down at the stop frequency.
 */
final class LowPass {
    private static final double ATTENUATION = 80;
    private static final double BETA = 0.1102 * (ATTENUATION - 8.7);

    private final double[] taps;
    private final double interval;

    /**
     * @param pass end of the passband (Hz)
     * @param stop start of the stopband (Hz)
     * @param interval time between samples (s)
     */
    LowPass(double pass, double stop, double interval) {
        this.interval = interval;
        int half = length(pass, stop, interval) / 2;
        taps = new double[2 * half + 1];
        double cut = (pass + stop) * interval; // twice the cut-off over the rate
        double sum = 0;
        for (int k = -half; k <= half; k++) {
            double x = Math.PI * cut * k;
            double sinc = k == 0 ? 1 : Math.sin(x) / x;
            double edge = (double) k / (half + 1);
            taps[k + half] = sinc * bessel(BETA * Math.sqrt(1 - edge * edge));
            sum += taps[k + half];
        }
        for (int k = 0; k < taps.length; k++) taps[k] /= sum;
    }

    /** Taps that a filter of these edges needs. */
    static int length(double pass, double stop, double interval) {
        return (int) Math.ceil((ATTENUATION - 7.95) / (14.36 * (stop - pass) * interval)) + 1;
    }

    int length() {
        return taps.length;
    }

    /** Weighted sum of the samples that start at {@code at}. */
    double at(double[] samples, int at) {
        double sum = 0;
        for (int k = 0; k < taps.length; k++) sum += taps[k] * samples[at + k];
        return sum;
    }

    /** Gain at a frequency (Hz); the phase is that of a pure delay to the middle tap. */
    double response(double frequency) {
        int half = taps.length / 2;
        double sum = taps[half];
        for (int k = 1; k <= half; k++) sum += 2 * taps[half + k] * Math.cos(2 * Math.PI * frequency * interval * k);
        return sum;
    }

    /** Modified Bessel function I0 by its power series; its argument here stays below 8. */
    private static double bessel(double x) {
        double q = x * x / 4, term = 1, sum = 1;
        for (int k = 1; term > sum * 1e-17; k++) {
            term *= q / (k * (double) k);
            sum += term;
        }
        return sum;
    }
}
