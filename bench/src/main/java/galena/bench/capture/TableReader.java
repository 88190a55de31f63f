package galena.bench.capture;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads the rows of a table whose layout is known, and settles the time between samples from all of them. */
final class TableReader implements RowScanner.Sink {
    /** Words and stamps may differ by this much before somebody has to decide. */
    private static final double AGREE = 0.01;
    /** Worst relative error of the time base that rounded stamps may leave. */
    private static final double ROUNDING_BEARABLE = 5e-3;

    private final String place;
    private final TextLayout layout;
    private final Overrides overrides;
    private final SampleStore store;
    private final int timeSlots;
    private final double headStep;
    private final double resolution;
    private final int digits;

    private double first;
    private double last;
    private long sinceStart;
    private double longestSpan;
    private long longestCount;
    private double startOfLongest;
    private boolean any;
    private long equalStamps;
    private long gaps;
    private long restarts;
    private long backwards;
    private long skipped;
    private String firstSkipped = "";

    TableReader(String place, TextLayout layout, Block block, Overrides overrides) {
        this.place = place;
        this.layout = layout;
        this.overrides = overrides;
        this.timeSlots = layout.time() < 0 ? 0 : 1;
        this.store = new SampleStore(layout.channels().length, overrides.keep());
        this.headStep = layout.stamps().map(TimeStamps::step).orElse(0.0);
        this.digits = layout.time() < 0 ? 0 : significantDigits(block, layout.time());
        this.resolution = layout.time() < 0 ? 0 : fixedDecimals(block, layout.time());
    }

    Capture read(String name, InputStream bytes) throws IOException {
        int[] columns = new int[layout.channels().length + timeSlots];
        if (timeSlots == 1) columns[0] = layout.time();
        System.arraycopy(layout.channels(), 0, columns, timeSlots, layout.channels().length);
        new RowScanner(bytes, place, layout.dialect(), columns).scan(layout.firstLine(), this);
        closeSegment();
        return finish(name);
    }

    @Override
    public void row(double[] values) {
        if (timeSlots == 1) clock(values[0]);
        store.add(values, timeSlots);
    }

    private void clock(double t) {
        if (!any) {
            any = true;
            first = t;
        } else {
            double step = t - last;
            if (step == 0) equalStamps++;
            if (step < 0) backwards++;
            if (step < 0 && -step > 0.5 * Math.max(headStep, last - first)) {
                restarts++;
                closeSegment();
                store.breakHere();
                first = t;
                sinceStart = 0;
            } else if (headStep > 0 && step > 1.5 * headStep + 2 * resolutionAt(t)) {
                gaps++;
                closeSegment();
                store.breakHere();
                first = t;
                sinceStart = 0;
            }
        }
        last = t;
        sinceStart++;
    }

    private void closeSegment() {
        if (sinceStart > longestCount) {
            longestCount = sinceStart;
            longestSpan = last - first;
            startOfLongest = first;
        }
    }

    private double resolutionAt(double t) {
        if (resolution > 0) return resolution;
        return t == 0 ? 0 : Math.pow(10, Math.floor(Math.log10(Math.abs(t))) + 1 - digits);
    }

    @Override
    public void bad(long line, String text) {
        skipped++;
        if (firstSkipped.isEmpty()) firstSkipped = "line " + line + " (\"" + text.trim() + "\")";
        if (timeSlots == 0) store.breakHere(); // nothing else would show that samples are missing here
    }

    private static int significantDigits(Block block, int column) {
        int most = 1;
        for (int k = block.first(); k <= block.last(); k++) {
            String mantissa = block.cell(k, column).replaceFirst("[eE].*", "").replaceAll("[^0-9]", "");
            most = Math.max(most, mantissa.replaceFirst("^0+", "").length());
        }
        return most;
    }

    /** Step of the last decimal when every stamp is written with the same number of them; 0 otherwise. */
    private static double fixedDecimals(Block block, int column) {
        int decimals = -1;
        for (int k = block.first(); k <= block.last(); k++) {
            String cell = block.cell(k, column);
            if (cell.isEmpty()) continue;
            int mark = cell.indexOf(block.dialect().decimal());
            if (!cell.matches("[-+]?[0-9.,]+")) return 0; // an exponent or a suffix moves the last decimal
            int count = mark < 0 ? 0 : cell.length() - mark - 1;
            if (decimals >= 0 && count != decimals) return 0;
            decimals = count;
        }
        return Math.pow(10, -Math.max(0, decimals));
    }

    private Capture finish(String name) throws UnreadableCapture {
        long rows = store.rows();
        if (rows < 8) {
            throw new UnreadableCapture(
                    place,
                    "only " + rows + (rows == 1 ? " sample was" : " samples were") + " found",
                    "Record at least a few hundred");
        }
        boolean pairs = layout.stamps().map(TimeStamps::paired).orElse(false);
        List<Note> notes = new ArrayList<>(layout.notes());
        double error = timeSlots == 1 && longestSpan > 0
                ? 2 * resolutionAt(Math.max(Math.abs(last), Math.abs(first))) / longestSpan
                : 0;
        Settled settled = settle(pairs, error);
        notes(notes, rows, pairs);
        List<Channel> channels = store.channels(layout.names(), layout.units(), layout.scale(), layout.offset());
        for (Channel channel : channels) {
            if (channel.statistics().clipped()) {
                notes.add(new Note(Note.Kind.CLIPPED, "Channel \"" + channel.name() + "\" is cut off at its ends"));
            }
        }
        double start = timeSlots == 1
                ? startOfLongest * layout.timeScale()
                : layout.heading().start().orElse(0);
        boolean audio = overrides.kind().map(k -> k == Overrides.Kind.AUDIO).orElse(false);
        Understanding understanding = new Understanding(
                words(pairs),
                layout.dialect().words(),
                settled.source,
                settled.error,
                rows,
                skipped,
                layout.firstLine(),
                notes);
        return new Capture(name, new Waveforms(settled.interval, start, channels, pairs, audio), understanding);
    }

