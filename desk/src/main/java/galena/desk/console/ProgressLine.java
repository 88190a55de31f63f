package galena.desk.console;

import java.time.Duration;
import java.util.Locale;
import java.util.function.LongSupplier;

/**
 * One line that says how far long work has come. Shows itself only to a person who watches, only after a second, and five times a
 * second at most; it is gone when the work is done. For several threads.
 */
public final class ProgressLine implements AutoCloseable {
    private static final long SILENT = Duration.ofSeconds(1).toNanos();
    private static final long BETWEEN = Duration.ofMillis(200).toNanos();

    private final Terminal terminal;
    private final LongSupplier clock;
    private final long start;
    private long shownAt;
    private double furthest;
    private boolean shown;

    public ProgressLine(Terminal terminal) {
        this(terminal, System::nanoTime);
    }

    /** @param clock nanoseconds from any origin */
    ProgressLine(Terminal terminal, LongSupplier clock) {
        this.terminal = terminal;
        this.clock = clock;
        start = clock.getAsLong();
        shownAt = start;
    }

    /**
     * @param share done, 0 to 1
     * @param doing what comes next, in a few words
     */
    public synchronized void at(double share, String doing) {
        furthest = Math.max(furthest, share); // a step that counts anew must not seem to undo what is done
        long now = clock.getAsLong();
        if (now - start < SILENT || now - shownAt < BETWEEN) return;
        shownAt = now;
        shown = true;
        double seconds = (now - start) * 1e-9;
        String left =
                furthest > 0.02 ? String.format(Locale.ROOT, ", %.0f s left", seconds * (1 - furthest) / furthest) : "";
        terminal.overwrite(String.format(Locale.ROOT, "%s: %.0f %%%s (Ctrl-C stops)", doing, 100 * furthest, left));
    }

    /** Clears the line. */
    @Override
    public synchronized void close() {
        if (shown) terminal.overwrite("");
    }
}
