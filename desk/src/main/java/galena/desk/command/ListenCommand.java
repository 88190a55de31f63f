package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.listen.Air;
import galena.build.listen.Listen;
import galena.build.listen.ListenReport;
import galena.build.listen.Listening;
import galena.build.listen.NothingToHear;
import galena.build.listen.SetKind;
import galena.build.predict.Running;
import galena.build.quantity.Unit;
import galena.build.reach.Surroundings;
import galena.build.source.BadInputException;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.ListenJson;
import galena.desk.writing.ListenText;
import galena.engine.steady.Accuracy;
import galena.signal.audio.InventedProgramme;
import galena.signal.audio.Programme;
import galena.signal.audio.WavSink;
import galena.signal.audio.WavSource;
import galena.signal.receiver.ReceiverSettings;
import galena.signal.stream.WavHeader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena listen DIR IN.wav OUT.wav}: a programme through the build and a set that receives it. */
@Command(
        name = "listen",
        description =
                "Hear a build before it is built: a WAV goes through its audio path, its modulator and tank, the air and"
                        + " a set with an envelope detector, and comes out as a WAV. Full scale of the recording is the audio"
                        + " source's peak level.")
public final class ListenCommand implements Callable<Integer> {
    private static final double DEMO_RATE = 48_000;

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Parameters(
            index = "1..2",
            arity = "1..2",
            paramLabel = "[IN.wav] OUT.wav",
            description =
                    "The recording, of 8 to 32 bits or floating point, and where the result goes. With --demo only"
                            + " the latter.")
    private List<Path> files = new ArrayList<>();

    @Mixin
    private Conditions conditions = new Conditions();

    @Mixin
    private Whereabouts whereabouts = new Whereabouts();

    @Option(names = "--demo", description = "Send an invented programme of tones, a voice and plucked notes.")
    private boolean demo;

    @Option(
            names = "--distance",
            paramLabel = "DISTANCE",
            description = "How far off the set stands, as in --distance \"5 m\"; the intent's distance unless said.")
    private Optional<String> distance = Optional.empty();

    @Option(
            names = "--receiver",
            paramLabel = "KIND",
            description = "Which set: rod, table or crystal; rod unless said.")
    private String receiver = "rod";

    @Option(
            names = "--mistuned",
            paramLabel = "FREQUENCY",
            description = "How far beside the carrier the set is tuned, as in --mistuned \"2 kHz\".")
    private Optional<String> mistuned = Optional.empty();

    @Option(names = "--no-noise", description = "Leave noise out.")
    private boolean noNoise;

    @Option(names = "--bits", paramLabel = "N", description = "Bits of the result, 16 or 24; 16 unless said.")
    private int bits = 16;

    @Option(names = "--replace", description = "Write over a result that exists.")
    private boolean replace;

    @Option(names = "--json", description = "Print everything as JSON instead.")
    private boolean json;

    public ListenCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    /** What was asked for, checked. */
    private record Asking(SetKind set, double mistuned, OptionalDouble distance, Surroundings around, Path out) {}

    @Override
    public Integer call() throws Exception {
        Asking asking = asked();
        BuildFolder build = BuildFolder.open(folder);
        Overlay overlay = conditions.over(build);
        if (demo) return listen(build, overlay, asking, new InventedProgramme(DEMO_RATE));
        try (WavSource source = open(files.get(0))) {
            return listen(build, overlay, asking, source);
        }
    }

    private Asking asked() throws BadInputException {
        Asked asked = new Asked();
        OptionalDouble far = asked.quantity("--distance", distance, Unit.METRE, 0.1, 10_000);
        OptionalDouble beside = asked.quantity("--mistuned", mistuned, Unit.HERTZ, -20e3, 20e3);
        Optional<Surroundings> around = asked.of(whereabouts::surroundings);
        Optional<SetKind> set = SetKind.named(receiver);
        if (set.isEmpty())
            asked.wrong(
                    "--receiver",
                    "no set is called \"" + receiver + '"',
                    "Known: " + String.join(", ", SetKind.all()) + ".");
        if (bits != 16 && bits != 24) asked.wrong("--bits", bits + " bits", "A result has 16 or 24.");
        if (files.size() != (demo ? 1 : 2))
            asked.wrong(
                    demo ? "--demo" : "OUT.wav",
                    demo ? "stands beside a recording" : "is missing",
                    "Write galena listen DIR IN.wav OUT.wav, or galena listen DIR --demo OUT.wav.");
        Path out = files.get(files.size() - 1);
        if (Files.exists(out) && !replace) asked.wrong("OUT.wav", out + " exists already", "--replace writes over it.");
        asked.done();
        return new Asking(set.orElseThrow(), beside.orElse(0), far, around.orElseThrow(), out);
    }

