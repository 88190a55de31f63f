package galena.signal.fit;

import galena.signal.spectrum.Fourier;

/**
 * Noise in what a fit leaves over, told band by band: the variance per sample that white noise of the same local
 * density would have. Converters give white noise, but oscillators and receivers give more of it near the carrier, and
 * a filter takes it away beyond its passband; an interval taken from the whole residual would be wrong both ways.
 */
public final class NoiseFloor {
    /** Bins that a local mean takes at least: 24 bins leave its standard deviation near 20 %. */
    private static final int BINS = 24;

    private final double[] cumulative;
    private final double binWidth;
    private final int topBin;
    private final double nyquist;
    private final double[] fitted;

    /**
     * @param residual samples less the fit
     * @param interval time between samples (s)
     * @param top highest frequency whose noise is whole (Hz): the filter's passband
     * @param fitted frequencies that the fit took out (Hz), whose bins hold no noise any more
     */
    public NoiseFloor(double[] residual, double interval, double top, double[] fitted) {
        int n = residual.length;
        double[] power = Fourier.power(Fourier.ofReal(residual, n));
        cumulative = new double[power.length + 1];
        for (int k = 0; k < power.length; k++) cumulative[k + 1] = cumulative[k] + power[k] / n;
        binWidth = 1 / (n * interval);
        nyquist = 0.5 / interval;
        topBin = Math.max(1, Math.min(power.length - 1, (int) (top / binWidth)));
        this.fitted = fitted.clone();
    }

    /** Variance per sample of white noise with the density found near a frequency (Hz). */
    public double varianceAt(double frequency) {
        int[] span = span(frequency);
        return mean(span[0], span[1]);
    }

    /** Degrees of freedom behind {@link #varianceAt}. */
    public double freedomAt(double frequency) {
        int[] span = span(frequency);
        return Math.max(1, 2 * (span[1] - span[0] + 1 - taken(span[0], span[1])));
    }

    /** Noise power (variance) between two frequencies (Hz), one-sided: what a filter of that band would pass. */
    public double power(double low, double high) {
        int a = Math.max(1, (int) Math.ceil(low / binWidth)), b = Math.min(topBin, (int) (high / binWidth));
        if (b < a) return 0;
        return mean(a, b) * (high - low) / nyquist;
    }

    /** Degrees of freedom behind {@link #power}. */
    public double freedom(double low, double high) {
        int a = Math.max(1, (int) Math.ceil(low / binWidth)), b = Math.min(topBin, (int) (high / binWidth));
        return Math.max(0, 2 * (b - a + 1 - taken(a, b)));
    }

    private int[] span(double frequency) {
        int centre = Math.min(topBin, Math.max(1, (int) Math.round(frequency / binWidth)));
        int half = Math.max(BINS / 2, centre / 5);
        int low = Math.max(1, centre - half), high = Math.min(topBin, centre + half);
        while (high - low + 1 - taken(low, high) < BINS && (low > 1 || high < topBin)) {
            low = Math.max(1, low - BINS / 4);
            high = Math.min(topBin, high + BINS / 4);
        }
        return new int[] {low, high};
    }

    private double mean(int low, int high) {
        double bins = Math.max(0.5, high - low + 1 - taken(low, high));
        return (cumulative[high + 1] - cumulative[low]) / bins;
    }

    /** Bins within a span that the fit emptied, counting one for each line. */
    private double taken(int low, int high) {
        double count = 0;
        for (double f : fitted) if (f >= (low - 0.5) * binWidth && f <= (high + 0.5) * binWidth) count++;
        return Math.min(count, high - low + 0.5);
    }
}
