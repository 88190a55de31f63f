package galena.signal.receiver;

/**
 * A diode detector and its load: a capacitor that the diode charges to the envelope, and that a resistor R discharges; behind a
 * coupling capacitor the volume control lies across R for audio alone. Two faults of detectors follow from the equations, and
 * nothing else is put in: where the envelope falls faster than the capacitor discharges, the output leaves the programme on a straight
 * diagonal, and where a trough is deeper than the load's shares allow, it is cut off flat (F. E. Terman, Radio Engineers' Handbook,
 * 1943, sec. 7, par. 13, from memory: RC ≤ √(1 − m²)/(2πf·m), m ≤ R_audio/R_direct).
 *
 * <p>The diode is ideal, its charging resistance small beside R; what remains of the carrier is left out. One stream each.
 */
public final class DiodeDetector {
    /** Coupling to the volume control, Hz: common practice. */
    public static final double COUPLING = 20;

    /** Beyond this share above the envelope the capacitor hangs on its diagonal. */
    private static final double HANGING = 0.01;

    private final double kept;
    private final double given;
    private final double slow;
    private final Listener listener;
    private double capacitor;
    private double coupled;
    private long count;
    private boolean started;
    private boolean hanging;

    /** Nobody listens. */
    public static final Listener UNHEARD = new Listener() {
        @Override
        public void hangs(long sample) {}

        @Override
        public void follows(long sample) {}
    };

    /** Sees where the detector leaves the envelope. */
    public interface Listener {
        /** @param sample number at which it begins to hang above the envelope */
        void hangs(long sample);

        /** @param sample number at which the diode conducts again */
        void follows(long sample);
    }

    /**
     * @param timeConstant RC of the capacitor and the whole audio load, s
     * @param audioShare resistance for audio over that for direct current, above 0 to 1
     * @param rate samples a second, Hz
     */
    public DiodeDetector(double timeConstant, double audioShare, double rate, Listener listener) {
        if (!(timeConstant > 0)) throw new IllegalArgumentException("a time constant is above zero: " + timeConstant);
        if (!(audioShare > 0 && audioShare <= 1))
            throw new IllegalArgumentException("a share of the load lies above 0, up to 1, not at " + audioShare);
        // with R_audio = R R_v/(R + R_v): discharge v/R + (v − coupled)/R_v = (v − (1 − share) coupled)/R_audio
        kept = Math.exp(-1 / (timeConstant * rate));
        given = 1 - audioShare;
        slow = 1 - Math.exp(-2 * Math.PI * COUPLING / rate);
        this.listener = listener;
    }

    /**
     * @param envelope read; magnitudes
     * @param audio written: the capacitor's voltage less its mean
     */
    public void process(double[] envelope, int count, double[] audio) {
        if (!started && count > 0) {
            capacitor = envelope[0];
            coupled = envelope[0];
            started = true;
        }
        for (int n = 0; n < count; n++) audio[n] = step(envelope[n], n);
        this.count += count;
    }

    private double step(double envelope, int n) {
        double rest = given * coupled, falls = rest + (capacitor - rest) * kept;
        boolean above = falls > envelope;
        capacitor = above ? falls : envelope;
        boolean hangs = above && falls - envelope > HANGING * Math.max(coupled, 1e-9);
        if (hangs != hanging) {
            if (hangs) listener.hangs(count + n);
            else listener.follows(count + n);
            hanging = hangs;
        }
        coupled += slow * (capacitor - coupled);
        return capacitor - coupled;
    }

    /** Largest RC (s) with which a detector follows a depth m (0 to 1) of a tone (Hz): √(1 − m²)/(2πf·m). */
    public static double greatestTimeConstant(double depth, double tone) {
        return Math.sqrt(1 - depth * depth) / (2 * Math.PI * tone * depth);
    }

    /** Highest tone (Hz) of a depth m that a detector of an RC (s) follows. */
    public static double highestTone(double depth, double timeConstant) {
        return Math.sqrt(1 - depth * depth) / (2 * Math.PI * timeConstant * depth);
    }
}
