package galena.desk.page;

import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.listen.Agreement;
import galena.build.listen.Air;
import galena.build.listen.Happened;
import galena.build.listen.Listen;
import galena.build.listen.Listening;
import galena.build.listen.NothingToHear;
import galena.build.listen.SetKind;
import galena.build.listen.Sound;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.quantity.Unit;
import galena.build.reach.Surroundings;
import galena.build.source.BadInputException;
import galena.desk.writing.Words;
import galena.engine.steady.Accuracy;
import galena.signal.audio.Programme;
import galena.signal.audio.WavSink;
import galena.signal.receiver.ReceiverSettings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;

/** A programme as a set receives it, on a slip with both to be played: what went in and what came out. */
final class Heard {
    /** Of a longer recording this much is heard, s. */
    private static final double LONGEST = 60;

    private static final int BITS = 16;
    private static final double PREPARED = 0.7;
    private static final double POINT = 100;

    private final BuildFolder folder;
    private final Overlay overlay;
    private final Progress progress;
    private final List<String> notes = new ArrayList<>();

    private Heard(BuildFolder folder, Overlay overlay, Progress progress) {
        this.folder = folder;
        this.overlay = overlay;
        this.progress = progress;
    }

    /** @param asked {@code programme}, a recording's name or empty for the invented one, and {@code set}, a kind of set */
    static Slip of(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress)
            throws BadInputException, NoOperatingPoint, Running.NotRunning, IOException {
        String word = asked.getOrDefault("set", SetKind.ROD.word());
        SetKind set = SetKind.named(word)
                .orElseThrow(() -> Typed.bad(
                        "set",
                        "no set is called \"" + word + '"',
                        "Known: " + String.join(", ", SetKind.all()) + ".",
                        Optional.empty()));
        String name = asked.getOrDefault("programme", "");
        try (Programmes.Opened opened = Programmes.open(folder, name)) {
            return new Heard(folder, overlay, progress).slip(opened.programme(), name, set);
        }
    }

    private Slip slip(Programme programme, String name, SetKind set)
            throws BadInputException, NoOperatingPoint, Running.NotRunning, IOException {
        Progress first = progress.part(0, PREPARED);
        Running running = Running.of(folder.build(), overlay, Accuracy.LIVE, first);
        Listen listen;
        try {
            listen = Listen.to(running, programme.rate(), first);
        } catch (NothingToHear why) {
            return new Slip(
                    "Listen: nothing to hear",
                    "Nothing to hear: " + why.getMessage() + ".",
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of());
        }
        Optional<Air> air = air(set, first);
        ReceiverSettings settings = set.settings(0);
        Listening stream = listen.through(settings, air.map(Air::noiseToCarrier).orElse(0.0));
        List<Slip.Sound> sounds = send(programme, stream, name, set);
        Happened happened = stream.happened();
        air.filter(Air::silent).ifPresent(a -> notes.add(0, "So far off this set would not play at all."));
        notes.add(
                "Heard through a reduced model of the circuit, " + listen.order() + ". " + trust(listen.agreements()));
        notes.add(
                "Both are brought to the same level over the stretches that sound, and to the same instant; neither passes"
                        + " half of full scale.");
        return new Slip(
                        "Listen: on a " + set.words(),
                        lead(listen.sound(settings), air),
                        List.of(figures(listen.sound(settings), air), events(happened)),
                        List.of(),
                        List.of(),
                        notes)
                .sounding(sounds);
    }

    /** What the reach says of the way to the set; why not, where it says nothing. */
    private Optional<Air> air(SetKind set, Progress within) throws BadInputException, NoOperatingPoint, IOException {
        Air.Sought sought = Air.to(set, folder, overlay, Surroundings.RESIDENTIAL, OptionalDouble.empty(), within);
        sought.missing().ifPresent(why -> notes.add("No noise is in it: " + why + "."));
        return sought.air();
    }