    private String words(boolean pairs) {
        String time = timeSlots == 1 ? "time in column " + (layout.time() + 1) + " and " : "no time column, ";
        int count = layout.channels().length;
        return "table with " + time + count + (count == 1 ? " channel" : " channels")
                + (pairs ? " as lowest and highest pairs" : "");
    }

    private record Settled(double interval, String source, double error) {}

    /** The time between samples: stated, by the words, or by the stamps; where the last two differ, nobody's guess. */
    private Settled settle(boolean pairs, double error) throws UnreadableCapture {
        Optional<Heading.StatedInterval> words = layout.heading().interval();
        double perRow = pairs ? 0.5 : 1;
        double stamps = timeSlots == 1 && longestCount > 1
                ? longestSpan / ((longestCount - 1) * perRow) * layout.timeScale()
                : 0;
        if (pairs && longestCount > 2) stamps = longestSpan / (Math.ceil(longestCount / 2.0) - 1) * layout.timeScale();
        if (overrides.interval().isPresent()) {
            return new Settled(overrides.interval().getAsDouble(), "stated", 0);
        }
        if (stamps > 0 && words.isPresent() && !pairs) {
            double seconds = words.get().seconds();
            if (Math.abs(seconds / stamps - 1) > AGREE) {
                throw new UnreadableCapture(
                        place + ":" + (words.get().line() + 1),
                        String.format(
                                Locale.ROOT,
                                "the heading gives %.6g s between samples, the time column %.6g s",
                                seconds,
                                stamps),
                        "State the interval that is right");
            }
            if (equalStamps > 0 || error > 1e-6)
                return new Settled(seconds, "heading, line " + (words.get().line() + 1), 0);
        }
        if (stamps > 0) {
            if (equalStamps > 0 && !pairs && error > ROUNDING_BEARABLE) {
                throw new UnreadableCapture(
                        place, "the time stamps are too coarse to tell the time between samples", "State the interval");
            }
            return new Settled(stamps, "time column, last less first over the steps between", error);
        }
        if (words.isPresent())
            return new Settled(
                    words.get().seconds(), "heading, line " + (words.get().line() + 1), 0);
        if (risesEvenly()) {
            throw new UnreadableCapture(
                    place,
                    "its only numbers rise evenly, as time does: there are none in a column of values",
                    "Export the channel's values as numbers, or state the interval if these are they");
        }
        throw new UnreadableCapture(place, "nothing in the file tells the time between samples", "State the interval");
    }

    private boolean risesEvenly() {
        double[] x = store.channels(layout.names(), layout.units(), layout.scale(), layout.offset())
                .get(0)
                .samples();
        double step = x.length > 2 ? (x[x.length - 1] - x[0]) / (x.length - 1) : 0;
        for (int k = 0; k < x.length; k++) if (!(Math.abs(x[k] - x[0] - k * step) < step / 2)) return false;
        return true;
    }

    private void notes(List<Note> notes, long rows, boolean pairs) {
        if (skipped > 0) {
            notes.add(new Note(
                    Note.Kind.ROWS_SKIPPED,
                    skipped + (skipped == 1 ? " row holds" : " rows hold") + " no sample, the first is "
                            + firstSkipped));
        }
        if (pairs) {
            notes.add(new Note(
                    Note.Kind.MIN_MAX_PAIRS,
                    "Two values share each time stamp: peak-detected data, good for the envelope, not for a spectrum"));
        } else if (equalStamps > 0) {
            notes.add(new Note(
                    Note.Kind.ROUNDED_STAMPS, equalStamps + " time stamps equal the one before: they are rounded"));
        }
        if (gaps > 0) {
            notes.add(new Note(
                    Note.Kind.DROPPED_SAMPLES,
                    "The time column jumps " + gaps + (gaps == 1 ? " time" : " times")
                            + "; the longest unbroken stretch is used"));
        } else if (timeSlots == 0 && skipped > 1 && store.breaks() > 0) {
            notes.add(new Note(
                    Note.Kind.DROPPED_SAMPLES, "Bad rows interrupt the samples; the longest unbroken stretch is used"));
        }
        if (backwards > restarts) {
            notes.add(new Note(
                    Note.Kind.CONTRADICTION,
                    "The time column runs backwards " + (backwards - restarts)
                            + " times: rows are out of order, or it is not time"));
        }
        if (restarts > 0) {
            notes.add(new Note(Note.Kind.SEGMENTS, (restarts + 1) + " records follow each other; the longest is used"));
        }
        if (store.keptLength() < rows && gaps == 0 && restarts == 0) {
            notes.add(new Note(
                    Note.Kind.PARTLY_KEPT, store.keptLength() + " of " + rows + " samples are kept for measuring"));
        }
        layout.heading().promisedRows().ifPresent(promised -> {
            if (promised > 8 && Math.abs(promised - rows) > 0.01 * promised + 2) {
                notes.add(new Note(
                        Note.Kind.CONTRADICTION,
                        String.format(
                                Locale.ROOT, "The heading promises %.0f samples, %d were found", promised, rows)));
            }
        });
    }
}
