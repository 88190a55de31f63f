package galena.signal.audio;

/** Raises a rate by a whole number with a polyphase low-pass filter; below 0.42 of the lower rate nothing changes. One stream each. */
public final class Interpolator {
    /** Samples of the lower rate on either side. */
    static final int SPAN = 32;
    /** −6 dB at this share of the lower rate: images of what lies below 0.42 fall into the stopband. */
    static final double CUTOFF = 0.5;

    private final int factor;
    /** By phase, each SPAN·2 taps, oldest sample first. */
    private final double[][] phases;

    private final double[] past;

    /** @param factor 1 or more */
    public Interpolator(int factor) {
        if (factor < 1) throw new IllegalArgumentException("a factor is 1 or more, not " + factor);
        this.factor = factor;
        double[] taps = Kaiser.lowPass(SPAN * factor - 1, CUTOFF / factor);
        phases = new double[factor][2 * SPAN];
        for (int p = 0; p < factor; p++)
            for (int k = 0; k < 2 * SPAN; k++) {
                int tap = p + factor * (2 * SPAN - 1 - k) - 1;
                phases[p][k] = tap < 0 || tap >= taps.length ? 0 : factor * taps[tap];
            }
        past = new double[2 * SPAN];
    }

    /** Delay, in samples of the higher rate. */
    public int delay() {
        return factor == 1 ? 0 : SPAN * factor;
    }

    /**
     * @param in read
     * @param count samples of it
     * @param out written: {@code count · factor} samples
     */
    public void process(double[] in, int count, double[] out) {
        if (factor == 1) {
            System.arraycopy(in, 0, out, 0, count);
            return;
        }
        for (int n = 0; n < count; n++) {
            System.arraycopy(past, 1, past, 0, past.length - 1);
            past[past.length - 1] = in[n];
            for (int p = 0; p < factor; p++) {
                double[] taps = phases[p];
                double even = 0, odd = 0;
                for (int k = 0; k < taps.length; k += 2) {
                    even += taps[k] * past[k];
                    odd += taps[k + 1] * past[k + 1];
                }
                out[n * factor + p] = even + odd;
            }
        }
    }
}