    private List<Slip.Sound> send(Programme programme, Listening stream, String name, SetKind set)
            throws BadInputException, IOException {
        double rate = programme.rate();
        int most = (int) Math.ceil(LONGEST * rate);
        if (programme.length() >= 0) most = (int) Math.min(most, programme.length());
        float[] sent = new float[most], received = new float[most];
        double[] left = new double[Listening.BLOCK], right = left.clone(), out = left.clone();
        int count = 0;
        while (count < most) {
            int n = programme.read(left, right, Math.min(Listening.BLOCK, most - count));
            if (n <= 0) break;
            stream.process(left, right, n, out);
            for (int k = 0; k < n; k++) {
                sent[count + k] = (float) (0.5 * (left[k] + right[k]));
                received[count + k] = (float) out[k];
            }
            count += n;
            if (progress.cancelled()) throw new CancellationException();
            progress.at(PREPARED + (1 - PREPARED) * count / most, "listening");
        }
        if (count == 0)
            throw Typed.bad(name, "the recording holds no sound", "It needs at least one frame.", Optional.empty());
        if (programme.length() > most) notes.add("Of the recording the first minute is heard.");
        SideBySide.of(sent, received, count, rate);
        String what = name.isEmpty() ? "the invented programme: tones, a voice, plucked notes" : name;
        return List.of(
                new Slip.Sound("sent", "What went in: " + what, written("sent", sent, count, rate)),
                new Slip.Sound(
                        "heard", "What a " + set.words() + " received", written("heard", received, count, rate)));
    }

    private Path written(String name, float[] samples, int count, double rate) throws IOException {
        Path cache = Files.createDirectories(Layout.CACHE.in(folder.folder()));
        Path file = cache.resolve(name + ".wav");
        double[] block = new double[Listening.BLOCK];
        try (WavSink sink = new WavSink(file, 1, (int) Math.round(rate), BITS)) {
            for (int from = 0; from < count; from += block.length) {
                int n = Math.min(block.length, count - from);
                for (int k = 0; k < n; k++) block[k] = samples[from + k];
                sink.write(block, n);
            }
            sink.finish();
        }
        return file;
    }

    private static String lead(Sound sound, Optional<Air> air) {
        String noise = air.map(a -> " At " + Words.number(a.distance(), Unit.METRE, 2) + " loud passages stand "
                        + Words.withInterval(a.signalToNoise()) + " above the noise.")
                .orElse("");
        return "A listener gets " + Words.alone(sound.heardLow()) + " to " + Words.alone(sound.heardHigh())
                + " of it, with " + Words.alone(sound.heardDistortion())
                + " distortion at 1 kHz and the programme's level." + noise;
    }

    private static Slip.Table figures(Sound sound, Optional<Air> air) {
        List<List<String>> rows = new ArrayList<>();
        for (Figure figure : sound.figures())
            rows.add(List.of(
                    figure.quantity(),
                    figure instanceof Figure.Known known ? known.at() : "",
                    Words.withInterval(figure)));
        air.ifPresent(a -> rows.add(List.of(
                "signal-to-noise, loud passages",
                "at " + Words.number(a.distance(), Unit.METRE, 2),
                Words.withInterval(a.signalToNoise()))));
        return new Slip.Table("What the listener gets", List.of("figure", "at", "value"), rows);
    }

    private static Slip.Table events(Happened happened) {
        List<List<String>> rows = new ArrayList<>();
        for (Happened.Event event : happened.events())
            rows.add(List.of(
                    event.name(),
                    event.count() == 0
                            ? "never"
                            : event.count() + (event.count() == 1 ? " time, " : " times, ")
                                    + Words.number(event.seconds(), Unit.SECOND, 2) + " in all, first at "
                                    + event.first().stream()
                                            .findFirst()
                                            .map(t -> Words.number(t, Unit.SECOND, 3))
                                            .orElse("–")));
        return new Slip.Table("What happened on the way", List.of("what", "how often"), rows);
    }

    private static String trust(List<Agreement> agreements) {
        if (agreements.isEmpty()) return "Its error is not known: the full envelope was not found at any level tried.";
        double depth = 0, distortion = 0;
        for (Agreement a : agreements) {
            depth = Math.max(depth, a.depthError());
            distortion = Math.max(distortion, a.distortionError());
        }
        return String.format(
                Locale.ROOT,
                "Beside the full envelope it is off by at most %.1f points of depth and %.1f of distortion.",
                POINT * depth,
                POINT * distortion);
    }
}
