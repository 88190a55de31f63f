package galena.signal.spectrum;

/**
 * Harmonics of a periodic waveform given on a uniform grid over one period: x(t) = A0 + Σ An cos(n ω t + φn), with t = 0
 * at the first sample. The trapezoidal rule behind it is exact for every harmonic below half the number of samples.
 */
public final class PeriodicWaveform {
    private final double[] bins;
    private final int samples;

    private PeriodicWaveform(double[] bins, int samples) {
        this.bins = bins;
        this.samples = samples;
    }

    /**
     * @param onePeriod samples at t = 0, T/N, … (N−1)T/N; the sample at T is not repeated
     */
    public static PeriodicWaveform of(double[] onePeriod) {
        if (onePeriod.length < 3) throw new IllegalArgumentException("A period needs at least 3 samples");
        for (double x : onePeriod) {
            if (!Double.isFinite(x)) throw new IllegalArgumentException("A period has only finite samples");
        }
        return new PeriodicWaveform(Fourier.ofReal(onePeriod, onePeriod.length), onePeriod.length);
    }

    /** Highest harmonic that the grid resolves. */
    public int highest() {
        return (samples - 1) / 2;
    }

    /** Mean, in the unit of the samples. */
    public double mean() {
        return bins[0] / samples;
    }

    /** Peak amplitude of harmonic n ≥ 1, in the unit of the samples. */
    public double amplitude(int n) {
        check(n);
        return 2 * Math.hypot(bins[2 * n], bins[2 * n + 1]) / samples;
    }

    /** Phase φn (rad) of harmonic n ≥ 1, for a cosine. */
    public double phase(int n) {
        check(n);
        return Math.atan2(bins[2 * n + 1], bins[2 * n]);
    }

    /** Amplitude of harmonic n over that of the first. */
    public double ratio(int n) {
        double first = amplitude(1);
        if (first == 0) throw new IllegalArgumentException("The waveform has no first harmonic to compare with");
        return amplitude(n) / first;
    }

    /** Total distortion: root of the summed squares of harmonics 2..upTo over the first. */
    public double totalDistortion(int upTo) {
        double sum = 0;
        for (int n = 2; n <= Math.min(upTo, highest()); n++) sum += ratio(n) * ratio(n);
        return Math.sqrt(sum);
    }

    private void check(int n) {
        if (n < 1 || n > highest()) {
            throw new IllegalArgumentException(
                    "Harmonic " + n + " is outside 1.." + highest() + " that the grid resolves");
        }
    }
}
