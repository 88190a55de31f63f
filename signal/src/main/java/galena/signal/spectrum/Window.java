package galena.signal.spectrum;

/**
 * Cosine-sum windows, periodic form: w(k) = a0 − a1 cos(2πk/N) + a2 cos(4πk/N) − a3 cos(6πk/N). Coefficients after
 * F. J. Harris, Proc. IEEE 66 (1978) 51.
 */
public enum Window {
    /** Every sample counts the same: sharpest, worst leakage. */
    NONE(1, 0, 0, 0),
    /** Raised cosine. */
    HANN(0.5, 0.5, 0, 0),
    /** Minimum four-term Blackman-Harris: side lobes 92 dB down, lines apart by four bins do not touch. */
    BLACKMAN_HARRIS(0.35875, 0.48829, 0.14128, 0.01168);

    private final double a0;
    private final double a1;
    private final double a2;
    private final double a3;

    Window(double a0, double a1, double a2, double a3) {
        this.a0 = a0;
        this.a1 = a1;
        this.a2 = a2;
        this.a3 = a3;
    }

    /** Weight of sample k of n. */
    public double at(int k, int n) {
        double c1 = Math.cos(2 * Math.PI * k / n);
        double c2 = 2 * c1 * c1 - 1;
        double c3 = c1 * (2 * c2 - 1);
        return a0 - a1 * c1 + a2 * c2 - a3 * c3;
    }

    /** A weighted copy of the samples. */
    public double[] applied(double[] samples) {
        double[] out = new double[samples.length];
        for (int k = 0; k < out.length; k++) out[k] = samples[k] * at(k, out.length);
        return out;
    }

    /** Mean weight: what a line's amplitude is multiplied by. */
    public double coherentGain() {
        return a0;
    }

    /** Equivalent noise bandwidth in bins: the mean square weight over the squared mean weight. */
    public double noiseBandwidth() {
        return 1 + (a1 * a1 + a2 * a2 + a3 * a3) / (2 * a0 * a0);
    }
}
