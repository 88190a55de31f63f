package galena.signal.receiver;

/**
 * A set that is switched on: complex envelope in, audio out. Noise, mistuning, filter, gain control, detector, in that order. Audio
 * is 1 for a tone of 100 % where nothing weakens it. One stream each; blocks allocate nothing.
 */
public final class Receiver {
    private static final int RENORMALISE = 64;
    /** The gain control looks this many samples back at a time. */
    private static final int LOOKS = 32;

    private final ReceiverSettings settings;
    private final TunedFilter filter;
    private final DiodeDetector detector;
    private final GainControl control;
    private final Noise noise;
    private final double deviation;
    private final double turnC;
    private final double turnS;
    private final double[] envelope;
    private double c = 1;
    private double s;
    private long count;
    private double sum;
    private int looked;

    /**
     * @param settings of the set
     * @param rate samples a second, Hz
     * @param block most samples at a time
     * @param noiseToCarrier rms noise over carrier in the set's bandwidth, as fields compare; 0 for silence
     * @param seed of the noise
     * @param listener told where the detector leaves the envelope
     */
    public Receiver(
            ReceiverSettings settings,
            double rate,
            int block,
            double noiseToCarrier,
            long seed,
            DiodeDetector.Listener listener) {
        if (!(noiseToCarrier >= 0) || Double.isInfinite(noiseToCarrier))
            throw new IllegalArgumentException("noise over carrier is zero or above, not " + noiseToCarrier);
        this.settings = settings;
        filter = new TunedFilter(settings.circuits(), settings.bandwidth(), rate);
        detector = new DiodeDetector(settings.detector(), settings.audioShare(), rate, listener);
        control = new GainControl(settings.gainControl(), rate / LOOKS);
        double[] middle = filter.response(settings.mistuned());
        control.settle(1 / Math.max(1e-6, Math.hypot(middle[0], middle[1])));
        noise = new Noise(seed);
        // a carrier of peak 1 has the power 1/2; noise of power p in the bandwidth b has E|n|² = 2p, spread over the
        // rate
        deviation = noiseToCarrier * Math.sqrt(0.5 * rate / filter.noiseBandwidth());
        double angle = 2 * Math.PI * settings.mistuned() / rate;
        turnC = Math.cos(angle);
        turnS = Math.sin(angle);
        envelope = new double[block];
    }

    /** Overwrites i and q; writes the audio. */
    public void process(double[] i, double[] q, int count, double[] audio) {
        if (settings.mistuned() != 0) turn(i, q, count);
        if (deviation > 0) noise.add(i, q, count, deviation);
        filter.process(i, q, count);
        for (int from = 0; from < count; ) {
            int piece = Math.min(count - from, LOOKS - looked);
            double gain = control.gain();
            for (int n = from; n < from + piece; n++) envelope[n] = gain * Math.sqrt(i[n] * i[n] + q[n] * q[n]);
            for (int n = from; n < from + piece; n++) sum += envelope[n];
            looked += piece;
            from += piece;
            if (looked == LOOKS) {
                control.follow(sum / LOOKS);
                sum = 0;
                looked = 0;
            }
        }
        detector.process(envelope, count, audio);
    }

    private void turn(double[] i, double[] q, int count) {
        for (int n = 0; n < count; n++) {
            double re = i[n], im = q[n];
            i[n] = re * c - im * s;
            q[n] = re * s + im * c;
            double next = c * turnC - s * turnS;
            s = c * turnS + s * turnC;
            c = next;
            if (++this.count % RENORMALISE == 0) {
                double size = 1.5 - 0.5 * (c * c + s * s);
                c *= size;
                s *= size;
            }
        }
    }

    /** The filter, for its response. */
    public TunedFilter filter() {
        return filter;
    }
}
