package galena.bench.capture;

import java.io.BufferedReader;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** Lines of small text files, with an end to how long one may be. */
final class Lines {
    private static final int LONGEST = 4096;

    private Lines() {}

    /**
     * The next line without its end, null after the last.
     *
     * @param line its number, for the error
     */
    static @Nullable String next(BufferedReader reader, String place, long line) throws IOException {
        int c = reader.read();
        if (c < 0) return null;
        StringBuilder text = new StringBuilder();
        for (; c >= 0 && c != '\n'; c = reader.read()) {
            if (c == '\r') {
                reader.mark(1);
                if (reader.read() != '\n') reader.reset();
                break;
            }
            if (text.length() == LONGEST) {
                throw new UnreadableCapture(
                        place + ":" + line,
                        "the line is longer than " + LONGEST + " characters",
                        "Logs and sweeps hold one reading to a line");
            }
            text.append((char) c);
        }
        return text.toString();
    }
}
