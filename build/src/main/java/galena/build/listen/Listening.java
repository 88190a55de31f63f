package galena.build.listen;

import galena.signal.audio.Decimator;
import galena.signal.audio.Interpolator;
import galena.signal.receiver.DiodeDetector;
import galena.signal.receiver.OutputGuard;
import galena.signal.receiver.Receiver;
import galena.signal.receiver.ReceiverSettings;

/**
 * A programme on its way through transmitter, air and set, block by block. The output is one channel at the programme's own rate,
 * guarded: it fades in and never passes its ceiling. One stream each; blocks allocate nothing.
 */
public final class Listening {
    /** Frames at a time, at the programme's rate. */
    public static final int BLOCK = 2048;
    /** What is left of full modulation at the output: loud enough, with room above. */
    private static final double VOLUME = 0.5;

    private static final long SEED = 74;
    /** Samples a second, Hz, at which modulation of 20 kHz is followed. */
    private static final double LEAST_RATE = 88_200;

    private final int factor;
    private final double rate;
    private final Interpolator upLeft;
    private final Interpolator upRight;
    private final Decimator down;
    private final ReducedModel model;
    private final Receiver receiver;
    private final OutputGuard guard;
    private final Episodes diagonal;
    private final double[] left;
    private final double[] right;
    private final double[] i;
    private final double[] q;
    private final double[] audio;
    private long frames;

    Listening(Reduction reduction, int factor, ReceiverSettings settings, double noise) {
        this.factor = factor;
        rate = reduction.rate();
        int block = BLOCK * factor;
        upLeft = new Interpolator(factor);
        upRight = new Interpolator(factor);
        down = new Decimator(factor);
        model = new ReducedModel(reduction, block);
        diagonal = new Episodes(rate);
        receiver = new Receiver(settings, rate, block, noise, SEED, new DiodeDetector.Listener() {
            @Override
            public void hangs(long sample) {
                diagonal.begin(sample);
            }

            @Override
            public void follows(long sample) {
                diagonal.end(sample);
            }
        });
        guard = new OutputGuard(rate / factor);
        left = new double[block];
        right = new double[block];
        i = new double[block];
        q = new double[block];
        audio = new double[block];
    }

    /** How many times a programme's rate (Hz) is raised for the modulation to be followed. */
    static int factor(double rate) {
        return Math.max(1, (int) Math.ceil(LEAST_RATE / rate));
    }

    /**
     * @param inLeft read; full scale 1
     * @param inRight read
     * @param count frames, at most {@link #BLOCK}
     * @param out written
     */
    public void process(double[] inLeft, double[] inRight, int count, double[] out) {
        if (count > BLOCK) throw new IllegalArgumentException("a block holds " + BLOCK + " frames, not " + count);
        upLeft.process(inLeft, count, left);
        upRight.process(inRight, count, right);
        int n = count * factor;
        model.process(left, right, n, i, q);
        receiver.process(i, q, n, audio);
        down.process(audio, n, out);
        for (int k = 0; k < count; k++) out[k] *= VOLUME;
        guard.process(out, count);
        frames += count;
    }

    /** What has happened so far. */
    public Happened happened() {
        return new Happened(
                frames * factor / rate,
                model.overmodulation(),
                model.stops(),
                model.beyond(),
                diagonal.summed("detector leaves the envelope"),
                frames == 0 ? 0 : guard.bent() / (double) frames);
    }
}
