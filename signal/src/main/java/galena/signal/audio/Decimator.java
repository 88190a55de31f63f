package galena.signal.audio;

/** Lowers a rate by a whole number, after a low-pass filter that leaves what lies below 0.42 of the lower rate. One stream each. */
public final class Decimator {
    private final int factor;
    private final double[] taps;
    /** Twice as long as needed, so that the samples wanted always lie in a row. */
    private final double[] past;

    private int at;
    private int phase;

    /** @param factor 1 or more */
    public Decimator(int factor) {
        if (factor < 1) throw new IllegalArgumentException("a factor is 1 or more, not " + factor);
        this.factor = factor;
        taps = Kaiser.lowPass(Interpolator.SPAN * factor - 1, Interpolator.CUTOFF / factor);
        past = new double[2 * taps.length];
    }

    /** Delay, in samples of the higher rate. */
    public int delay() {
        return factor == 1 ? 0 : taps.length / 2;
    }

    /**
     * @param in read
     * @param count samples of it, a multiple of the factor
     * @param out written: {@code count / factor} samples
     */
    public void process(double[] in, int count, double[] out) {
        if (factor == 1) {
            System.arraycopy(in, 0, out, 0, count);
            return;
        }
        int length = taps.length, written = 0;
        for (int n = 0; n < count; n++) {
            past[at] = in[n];
            past[at + length] = in[n];
            at = at + 1 == length ? 0 : at + 1;
            if (phase == 0) {
                double even = 0, odd = taps[length - 1] * past[at + length - 1];
                for (int k = 0; k < length - 1; k += 2) {
                    even += taps[k] * past[at + k];
                    odd += taps[k + 1] * past[at + k + 1];
                }
                out[written++] = even + odd;
            }
            phase = phase + 1 == factor ? 0 : phase + 1;
        }
    }
}
