package galena.bench.capture;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Locale;

/**
 * The door: reads a capture of any kind by looking at it.
 *
 * <p>In order: SigMF by its name, WAV by its first bytes, IQ without a header if it is stated or the bytes are no text,
 * and text for everything else.
 */
public final class Captures {
    private static final int BUFFER = 1 << 18;

    private Captures() {}

    /**
     * Reads a file, unpacking gzip.
     *
     * @throws UnreadableCapture when the file is not a capture, or more must be stated about it
     */
    public static Capture read(Path file, Overrides overrides) throws UnreadableCapture {
        String name = file.getFileName() == null
                ? file.toString()
                : file.getFileName().toString();
        try {
            if (Sigmf.isSigmf(file)) return Sigmf.read(file, overrides);
            try (InputStream in = new BufferedInputStream(ByteFeed.open(file), BUFFER)) {
                return read(file.toString(), name, in, overrides);
            }
        } catch (UnreadableCapture e) {
            throw e;
        } catch (IOException | UncheckedIOException e) {
            throw new UnreadableCapture(
                    file.toString(),
                    "the file cannot be read (" + e.getMessage() + ")",
                    "Check that it can be opened and is whole");
        }
    }

    /**
     * Reads a capture from a stream, which stays open.
     *
     * @param place for errors
     * @param name of the capture, from which a rate may be read
     */
    static Capture read(String place, String name, InputStream in, Overrides overrides) throws IOException {
        in.mark(BUFFER / 2);
        byte[] head = in.readNBytes(4096);
        in.reset();
        if (head.length == 0) throw new UnreadableCapture(place, "the file is empty", "Save the capture again");
        if (startsWith(head, "RIFF") || startsWith(head, "RF64")) return WavCapture.read(place, name, in, overrides);
        boolean stated = overrides.format().isPresent()
                || overrides.kind().map(k -> k == Overrides.Kind.IQ).orElse(false);
        if (stated || (namedIq(name) && !readsAsText(head))) return RawIq.read(place, name, in, overrides);
        return TextCapture.read(place, name, in, overrides);
    }

    private static boolean namedIq(String name) {
        return name.toLowerCase(Locale.ROOT)
                .matches(".*\\.(iq|raw|bin|dat|cu8|cs8|cs16|cf32|c8|c16|f32|s16|u8)(\\.gz)?");
    }

    private static boolean readsAsText(byte[] head) {
        int high = 0;
        for (byte b : head) if (b < 0) high++;
        boolean utf16 = head.length > 1 && ((head[0] == -1 && head[1] == -2) || (head[0] == -2 && head[1] == -1));
        return utf16 || (high < head.length / 10 && !TextCapture.looksBinary(head));
    }

    private static boolean startsWith(byte[] head, String word) {
        if (head.length < word.length()) return false;
        for (int k = 0; k < word.length(); k++) if (head[k] != word.charAt(k)) return false;
        return true;
    }
}
