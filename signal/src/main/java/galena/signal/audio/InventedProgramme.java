package galena.signal.audio;

/**
 * Twenty-four seconds that nobody spoke or played, the same every time: steady tones to judge the bass and the treble by, something
 * that rises and falls like a voice, and a figure of plucked notes that wander from left to right. Loudest parts reach full scale
 * nearly, as a programme does that was brought up to it.
 */
public final class InventedProgramme implements Programme {
    /** Seconds. */
    public static final double LENGTH = 24;

    private static final double[] TONES = {100, 400, 1000, 2500, 4000};
    private static final double TONE = 1;
    private static final double GAP = 0.2;
    private static final double VOICE_FROM = 6.5;
    private static final double VOICE_TO = 14.5;
    private static final double NOTES_TO = 23.5;
    private static final double LEVEL = 0.85;
    /** Steps of a scale of six even parts an octave, ours. */
    private static final int[] FIGURE = {0, 2, 5, 3, 6, 4, 1, 8, 5, 2, 7, 3};

    private static final double NOTE = 0.375;
    private static final double LOWEST_NOTE = 147;
    private static final int HARMONICS = 9;

    private final double rate;
    private final long length;
    private final Formant[] throat;
    private long at;
    private double turn;

    /** @param rate frames per second, Hz */
    public InventedProgramme(double rate) {
        if (!(rate >= 8000 && rate <= 400e3))
            throw new IllegalArgumentException("a rate lies between 8 and 400 kHz, not at " + rate + " Hz");
        this.rate = rate;
        length = Math.round(LENGTH * rate);
        throat = new Formant[] {new Formant(), new Formant(), new Formant()};
    }

    @Override
    public double rate() {
        return rate;
    }

    @Override
    public long length() {
        return length;
    }

    @Override
    public int read(double[] left, double[] right, int most) {
        int n = (int) Math.min(most, length - at);
        for (int k = 0; k < n; k++, at++) {
            double t = at / rate;
            if (t < VOICE_FROM) {
                left[k] = tones(t);
                right[k] = left[k];
            } else if (t < VOICE_TO) {
                left[k] = voice(t - VOICE_FROM);
                right[k] = left[k];
            } else {
                notes(t - VOICE_TO, left, right, k);
            }
        }
        return n;
    }

    private static double tones(double t) {
        int which = (int) (t / (TONE + GAP));
        double within = t - which * (TONE + GAP);
        if (which >= TONES.length || within >= TONE) return 0;
        return LEVEL * edge(within, TONE) * Math.sin(2 * Math.PI * TONES[which] * within);
    }

    /** Rises and falls over 20 ms. */
    private static double edge(double within, double of) {
        double x = Math.min(1, Math.min(within, of - within) / 0.02);
        return x <= 0 ? 0 : 0.5 - 0.5 * Math.cos(Math.PI * x);
    }

    /** Pulses at a pitch that wavers, through three resonances that wander as those of a mouth do. */
    private double voice(double t) {
        double pitch = 118 * (1 + 0.12 * Math.sin(2 * Math.PI * 0.31 * t) + 0.02 * Math.sin(2 * Math.PI * 5.2 * t));
        turn += pitch / rate;
        turn -= Math.floor(turn);
        double pulse = turn < 0.4 ? Math.sin(Math.PI * turn / 0.4) : 0;
        double open = 0.5 - 0.5 * Math.cos(2 * Math.PI * 2.6 * t),
                phrase = Math.sin(Math.PI * Math.min(1, (t % 4) / 3));
        double slow = Math.sin(2 * Math.PI * 1.3 * t), other = Math.sin(2 * Math.PI * 0.83 * t + 1);
        double sum = throat[0].next(pulse, 520 + 230 * slow, 90, rate)
                + 0.6 * throat[1].next(pulse, 1400 + 600 * other, 120, rate)
                + 0.3 * throat[2].next(pulse, 2600 + 250 * slow * other, 180, rate);
        return 0.8 * LEVEL * Math.tanh(1.1 * open * Math.max(0, phrase) * sum);
    }

    private void notes(double t, double[] left, double[] right, int k) {
        double l = 0, r = 0;
        if (t < NOTES_TO - VOICE_TO) {
            int now = (int) (t / NOTE);
            for (int back = 0; back < 3 && now - back >= 0; back++) {
                int note = now - back;
                double age = t - note * NOTE;
                double sound = pluck(pitch(note), age);
                double place = 0.5 + 0.4 * Math.sin(0.9 * note);
                l += sound * Math.sqrt(1 - place);
                r += sound * Math.sqrt(place);
            }
        }
        double fade = Math.max(0, Math.min(1, (NOTES_TO - VOICE_TO - t) / 0.6));
        left[k] = LEVEL * fade * Math.tanh(l);
        right[k] = LEVEL * fade * Math.tanh(r);
    }

    private static double pitch(int note) {
        int step = FIGURE[note % FIGURE.length] + 3 * ((note / FIGURE.length) % 2);
        return LOWEST_NOTE * Math.pow(2, step / 6.0);
    }

    private static double pluck(double pitch, double age) {
        double sum = 0;
        for (int h = 1; h <= HARMONICS; h++) {
            double decay = Math.exp(-age * (2 + 1.4 * h));
            sum += decay * Math.sin(2 * Math.PI * h * pitch * age) / h;
        }
        return 0.8 * Math.min(1, age / 0.004) * sum;
    }

    /** A resonance of two poles whose place changes from sample to sample. */
    private static final class Formant {
        private double last;
        private double before;

        double next(double in, double frequency, double width, double rate) {
            double radius = Math.exp(-Math.PI * width / rate), angle = 2 * Math.PI * frequency / rate;
            double gain = (1 - radius) * 2 * Math.sin(angle);
            double out = gain * in * 12 + 2 * radius * Math.cos(angle) * last - radius * radius * before;
            before = last;
            last = out;
            return out;
        }
    }
}
