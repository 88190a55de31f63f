package galena.signal.carrier;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The neighbourhood of a carrier, mixed down to zero frequency, filtered and thinned out: z(t) = E(t) exp(jφ(t)).
 * The filter's gain at each audio frequency is known and told, so that measures can take it out again.
 */
public final class Baseband {
    /** Widest audio band kept (Hz): ten harmonics of a 2.5 kHz tone, well past any programme. */
    private static final double WIDEST = 25e3;
    /** Narrowest band over the bins of the record: with 10 its filter would be a quarter of the record, too long by itself. */
    private static final double NARROWEST = 12;

    private final double[] re;
    private final double[] im;
    private final double interval;
    private final double start;
    private final double passband;
    private final double mixed;
    private final @Nullable LowPass filter;

    private Baseband(
            double[] re,
            double[] im,
            double interval,
            double start,
            double passband,
            double mixed,
            @Nullable LowPass filter) {
        this.re = re;
        this.im = im;
        this.interval = interval;
        this.start = start;
        this.passband = passband;
        this.mixed = mixed;
        this.filter = filter;
    }

    /**
     * @param samples the capture, read
     * @param carrier frequency to mix with (Hz)
     * @return empty when the record is shorter than four filter lengths
     */
    public static Optional<Baseband> of(Samples samples, double carrier) {
        return of(samples, carrier, WIDEST);
    }

    /**
     * As above, for something faster than audio.
     *
     * @param wanted half-width of the band to keep (Hz), as far as there is room
     */
    static Optional<Baseband> of(Samples samples, double carrier, double wanted) {
        double rate = samples.rate(), length = samples.length() * samples.interval();
        double room = samples.isComplex()
                ? (rate / 2 - Math.abs(carrier))
                : Math.min(Math.abs(carrier), rate / 2 - Math.abs(carrier));
        double widest = samples.isComplex() ? 0.8 * room : room / 3; // a real capture has its mean and image near by
        double pass = Math.min(widest, Math.max(wanted, NARROWEST / length));
        double stop = samples.isComplex() ? Math.min(3 * pass, rate - 2 * pass) : 3 * pass;
        if (!(pass > 0)) return Optional.empty();
        if (samples.isComplex() && rate < 4 * pass) return Optional.of(mixedOnly(samples, carrier, pass));
        if (LowPass.length(pass, stop, samples.interval()) * 4L > samples.length()) return Optional.empty();
        return Optional.of(filtered(samples, carrier, pass, new LowPass(pass, stop, samples.interval()), stop));
    }

    private static Baseband mixedOnly(Samples samples, double carrier, double pass) {
        double[] re = new double[samples.length()], im = new double[samples.length()];
        mix(samples, carrier, 0, samples.length(), re, im);
        return new Baseband(re, im, samples.interval(), 0, pass, carrier, null);
    }

    private static Baseband filtered(Samples samples, double carrier, double pass, LowPass filter, double stop) {
        int keepOneIn = Math.max(1, (int) (samples.rate() / (pass + stop)));
        int taps = filter.length();
        int count = (samples.length() - taps) / keepOneIn + 1;
        double[] re = new double[count], im = new double[count];
        int block = Math.max(8 * taps, 8 * keepOneIn); // mixed in blocks so that memory stays small
        double[] mixRe = new double[block + taps + keepOneIn], mixIm = new double[mixRe.length];
        int done = 0;
        while (done < count) {
            int from = done * keepOneIn;
            int outputs = Math.min(count - done, block / keepOneIn + 1);
            int to = from + (outputs - 1) * keepOneIn + taps;
            mix(samples, carrier, from, to, mixRe, mixIm);
            for (int k = 0; k < outputs; k++) {
                re[done + k] = filter.at(mixRe, k * keepOneIn);
                im[done + k] = filter.at(mixIm, k * keepOneIn);
            }
            done += outputs;
        }
        double start = (taps - 1) / 2.0 * samples.interval();
        return new Baseband(re, im, keepOneIn * samples.interval(), start, pass, carrier, filter);
    }

    /** Twice x·exp(−j2πft) for real samples, once for complex: the result's magnitude is the carrier's peak. */
    private static void mix(Samples samples, double f, int from, int to, double[] re, double[] im) {
        double gain = samples.isComplex() ? 1 : 2;
        double turnsPerSample = f * samples.interval();
        double stepC = Math.cos(2 * Math.PI * turnsPerSample), stepS = Math.sin(2 * Math.PI * turnsPerSample);
        double c = 1, s = 0;
        for (int k = from; k < to; k++) {
            if ((k - from) % 256 == 0) { // a fresh start keeps the rotation exact
                double turns = turnsPerSample * k;
                double phase = 2 * Math.PI * (turns - Math.rint(turns));
                c = gain * Math.cos(phase);
                s = gain * Math.sin(phase);
            }
            double x = samples.re(k), y = samples.im(k);
            re[k - from] = x * c + y * s;
            im[k - from] = y * c - x * s;
            double next = c * stepC - s * stepS;
            s = s * stepC + c * stepS;
            c = next;
        }
    }

    public int length() {
        return re.length;
    }

    /** In-phase part of sample k, unit of the capture. */
    public double re(int k) {
        return re[k];
    }

    /** Quadrature part of sample k, unit of the capture. */
    public double im(int k) {
        return im[k];
    }

    /** Time between samples (s). */
    public double interval() {
        return interval;
    }

    /** Time of the first sample after the capture's first (s). */
    public double start() {
        return start;
    }

    /** Audio frequencies below this are whole (Hz). */
    public double passband() {
        return passband;
    }

    /** Frequency that was mixed with (Hz). */
    public double mixedWith() {
        return mixed;
    }

    /** Gain of the filter at an audio frequency (Hz). */
    public double response(double frequency) {
        return filter == null ? 1 : filter.response(frequency);
    }
}
