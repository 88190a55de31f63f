package galena.build.listen;

import java.util.ArrayList;
import java.util.List;

/** Something that happens now and then: how often, how long in all, and when first. Stretches that follow closely are one. */
final class Episodes {
    private static final int KEPT = 8;
    private static final double APART = 0.05;

    private final double rate;
    private final List<Double> starts = new ArrayList<>();
    private long count;
    private long total;
    private long end = Long.MIN_VALUE;
    private long begin = -1;

    /** @param rate samples a second, Hz */
    Episodes(double rate) {
        this.rate = rate;
    }

    /** It begins at a sample, unless it lasts already. */
    void begin(long sample) {
        if (begin >= 0) return;
        begin = sample;
        if (end == Long.MIN_VALUE || sample - end > APART * rate) {
            count++;
            if (starts.size() < KEPT) starts.add(sample / rate);
        }
    }

    /** It has ended before a sample, if it lasted. */
    void end(long sample) {
        if (begin < 0) return;
        total += sample - begin;
        end = sample;
        begin = -1;
    }

    /** Whether it lasts. */
    boolean lasts() {
        return begin >= 0;
    }

    Happened.Event summed(String name) {
        return new Happened.Event(name, count, total / rate, starts);
    }
}
