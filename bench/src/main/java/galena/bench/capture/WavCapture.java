package galena.bench.capture;

import galena.signal.carrier.CarrierFinder;
import galena.signal.carrier.Samples;
import galena.signal.stream.WavHeader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** WAV: audio, real channels, or in-phase and quadrature in two channels. */
final class WavCapture {
    /** A real capture below this rate (Hz) cannot hold a medium-wave carrier: it is taken as audio. */
    private static final double AUDIO_BELOW = 200e3;
    /** How much weaker the mirror image must be for two channels to be in quadrature (dB). */
    private static final double IMAGE_REJECTION = 12;

    private WavCapture() {}

    static Capture read(String place, String name, InputStream in, Overrides overrides) throws IOException {
        WavHeader header;
        try {
            header = WavHeader.read(in);
        } catch (WavHeader.BadHeader e) {
            throw new UnreadableCapture(
                    place, "the WAV cannot be read: " + e.getMessage(), "Save it again as plain PCM");
        } catch (java.io.EOFException e) {
            throw new UnreadableCapture(place, "the WAV ends within its header", "Copy the file again");
        }
        SampleStore store = new SampleStore(header.channels(), overrides.keep());
        FrameReader frames = new FrameReader(header.format(), header.channels(), ByteOrder.LITTLE_ENDIAN);
        frames.read(in, header.dataBytes(), store);
        if (frames.frames() < 64)
            throw new UnreadableCapture(
                    place, "the WAV holds only " + frames.frames() + " samples", "Record at least a second");
        List<Note> notes = notes(header, frames, store);
        double interval = overrides.interval().orElse(1 / header.rate());
        List<Channel> channels = channels(store, overrides);
        Content content = content(channels, interval, header, overrides, notes);
        for (Channel c : channels) {
            if (c.statistics().clipped())
                notes.add(new Note(Note.Kind.CLIPPED, "Channel \"" + c.name() + "\" is cut off at its ends"));
        }
        String source =
                overrides.interval().isPresent() ? "stated" : "the rate in the header; some programs write a wrong one";
        return new Capture(
                name,
                content,
                new Understanding(
                        words(content),
                        header.format().toString(),
                        source,
                        0,
                        frames.frames(),
                        frames.notFinite(),
                        0,
                        notes));
    }

    private static List<Note> notes(WavHeader header, FrameReader frames, SampleStore store) {
        List<Note> notes = new ArrayList<>();
        long frame = (long) header.channels() * header.format().bytes();
        if (header.dataBytes() > 0 && frames.frames() < header.dataBytes() / frame) {
            notes.add(new Note(
                    Note.Kind.CONTRADICTION,
                    String.format(
                            Locale.ROOT,
                            "The header promises %d samples, %d are there: the file is cut short",
                            header.dataBytes() / frame,
                            frames.frames())));
        }
        add(frames, store, notes);
        return notes;
    }

    /** Notes that any stream of frames may need. */
    static void add(FrameReader frames, SampleStore store, List<Note> notes) {
        if (frames.notFinite() > 0)
            notes.add(new Note(
                    Note.Kind.DROPPED_SAMPLES,
                    frames.notFinite() + " samples are not numbers; the longest stretch without them is used"));
        if (store.keptLength() < frames.frames() - frames.notFinite() && frames.notFinite() == 0)
            notes.add(new Note(
                    Note.Kind.PARTLY_KEPT,
                    store.keptLength() + " of " + frames.frames() + " samples are kept for measuring"));
    }

    /** Channels by number, in full scales unless a scale is stated. */
    static List<Channel> channels(SampleStore store, Overrides overrides) {
        int count = store.channelCount();
        List<String> names = new ArrayList<>(), units = new ArrayList<>();
        double[] scale = new double[count], offset = new double[count];
        for (int c = 0; c < count; c++) {
            names.add("channel " + (c + 1));
            units.add(overrides.scale().isPresent() ? "V" : "full scale");
            scale[c] = overrides.scale().orElse(1);
        }
        return store.channels(names, units, scale, offset);
    }

    private static Content content(
            List<Channel> channels, double interval, WavHeader header, Overrides overrides, List<Note> notes) {
        Optional<Overrides.Kind> stated = overrides.kind();
        boolean pair = channels.size() == 2;
        boolean iq = stated.map(k -> k == Overrides.Kind.IQ).orElseGet(() -> pair && inQuadrature(channels, interval));
        if (iq && pair) {
            if (stated.isEmpty())
                notes.add(new Note(Note.Kind.GUESSED, "The two channels are in quadrature: taken as IQ"));
            OptionalDouble centre = overrides.centre().isPresent() ? overrides.centre() : header.centre();
            if (centre.isEmpty())
                notes.add(new Note(
                        Note.Kind.GUESSED, "The tuned frequency is not in the file; frequencies count from it"));
            return new IqRecord(interval, centre, channels.get(0), channels.get(1));
        }
        boolean audio = stated.map(k -> k == Overrides.Kind.AUDIO).orElse(1 / interval < AUDIO_BELOW);
        if (audio && stated.isEmpty())
            notes.add(
                    new Note(
                            Note.Kind.GUESSED,
                            "At this rate it holds no medium-wave carrier: taken as audio; state \"waveform\" for an intermediate frequency"));
        return new Waveforms(interval, 0, channels, false, audio);
    }

    /** Whether the strongest line of I + jQ has no equal at the mirrored frequency, as two real channels would have. */
    static boolean inQuadrature(List<Channel> channels, double interval) {
        int n = Math.min(1 << 16, channels.get(0).samples().length);
        double[] i = java.util.Arrays.copyOf(channels.get(0).samples(), n),
                q = java.util.Arrays.copyOf(channels.get(1).samples(), n);
        Optional<CarrierFinder.Line> line = CarrierFinder.strongest(Samples.complex(i, q, interval));
        if (line.isEmpty()) return false;
        double re = 0, im = 0, mirrorRe = 0, mirrorIm = 0;
        for (int k = 0; k < n; k++) {
            double w = 0.5 - 0.5 * Math.cos(2 * Math.PI * k / n),
                    angle = 2 * Math.PI * line.get().frequency() * interval * k;
            double c = w * Math.cos(angle), s = w * Math.sin(angle);
            re += i[k] * c + q[k] * s;
            im += q[k] * c - i[k] * s;
            mirrorRe += i[k] * c - q[k] * s;
            mirrorIm += q[k] * c + i[k] * s;
        }
        double ratio = (re * re + im * im) / Math.max(1e-300, mirrorRe * mirrorRe + mirrorIm * mirrorIm);
        return 10 * Math.log10(ratio) > IMAGE_REJECTION;
    }

    private static String words(Content content) {
        if (content instanceof IqRecord) return "WAV, IQ in two channels";
        Waveforms waves = (Waveforms) content;
        return "WAV, " + waves.channels().size() + (waves.audio() ? " audio" : "")
                + (waves.channels().size() == 1 ? " channel" : " channels");
    }
}
