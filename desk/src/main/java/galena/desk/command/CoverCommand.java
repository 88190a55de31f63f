package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.folder.Settings;
import galena.build.predict.Coverage;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.CoverageJson;
import galena.desk.writing.CoverageText;
import galena.engine.steady.Accuracy;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartSvg;
import galena.packet.coverage.CoverageChart;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena cover DIR PART}: what one adjustment covers from stop to stop. */
@Command(
        name = "cover",
        description = "Turn one adjustment from stop to stop: which carriers it covers, and where the wanted one lies."
                + " Draws the curve here and as an SVG file in the build's packet folder.")
public final class CoverCommand implements Callable<Integer> {
    private static final int MOST_STEPS = 1000;

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Parameters(
            index = "1",
            paramLabel = "PART",
            description = "The adjustment: a trimmer, a preset or a coil with a slug.")
    private String part = "";

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(
            names = "--steps",
            paramLabel = "N",
            description = "Into how many steps the travel is divided, 1 to 1000; 20 unless said.")
    private int steps = 20;

    @Option(
            names = "--svg",
            paramLabel = "FILE",
            description = "Where the drawing goes; packet/cover-PART.svg in the build's folder unless said.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--json", description = "Print the points as JSON instead, and draw only if --svg names a file.")
    private boolean json;

    public CoverCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        if (steps < 1 || steps > MOST_STEPS)
            throw new BadInputException(new Problem(
                    new Place("--steps", 1, 1), "", steps + " steps", "The travel is divided into 1 to 1000 steps."));
        BuildFolder build = BuildFolder.open(folder);
        // The name is checked by setting it where it stands: the same message as for --set.
        Settings.apply(build.build(), Overlay.NONE, "PART", List.of(part + "=50%"));
        Overlay overlay = conditions.over(build, terminal);
        Coverage coverage;
        try (Attention attention = new Attention(terminal)) {
            coverage = Coverage.sweep(build, overlay, part, steps, Accuracy.CERTIFIED, attention);
        }
        if (coverage.points().isEmpty()) {
            terminal.remark("No coverage: it does not oscillate where " + part
                    + " is set. Ask galena predict why, or set it elsewhere with --set.");
            return ExitCode.NO_ANSWER.number();
        }
        Chart chart = CoverageChart.of(coverage, build.build().intent().carrier());
        if (json) terminal.printDocument(CoverageJson.of(coverage));
        else CoverageText.print(coverage, build.build().intent().carrier(), chart, terminal);
        draw(build, chart);
        return ExitCode.DONE.number();
    }

    private void draw(BuildFolder build, Chart chart) throws java.io.IOException {
        if (json && svg.isEmpty()) return;
        Path file = svg.orElseGet(() -> Layout.PACKET.in(build.folder()).resolve("cover-" + part + ".svg"));
        Path parent = file.toAbsolutePath().getParent();
        if (parent != null) Files.createDirectories(parent);
        Files.writeString(file, ChartSvg.draw(chart), StandardCharsets.UTF_8);
        terminal.remark("drawn in " + file);
    }
}
