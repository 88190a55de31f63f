package galena.signal.carrier;

import org.jspecify.annotations.Nullable;

/** Uniform samples of one signal, real or complex. The arrays are kept, not copied, and never written. */
public final class Samples {
    private final double[] re;
    private final double @Nullable [] im;
    private final double interval;

    private Samples(double[] re, double @Nullable [] im, double interval) {
        if (!(interval > 0) || Double.isInfinite(interval)) {
            throw new IllegalArgumentException("The sampling interval must be positive, got " + interval);
        }
        this.re = re;
        this.im = im;
        this.interval = interval;
    }

    /**
     * @param values samples in any unit
     * @param interval time between samples (s)
     */
    public static Samples real(double[] values, double interval) {
        return new Samples(values, null, interval);
    }

    /**
     * @param inPhase real parts
     * @param quadrature imaginary parts, as many
     * @param interval time between samples (s)
     */
    public static Samples complex(double[] inPhase, double[] quadrature, double interval) {
        if (inPhase.length != quadrature.length) throw new IllegalArgumentException("I and Q differ in length");
        return new Samples(inPhase, quadrature, interval);
    }

    public boolean isComplex() {
        return im != null;
    }

    public int length() {
        return re.length;
    }

    /** Time between samples (s). */
    public double interval() {
        return interval;
    }

    /** Samples per second (Hz). */
    public double rate() {
        return 1 / interval;
    }

    /** Real part of sample k. */
    public double re(int k) {
        return re[k];
    }

    /** Imaginary part of sample k, 0 in a real capture. */
    public double im(int k) {
        return im == null ? 0 : im[k];
    }

    /** The first samples only. */
    public Samples head(int count) {
        if (count >= re.length) return this;
        double[] i = java.util.Arrays.copyOf(re, count);
        return new Samples(i, im == null ? null : java.util.Arrays.copyOf(im, count), interval);
    }
}
