package galena.bench.measure;

import galena.bench.capture.Capture;
import galena.bench.capture.Captures;
import galena.bench.capture.Overrides;
import galena.bench.capture.UnreadableCapture;
import java.nio.file.Path;

/** The door: a file in, a report out. */
public final class Measure {
    private Measure() {}

    /**
     * Reads and measures a capture.
     *
     * @param overrides what is stated about the file
     * @param expected what is known of the signal
     * @throws UnreadableCapture when the file is not a capture, or more must be stated about it
     */
    public static Report file(Path file, Overrides overrides, Expected expected) throws UnreadableCapture {
        return capture(Captures.read(file, overrides), expected);
    }

    /** Measures a capture that was read before. */
    public static Report capture(Capture capture, Expected expected) {
        return Measurement.of(capture, expected);
    }
}
