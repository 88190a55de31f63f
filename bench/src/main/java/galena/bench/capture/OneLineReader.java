package galena.bench.capture;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;

/** All samples in one line: cells are taken as they come, so the line may be of any length. */
final class OneLineReader {
    private static final int LONGEST_CELL = 64;

    private OneLineReader() {}

    /**
     * Feeds every number of the line into a store.
     *
     * @param in bytes, from the start of the line
     * @return cells that hold no number
     */
    static long read(InputStream in, Dialect dialect, SampleStore store, String place) throws IOException {
        byte[] buffer = new byte[1 << 16], cell = new byte[LONGEST_CELL];
        double[] one = new double[1];
        int length = 0, count;
        long bad = 0;
        while ((count = in.read(buffer)) > 0) {
            for (int k = 0; k < count; k++) {
                byte c = buffer[k];
                boolean end =
                        c == dialect.separator() || c == '\n' || c == '\r' || (dialect.separator() == ' ' && c == '\t');
                if (!end) {
                    if (length == LONGEST_CELL) {
                        throw new UnreadableCapture(
                                place,
                                "a cell is longer than " + LONGEST_CELL + " characters and holds no number",
                                "Check that this is the text form of the capture");
                    }
                    cell[length++] = c;
                    continue;
                }
                if (length > 0) bad += take(cell, length, dialect, store, one);
                length = 0;
            }
        }
        if (length > 0) bad += take(cell, length, dialect, store, one);
        return bad;
    }

    private static int take(byte[] cell, int length, Dialect dialect, SampleStore store, double[] one) {
        one[0] = Numbers.parse(cell, 0, length, (byte) dialect.decimal(), (byte) 0);
        if (Double.isNaN(one[0]) || Double.isInfinite(one[0])) {
            boolean blank =
                    new String(Arrays.copyOf(cell, length), java.nio.charset.StandardCharsets.ISO_8859_1).isBlank();
            if (!blank) store.breakHere();
            return blank ? 0 : 1;
        }
        store.add(one, 0);
        return 0;
    }
}
