package galena.signal.spectrum;

import java.util.Arrays;
import org.jtransforms.fft.DoubleFFT_1D;
import org.visnow.jlargearrays.ConcurrencyUtils;

/** Discrete Fourier transforms of any length, on one thread so that callers decide about threads. */
public final class Fourier {
    static {
        ConcurrencyUtils.setNumberOfThreads(1); // the library's pool outlives a short command otherwise
    }

    private Fourier() {}

    /**
     * Transform of real samples, zero-padded to {@code length}.
     *
     * @param samples read
     * @param length at least the number of samples
     * @return interleaved re, im of bins 0..length/2
     */
    public static double[] ofReal(double[] samples, int length) {
        double[] packed = Arrays.copyOf(samples, length);
        new DoubleFFT_1D(length).realForward(packed);
        double[] bins = Arrays.copyOf(packed, 2 * (length / 2 + 1));
        // beside bin 0 the library packs what ends the row: the last bin's real part, or its imaginary one if length is
        // odd
        if (length > 1) {
            bins[length] = packed[1];
            bins[1] = 0;
        }
        return bins;
    }

    /**
     * Transform of complex samples, zero-padded to {@code length}.
     *
     * @param re read
     * @param im read, as long as re
     * @param length at least the number of samples
     * @return interleaved re, im of bins 0..length−1; bins above length/2 are the negative frequencies
     */
    public static double[] ofComplex(double[] re, double[] im, int length) {
        double[] work = new double[2 * length];
        for (int k = 0; k < re.length; k++) {
            work[2 * k] = re[k];
            work[2 * k + 1] = im[k];
        }
        new DoubleFFT_1D(length).complexForward(work);
        return work;
    }

    /** Squared magnitudes of interleaved bins. */
    public static double[] power(double[] bins) {
        double[] power = new double[bins.length / 2];
        for (int k = 0; k < power.length; k++) {
            power[k] = bins[2 * k] * bins[2 * k] + bins[2 * k + 1] * bins[2 * k + 1];
        }
        return power;
    }

    /** Smallest power of two not below n. */
    public static int powerOfTwo(int n) {
        return n <= 1 ? 1 : Integer.highestOneBit(n - 1) << 1;
    }
}
