package galena.desk.command;

import galena.bench.capture.Overrides;
import galena.bench.capture.UnreadableCapture;
import galena.bench.log.Filing;
import galena.bench.measure.Expected;
import galena.bench.measure.Measure;
import galena.bench.measure.Reading;
import galena.bench.measure.Report;
import galena.bench.plot.Plots;
import galena.build.folder.BuildFolder;
import galena.build.folder.Circumstances;
import galena.build.folder.LogEntry;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.MeasurementJson;
import galena.desk.writing.MeasurementJson.Outcome;
import galena.desk.writing.MeasurementText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena measure FILE...}: what captures say. */
@Command(
        name = "measure",
        sortOptions = false,
        description =
                "Say what captures from any instrument show: carrier, harmonics, both modulation peaks, distortion, hum,"
                        + " swing, drift, each with its interval, and what is wrong with them. A file is read by looking at"
                        + " it; every guess can be stated instead.")
public final class MeasureCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Clock clock;

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Captures; gzip is unpacked.")
    private List<Path> files = new ArrayList<>();

    @Option(names = "--explain", description = "Say under each figure how it was taken and what its interval holds.")
    private boolean explain;

    @Option(names = "--json", description = "Print everything as JSON instead of a page.")
    private boolean json;

    @Option(names = "--svg", paramLabel = "DIR", description = "Write the plots there: waveform, spectrum, trapezoid.")
    private Optional<Path> plots = Optional.empty();

    @Option(names = "--into", paramLabel = "DIR", description = "File the readings in the bench log of this build.")
    private Optional<Path> into = Optional.empty();

    @Mixin
    private Expectations expectations = new Expectations();

    @Mixin
    private Guesses guesses = new Guesses();

    @Mixin
    private Noted noted = new Noted();

    /** @param clock that dates readings */
    public MeasureCommand(Terminal terminal, Clock clock) {
        this.terminal = terminal;
        this.clock = clock;
    }

    @Override
    public Integer call() throws Exception {
        if (into.isEmpty() && noted.saysAnything())
            throw Written.bad(
                    "--into",
                    "no build is named to note this in",
                    "Circumstances of a reading are kept in a bench log: add --into DIR.");
        Optional<BuildFolder> build = into.isPresent() ? Optional.of(BuildFolder.open(into.get())) : Optional.empty();
        Optional<Quantity> intended = build.flatMap(b -> b.build().intent().carrier());
        Expected expected = expectations.expected(intended.map(Quantity::value));
        List<Outcome> outcomes = outcomes(guesses.overrides(), expected);
        if (json) terminal.printDocument(MeasurementJson.of(outcomes));
        else print(outcomes, expectations.statesCarrier() ? Optional.empty() : intended);
        for (Outcome outcome : outcomes) {
            outcome.trouble().ifPresent(t -> terminal.remark(String.valueOf(t.getMessage())));
            if (plots.isPresent() && outcome.report().isPresent())
                draw(plots.get(), outcome.report().get());
        }
        if (build.isPresent()) file(build.get(), outcomes);
        return code(outcomes).number();
    }

    private List<Outcome> outcomes(Overrides overrides, Expected expected) {
        List<Outcome> outcomes = new ArrayList<>();
        for (Path file : files) {
            try {
                outcomes.add(new Outcome(
                        file.toString(), Optional.of(measured(file, overrides, expected)), Optional.empty()));
            } catch (UnreadableCapture trouble) {
                outcomes.add(new Outcome(file.toString(), Optional.empty(), Optional.of(trouble)));
            }
        }
        return outcomes;
    }

    private static Report measured(Path file, Overrides overrides, Expected expected) throws UnreadableCapture {
        if (Files.notExists(file))
            throw new UnreadableCapture(file.toString(), "there is no such file", "Look for a slip in the path");
        if (Files.isDirectory(file))
            throw new UnreadableCapture(file.toString(), "is a folder", "Name the captures in it");
        return Measure.file(file, overrides, expected);
    }

    private void print(List<Outcome> outcomes, Optional<Quantity> intended) {
        String expected = intended.map(q -> "Expected carrier: " + Engineering.exact(q.value(), Unit.HERTZ)
                        + ", from the build's intent; --carrier states another.")
                .orElse("");
        boolean first = true;
        for (Outcome outcome : outcomes) {
            if (outcome.report().isEmpty()) continue;
            if (!first) terminal.print("");
            MeasurementText.print(outcome.report().get(), expected, explain, terminal);
            first = false;
        }
    }

    private void draw(Path folder, Report report) throws IOException {
        Files.createDirectories(folder);
        write(folder, report, "waveform", Plots.waveform(report));
        write(folder, report, "spectrum", Plots.spectrum(report));
        write(folder, report, "trapezoid", Plots.trapezoid(report));
    }

    private void write(Path folder, Report report, String what, Optional<String> svg) throws IOException {
        if (svg.isEmpty()) return;
        Path file = folder.resolve(report.name() + "-" + what + ".svg");
        Files.writeString(file, svg.get(), StandardCharsets.UTF_8);
        terminal.remark("written: " + file);
    }

    private void file(BuildFolder build, List<Outcome> outcomes) throws Exception {
        Optional<String> at = noted.at(build.build());
        Circumstances circumstances = noted.circumstances(build);
        String when = noted.when(clock);
        List<LogEntry> entries = new ArrayList<>();
        for (Outcome outcome : outcomes)
            outcome.report().ifPresent(r -> entries.addAll(Filing.entries(r, at, when, circumstances)));
        List<LogEntry> fresh = Filing.fresh(entries, build.log());
        build.note(fresh);
        Filed.tell(terminal, build, fresh, entries.size() - fresh.size());
    }

    private static ExitCode code(List<Outcome> outcomes) {
        if (outcomes.stream().anyMatch(o -> o.trouble().isPresent())) return ExitCode.BAD_INPUT;
        boolean any = outcomes.stream()
                .flatMap(o -> o.report().stream())
                .flatMap(r -> r.figures().stream())
                .anyMatch(f -> !(f.reading() instanceof Reading.Missing));
        return any ? ExitCode.DONE : ExitCode.NO_ANSWER;
    }
}
