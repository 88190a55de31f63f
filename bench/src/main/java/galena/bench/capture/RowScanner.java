package galena.bench.capture;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Rows of numbers from bytes, in one buffer, without a string in sight. A row of which a wanted cell holds no number is
 * passed on as bad.
 */
final class RowScanner {
    /** Takes the rows. */
    interface Sink {
        /** A row; the array is reused. */
        void row(double[] values) throws IOException;

        /** A row without the numbers wanted; blank lines are not passed on. */
        void bad(long line, String text) throws IOException;
    }

    private static final int BUFFER = 1 << 18;
    /** A line may be this long (bytes): many channels, not a whole record. */
    private static final int LONGEST_LINE = 1 << 20;

    private final InputStream in;
    private final String place;
    private final byte separator;
    private final boolean spaces;
    private final byte decimal;
    private final byte thousands;
    private final int[] slot;
    private final double[] values;
    private byte[] buffer = new byte[BUFFER];

    /**
     * @param in bytes; not closed here
     * @param place file name, for errors
     * @param columns wanted, from 0, in the order of the row's values
     */
    RowScanner(InputStream in, String place, Dialect dialect, int[] columns) {
        this.in = in;
        this.place = place;
        this.separator = (byte) dialect.separator();
        this.spaces = dialect.separator() == ' ';
        this.decimal = (byte) dialect.decimal();
        this.thousands = (byte) dialect.thousands();
        this.values = new double[columns.length];
        this.slot = new int[Arrays.stream(columns).max().orElse(0) + 1];
        Arrays.fill(slot, -1);
        for (int k = 0; k < columns.length; k++) slot[columns[k]] = k;
    }

    /** Scans to the end, leaving out the first lines. */
    void scan(int skipLines, Sink sink) throws IOException {
        int filled = 0;
        long line = 0;
        boolean last = false;
        while (!last) {
            int count = in.read(buffer, filled, buffer.length - filled);
            last = count < 0;
            filled += Math.max(0, count);
            int from = 0;
            while (from < filled) {
                int end = lineEnd(from, filled);
                if (end == filled && !last) break;
                if (line++ >= skipLines) row(from, end, line, sink);
                from = end + (end + 1 < filled && buffer[end] == '\r' && buffer[end + 1] == '\n' ? 2 : 1);
            }
            filled = Math.max(0, filled - from);
            if (filled > 0) System.arraycopy(buffer, from, buffer, 0, filled);
            if (filled == buffer.length) enlarge(line);
        }
    }

    /** A CR at the very end of the buffer may be half of a CR LF, so it does not end a line yet. */
    private int lineEnd(int from, int filled) {
        for (int p = from; p < filled; p++) {
            if (buffer[p] == '\n') return p;
            if (buffer[p] == '\r') return p + 1 == filled ? filled : p;
        }
        return filled;
    }

    private void enlarge(long line) throws UnreadableCapture {
        if (buffer.length >= LONGEST_LINE) {
            throw new UnreadableCapture(
                    place + ":" + (line + 1),
                    "the line is longer than " + LONGEST_LINE / 1024 + " kB",
                    "Check that this is the text form of the capture");
        }
        buffer = Arrays.copyOf(buffer, 2 * buffer.length);
    }

    private void row(int from, int end, long line, Sink sink) throws IOException {
        int column = 0, found = 0, p = from;
        while (p <= end && column < slot.length) {
            int start = p;
            if (spaces) {
                while (start < end && (buffer[start] == ' ' || buffer[start] == '\t')) start++;
                p = start;
                while (p < end && buffer[p] != ' ' && buffer[p] != '\t') p++;
            } else {
                while (p < end && buffer[p] != separator) {
                    if (buffer[p] == '"') p = closingQuote(p, end);
                    p++;
                }
            }
            int into = slot[column++];
            if (into >= 0) {
                double x = Numbers.parse(buffer, start, Math.min(p, end), decimal, thousands);
                if (Double.isNaN(x) || Double.isInfinite(x)) break;
                values[into] = x;
                found++;
            }
            p++;
        }
        if (found == values.length) sink.row(values);
        else if (!blank(from, end))
            sink.bad(line, new String(buffer, from, Math.min(end - from, 40), StandardCharsets.UTF_8));
    }

    private int closingQuote(int open, int end) {
        int p = open + 1;
        while (p < end && buffer[p] != '"') p++;
        return Math.min(p, end - 1);
    }

    private boolean blank(int from, int end) {
        for (int p = from; p < end; p++) if (buffer[p] > ' ' || buffer[p] < 0) return false;
        return true;
    }
}