    private static WavSource open(Path file) throws IOException, BadInputException {
        try {
            WavSource source = WavSource.open(file);
            if (source.rate() >= 8000 && source.rate() <= 400e3) return source;
            double rate = source.rate();
            source.close();
            throw Written.bad("IN.wav", "its rate is " + rate + " Hz", "Rates of 8 to 400 kHz are read.");
        } catch (WavHeader.BadHeader bad) {
            throw Written.bad("IN.wav", file + ": " + bad.getMessage(), "A plain WAV is read.");
        }
    }

    private int listen(BuildFolder build, Overlay overlay, Asking asking, Programme programme) throws Exception {
        ListenReport report;
        double took;
        try (Attention attention = new Attention(terminal)) {
            Running running = Running.of(build.build(), overlay, Accuracy.LIVE, attention);
            Listen listen = Listen.to(running, programme.rate(), attention);
            List<String> without = new ArrayList<>();
            Optional<Air> air = air(build, overlay, asking, attention, without);
            ReceiverSettings settings = asking.set().settings(asking.mistuned());
            Listening stream =
                    listen.through(settings, air.map(Air::noiseToCarrier).orElse(0.0));
            took = send(programme, stream, asking.out(), attention);
            double[] fit = listen.fitErrors();
            report = new ListenReport(
                    build.build().name(),
                    listen.carrier(),
                    asking.set().words(),
                    asking.mistuned(),
                    air,
                    String.join(" ", without),
                    listen.sound(settings),
                    listen.agreements(),
                    listen.order(),
                    fit[0],
                    fit[1],
                    stream.happened());
        } catch (NothingToHear why) {
            terminal.remark("Nothing to hear: " + why.getMessage() + ".");
            return ExitCode.NO_ANSWER.number();
        }
        if (json) terminal.printDocument(ListenJson.of(report, asking.out(), took));
        else ListenText.print(report, asking.out(), took, terminal);
        return ExitCode.DONE.number();
    }

    /** What the reach says of the way to the set; why not, where it says nothing. */
    private Optional<Air> air(
            BuildFolder build, Overlay overlay, Asking asking, Attention attention, List<String> without)
            throws Exception {
        if (noNoise) {
            without.add("Noise was left out as asked.");
            return Optional.empty();
        }
        Air.Sought sought = Air.to(asking.set(), build, overlay, asking.around(), asking.distance(), attention);
        sought.missing().ifPresent(why -> without.add("No noise: " + why + "."));
        return sought.air();
    }

    /** The seconds that processing took. */
    private double send(Programme programme, Listening stream, Path out, Attention attention)
            throws IOException, BadInputException {
        double[] left = new double[Listening.BLOCK], right = new double[Listening.BLOCK], heard = left.clone();
        long done = 0, begin = System.nanoTime(), length = programme.length();
        try (WavSink sink = new WavSink(out, 1, (int) Math.round(programme.rate()), bits)) {
            while (true) {
                int n = programme.read(left, right, Listening.BLOCK);
                if (n <= 0) break;
                stream.process(left, right, n, heard);
                sink.write(heard, n);
                done += n;
                if (attention.cancelled()) throw new CancellationException("stopped");
                attention.at(length > 0 ? Math.min(1, done / (double) length) : 0.5, "listening");
            }
            if (done == 0) throw Written.bad("IN.wav", "the recording holds no sound", "It needs at least one frame.");
            sink.finish();
        }
        return (System.nanoTime() - begin) * 1e-9;
    }
}
