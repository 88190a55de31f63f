package galena.signal.carrier;

import galena.signal.spectrum.Fourier;
import galena.signal.spectrum.Window;
import java.util.Arrays;
import java.util.Optional;

/** Finds the strongest line of a capture, to a few hundredths of a bin, or says that none stands out. */
public final class CarrierFinder {
    /** A line must stand this far above the median bin: noise alone reaches 16 dB in one record of a million. */
    public static final double STANDS_OUT = 20;

    private static final int LONGEST = 1 << 18;
    /** Bins beside a line's middle that the window spreads it over. */
    private static final int SPREAD = 4;

    private static final int MEDIAN_BINS = 1 << 14;

    private CarrierFinder() {}

    /**
     * A line.
     *
     * @param frequency (Hz), negative below the centre of a complex capture
     * @param amplitude peak, in the unit of the samples, by interpolation
     * @param prominence above the median bin (dB)
     */
    public record Line(double frequency, double amplitude, double prominence) {}

    /** The strongest line apart from the mean and its skirt; empty if nothing stands out. */
    public static Optional<Line> strongest(Samples samples) {
        return strongest(samples, 0, Double.POSITIVE_INFINITY);
    }

    /** The strongest line whose magnitude of frequency lies between two limits (Hz). */
    public static Optional<Line> strongest(Samples samples, double low, double high) {
        int n = Math.min(samples.length(), LONGEST);
        if (n < 16) return Optional.empty();
        int length = Fourier.powerOfTwo(2 * n);
        double[] power = spectrum(samples, n, length);
        double bin = samples.rate() / length;
        int skirt = (SPREAD + 1) * length / n;
        int best = -1;
        for (int k = skirt; k < power.length - (samples.isComplex() ? skirt : 1); k++) {
            double f = Math.abs(frequency(k, length, bin));
            if (f >= low && f <= high && (best < 0 || power[k] > power[best])) best = k;
        }
        if (best < 1 || best > power.length - 2 || power[best] <= 0) return Optional.empty();
        double prominence = 10 * Math.log10(power[best] / Math.max(median(power), power[best] * 1e-30));
        if (prominence < STANDS_OUT || power[best] < power[best - 1] || power[best] < power[best + 1]) {
            return Optional.empty();
        }
        double a = Math.log(power[best - 1] + 1e-300),
                b = Math.log(power[best]),
                c = Math.log(power[best + 1] + 1e-300);
        double curve = a - 2 * b + c;
        double shift = curve < 0 ? 0.5 * (a - c) / curve : 0;
        double level = Math.exp((b - 0.25 * (a - c) * shift) / 2);
        double amplitude = level * (samples.isComplex() ? 1 : 2) / (n * Window.BLACKMAN_HARRIS.coherentGain());
        return Optional.of(new Line(frequency(best, length, bin) + shift * bin, amplitude, prominence));
    }

    private static double frequency(int k, int length, double bin) {
        return (k > length / 2 ? k - length : k) * bin;
    }

    private static double[] spectrum(Samples samples, int n, int length) {
        double[] re = new double[n], im = new double[n];
        double meanRe = 0, meanIm = 0;
        for (int k = 0; k < n; k++) {
            meanRe += samples.re(k) / n;
            meanIm += samples.im(k) / n;
        }
        for (int k = 0; k < n; k++) {
            double w = Window.BLACKMAN_HARRIS.at(k, n);
            re[k] = w * (samples.re(k) - meanRe);
            im[k] = w * (samples.im(k) - meanIm);
        }
        return Fourier.power(samples.isComplex() ? Fourier.ofComplex(re, im, length) : Fourier.ofReal(re, length));
    }

    /** The median of at most {@value #MEDIAN_BINS} bins, evenly taken: within a tenth of a decibel, without sorting all. */
    private static double median(double[] power) {
        int stride = Math.max(1, power.length / MEDIAN_BINS);
        double[] sorted = new double[power.length / stride];
        for (int k = 0; k < sorted.length; k++) sorted[k] = power[k * stride];
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
