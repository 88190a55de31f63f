package galena.bench.capture;

import galena.signal.stream.IqGuess;
import galena.signal.stream.SampleFormat;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Headerless IQ: two interleaved numbers to a sample. The format is stated or told from the histogram, the rate is stated
 * or stands in the file's name; a text header of angle brackets before the samples is passed over.
 */
final class RawIq {
    private static final int HEAD = 1 << 17;
    private static final Pattern RATE = Pattern.compile("(?i)(\\d+(?:\\.\\d+)?)\\s*([kM]?)(?:sps|sa_?s|s_?s)(?![a-z])");
    private static final Pattern HERTZ = Pattern.compile("(?i)(\\d+(?:\\.\\d+)?)\\s*([kM]?)hz");

    private RawIq() {}

    static Capture read(String place, String name, InputStream in, Overrides overrides) throws IOException {
        byte[] head = in.readNBytes(HEAD);
        int skip = bracketHeader(head);
        byte[] samples = java.util.Arrays.copyOfRange(head, skip, head.length);
        List<Note> notes = new ArrayList<>();
        Optional<SampleFormat> guess = overrides.format().or(() -> IqGuess.of(samples));
        if (guess.isEmpty()) {
            throw new UnreadableCapture(
                    place,
                    "the format of the numbers cannot be told from their histogram",
                    "State it: u8, s8, s16 or f32");
        }
        if (overrides.format().isEmpty())
            notes.add(new Note(Note.Kind.GUESSED, "The numbers look like " + guess.get() + " by their histogram"));
        double interval = interval(place, name, overrides, notes);
        OptionalDouble centre = overrides.centre().isPresent() ? overrides.centre() : named(HERTZ, name);
        SampleStore store = new SampleStore(2, overrides.keep());
        FrameReader frames = new FrameReader(guess.get(), 2, ByteOrder.LITTLE_ENDIAN);
        frames.read(new SequenceInputStream(new ByteArrayInputStream(samples), in), -1, store);
        return capture(
                place,
                name,
                "headerless IQ",
                guess.get().toString(),
                interval,
                centre,
                store,
                frames,
                notes,
                overrides);
    }

    private static double interval(String place, String name, Overrides overrides, List<Note> notes)
            throws UnreadableCapture {
        if (overrides.interval().isPresent()) return overrides.interval().getAsDouble();
        OptionalDouble rate = named(RATE, name);
        if (rate.isEmpty() || !(rate.getAsDouble() > 0))
            throw new UnreadableCapture(
                    place,
                    "headerless IQ does not hold its sample rate",
                    "State the rate, or put it into the name: capture_2.4Msps.iq");
        notes.add(new Note(
                Note.Kind.GUESSED,
                String.format(
                        Locale.ROOT,
                        "The rate of %.6g samples a second is taken from the file's name",
                        rate.getAsDouble())));
        return 1 / rate.getAsDouble();
    }

    private static OptionalDouble named(Pattern pattern, String name) {
        Matcher m = pattern.matcher(name);
        if (!m.find()) return OptionalDouble.empty();
        double factor = m.group(2).equalsIgnoreCase("k") ? 1e3 : m.group(2).equalsIgnoreCase("m") ? 1e6 : 1;
        return OptionalDouble.of(Double.parseDouble(m.group(1)) * factor);
    }

    /** Length of a text header that opens with an angle bracket and ends with one and a line end, or 0. */
    private static int bracketHeader(byte[] head) {
        int look = Math.min(head.length, 4096), end = 0;
        if (look < 8 || head[0] != '<') return 0;
        for (int k = 1; k < look; k++) {
            if (head[k] == '\n' && (head[k - 1] == '>' || head[k - 1] == '\r')) end = k + 1;
            if (head[k] < ' ' && head[k] != '\n' && head[k] != '\r' && head[k] != '\t') break;
        }
        return new String(head, 0, end, StandardCharsets.ISO_8859_1).contains("</") ? end : 0;
    }

    static Capture capture(
            String place,
            String name,
            String layout,
            String format,
            double interval,
            OptionalDouble centre,
            SampleStore store,
            FrameReader frames,
            List<Note> notes,
            Overrides overrides)
            throws UnreadableCapture {
        if (store.rows() < 64)
            throw new UnreadableCapture(
                    place, "only " + store.rows() + " samples were found", "Record at least a second");
        if (frames.bytesLeft() > 0)
            notes.add(
                    new Note(
                            Note.Kind.CONTRADICTION,
                            frames.bytesLeft()
                                    + " bytes at the end make no whole sample: the file is cut short, or the format is another"));
        WavCapture.add(frames, store, notes);
        if (centre.isEmpty())
            notes.add(new Note(Note.Kind.GUESSED, "The tuned frequency is not known; frequencies count from it"));
        String unit = overrides.scale().isPresent() ? "V" : "full scale";
        double scale = overrides.scale().orElse(1);
        List<Channel> channels =
                store.channels(List.of("I", "Q"), List.of(unit, unit), new double[] {scale, scale}, new double[2]);
        for (Channel c : channels) {
            if (c.statistics().clipped())
                notes.add(new Note(
                        Note.Kind.CLIPPED,
                        "Channel \"" + c.name() + "\" is cut off at its ends: the receiver is overloaded"));
        }
        return new Capture(
                name,
                new IqRecord(interval, centre, channels.get(0), channels.get(1)),
                new Understanding(
                        layout,
                        format,
                        overrides.interval().isPresent() ? "stated" : "the rate that goes with the samples",
                        0,
                        frames.frames(),
                        frames.notFinite(),
                        0,
                        notes));
    }
}
