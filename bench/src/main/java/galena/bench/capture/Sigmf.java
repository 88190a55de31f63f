package galena.bench.capture;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import galena.signal.stream.SampleFormat;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * SigMF recordings (open specification, version 1): {@code NAME.sigmf-meta} in JSON beside {@code NAME.sigmf-data}. Read:
 * core:datatype, core:sample_rate, core:num_channels, and core:frequency of the first capture segment.
 */
final class Sigmf {
    private static final Pattern TYPE = Pattern.compile("(c|r)(?:(f)(32|64)|(i|u)(8|16|32))(?:_(le|be))?");
    private static final long LONGEST_META = 16L << 20;

    private Sigmf() {}

    static boolean isSigmf(Path file) {
        String name = file.toString();
        return name.endsWith(".sigmf-meta") || name.endsWith(".sigmf-data");
    }

    static Capture read(Path file, Overrides overrides) throws IOException {
        String base = file.toString().replaceFirst("\\.sigmf-(meta|data)$", "");
        Path meta = Path.of(base + ".sigmf-meta"), data = Path.of(base + ".sigmf-data");
        if (!Files.isRegularFile(meta))
            throw new UnreadableCapture(
                    file.toString(),
                    "its description " + meta.getFileName() + " is missing",
                    "Keep both files side by side");
        if (!Files.isRegularFile(data))
            throw new UnreadableCapture(
                    file.toString(),
                    "its samples " + data.getFileName() + " are missing",
                    "Keep both files side by side");
        if (Files.size(meta) > LONGEST_META)
            throw new UnreadableCapture(meta.toString(), "the description is longer than 16 MB", "Check the file");
        return read(meta.toString(), data, json(meta), overrides);
    }

    private static JsonNode json(Path meta) throws IOException {
        try {
            JsonNode root = new ObjectMapper().readTree(Files.readAllBytes(meta));
            if (root != null && root.path("global").isObject()) return root;
        } catch (JsonProcessingException e) {
            long line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
            throw new UnreadableCapture(
                    meta + ":" + line, "the description is not JSON", "Write it again with the program that made it");
        }
        throw new UnreadableCapture(
                meta.toString(),
                "the description has no \"global\" object",
                "Write it again with the program that made it");
    }

    private static Capture read(String place, Path data, JsonNode root, Overrides overrides) throws IOException {
        JsonNode global = root.path("global");
        String type = global.path("core:datatype").asText("");
        Matcher m = TYPE.matcher(type);
        if (!m.matches())
            throw new UnreadableCapture(
                    place, "core:datatype \"" + type + "\" is not one of the specification", "Write for one: ci16_le");
        boolean complex = m.group(1).equals("c");
        SampleFormat format = format(place, type, m);
        double rate = global.path("core:sample_rate").asDouble(0);
        if (overrides.interval().isEmpty() && !(rate > 0 && rate < 1e12))
            throw new UnreadableCapture(
                    place, "core:sample_rate is missing or not a positive number", "State the interval");
        int channels = global.path("core:num_channels").asInt(1);
        if (channels < 1 || channels > 16 || (complex && channels != 1))
            throw new UnreadableCapture(
                    place, "core:num_channels is " + channels, "Save one channel of IQ, or up to 16 real ones");
        double interval = overrides.interval().orElse(1 / rate);
        ByteOrder order = "be".equals(m.group(6)) ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
        SampleStore store = new SampleStore(complex ? 2 : channels, overrides.keep());
        FrameReader frames = new FrameReader(format, complex ? 2 : channels, order);
        try (InputStream in = new BufferedInputStream(ByteFeed.open(data), 1 << 18)) {
            frames.read(in, -1, store);
        }
        List<Note> notes = new ArrayList<>();
        String name = data.getFileName().toString();
        if (!complex) return real(place, name, type, interval, store, frames, notes, overrides);
        JsonNode tuned = root.path("captures").path(0).path("core:frequency");
        OptionalDouble centre = overrides.centre().isPresent()
                ? overrides.centre()
                : tuned.isNumber() ? OptionalDouble.of(tuned.asDouble()) : OptionalDouble.empty();
        return RawIq.capture(place, name, "SigMF", type, interval, centre, store, frames, notes, overrides);
    }

    private static Capture real(
            String place,
            String name,
            String type,
            double interval,
            SampleStore store,
            FrameReader frames,
            List<Note> notes,
            Overrides overrides)
            throws UnreadableCapture {
        if (store.rows() < 64)
            throw new UnreadableCapture(place, "only " + store.rows() + " samples were found", "Record more");
        WavCapture.add(frames, store, notes);
        List<Channel> channels = WavCapture.channels(store, overrides);
        boolean audio = overrides.kind().map(k -> k == Overrides.Kind.AUDIO).orElse(false);
        return new Capture(
                name,
                new Waveforms(interval, 0, channels, false, audio),
                new Understanding(
                        "SigMF, real", type, "core:sample_rate", 0, frames.frames(), frames.notFinite(), 0, notes));
    }

    private static SampleFormat format(String place, String type, Matcher m) throws UnreadableCapture {
        if (m.group(2) != null) return m.group(3).equals("32") ? SampleFormat.F32 : SampleFormat.F64;
        String size = m.group(5);
        boolean unsigned = m.group(4).equals("u");
        if (unsigned && size.equals("8")) return SampleFormat.U8;
        if (!unsigned && size.equals("8")) return SampleFormat.S8;
        if (!unsigned && size.equals("16")) return SampleFormat.S16;
        if (!unsigned) return SampleFormat.S32;
        throw new UnreadableCapture(
                place, "core:datatype " + type + " is not read", "Save as signed integers or floats");
    }
}
