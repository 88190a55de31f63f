package galena.desk.page;

/**
 * Two recordings of one programme, made fit to be switched between while they play: the later one is shifted so that both stand at the
 * same instant, it is turned over where its sign is the other, both are brought to one level, and together to a peak that is safe to
 * begin with. What is matched is the mean power over the stretches in which the programme sounds; the shift is the one at which the
 * two correlate best.
 */
final class SideBySide {
    /** Of full scale, that neither passes: 6 dB below it. */
    static final double MOST = 0.5;

    private static final double LONGEST_DELAY = 0.025;
    private static final double LOOKED_AT = 3;
    private static final double BLOCK = 0.4;
    /** Power of a block against the loudest, from which it counts as sounding: 30 dB down. */
    private static final double SOUNDING = 1e-3;

    private static final double FADE = 0.5;
    private static final double END = 0.02;

    private final float[] sent;
    private final float[] heard;
    private final double rate;

    /**
     * Brings both in order, in place.
     *
     * @param sent as it went in; changed
     * @param heard as it came out, not before it; changed
     * @param count frames of each
     * @param rate frames per second, Hz
     */
    static SideBySide of(float[] sent, float[] heard, int count, double rate) {
        SideBySide both = new SideBySide(sent, heard, rate);
        both.arrange(count);
        return both;
    }

    private int delay;

    private SideBySide(float[] sent, float[] heard, double rate) {
        this.sent = sent;
        this.heard = heard;
        this.rate = rate;
    }

    /** Frames by which the second came later. */
    int delay() {
        return delay;
    }

    private void arrange(int count) {
        int from = loudest(count);
        double best = 0;
        int most = (int) Math.min(LONGEST_DELAY * rate, count / 2.0),
                span = (int) Math.min(LOOKED_AT * rate, count - from);
        for (int lag = 0; lag <= most; lag++) {
            double sum = 0;
            for (int k = from; k + lag < from + span; k++) sum += (double) sent[k] * heard[k + lag];
            if (Math.abs(sum) <= Math.abs(best)) continue;
            best = sum;
            delay = lag;
        }
        float sign = best < 0 ? -1 : 1;
        for (int k = 0; k < count; k++) heard[k] = k + delay < count ? sign * heard[k + delay] : 0;
        fade(sent, count);
        fade(heard, count);
        level(count);
    }

    private int loudest(int count) {
        int block = (int) Math.max(1, LOOKED_AT * rate), at = 0;
        double most = -1;
        for (int from = 0; from < count; from += block) {
            double power = power(sent, from, Math.min(count, from + block));
            if (power <= most) continue;
            most = power;
            at = from;
        }
        return at;
    }

    /** The set's own output begins softly; so does the other, and both end softly. */
    private void fade(float[] x, int count) {
        int begin = (int) Math.min(FADE * rate, count), end = (int) Math.min(END * rate, count);
        if (x == sent) for (int k = 0; k < begin; k++) x[k] *= (float) k / begin;
        for (int k = 0; k < end; k++) x[count - 1 - k] *= (float) k / end;
    }

    private void level(int count) {
        int block = (int) Math.max(1, BLOCK * rate);
        double most = 0;
        for (int from = 0; from < count; from += block)
            most = Math.max(most, power(sent, from, Math.min(count, from + block)));
        double a = 0, b = 0;
        int risen = (int) Math.min(FADE * rate, count / 2.0); // before that one of them may be softer
        for (int from = risen; from < count; from += block) {
            int to = Math.min(count, from + block);
            if (power(sent, from, to) < SOUNDING * most) continue;
            a += power(sent, from, to) * (to - from);
            b += power(heard, from, to) * (to - from);
        }
        double match = a > 0 && b > 0 ? Math.sqrt(a / b) : 1;
        double peak = Math.max(peak(sent, count), match * peak(heard, count));
        double gain = peak > 0 ? MOST / peak : 1;
        for (int k = 0; k < count; k++) {
            sent[k] *= (float) gain;
            heard[k] *= (float) (gain * match);
        }
    }

    private static double power(float[] x, int from, int to) {
        double sum = 0;
        for (int k = from; k < to; k++) sum += (double) x[k] * x[k];
        return to > from ? sum / (to - from) : 0;
    }

    private static double peak(float[] x, int count) {
        double peak = 0;
        for (int k = 0; k < count; k++) peak = Math.max(peak, Math.abs(x[k]));
        return peak;
    }
}
