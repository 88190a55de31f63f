package galena.desk.command;

import galena.build.drift.Drift;
import galena.build.drift.DriftReport;
import galena.build.drift.Warming;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.DriftJson;
import galena.desk.writing.DriftText;
import galena.engine.circuit.Circuit;
import galena.packet.chart.Chart;
import galena.packet.drift.DriftChart;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena drift DIR}: carrier and depth from switch-on until the battery is spent. */
@Command(
        name = "drift",
        description =
                "Run a build from switch-on until its battery is spent: where the carrier wanders, how the depth holds,"
                        + " after how many hours it leaves its channel, loses depth or stops. Draws the curves here and"
                        + " as SVG in the build's packet folder.")
public final class DriftCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(
            names = "--warmed",
            paramLabel = "T",
            description = "The temperature it comes to in the end; that at switch-on unless said.")
    private Optional<String> warmed = Optional.empty();

    @Option(
            names = "--over",
            paramLabel = "TIME",
            description = "The time by which 63 %% of the warming is gone, as in --over 30min; 1 h unless said.")
    private String over = "1 h";

    @Option(
            names = "--within",
            paramLabel = "HERTZ",
            description = "How far the carrier may wander before it counts as off its channel; 500 Hz unless said.")
    private String within = "500 Hz";

    @Option(
            names = "--svg",
            paramLabel = "FOLDER",
            description = "Where the drawings go; packet in the build's folder unless said.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--json", description = "Print everything as JSON instead, and draw only if --svg names a folder.")
    private boolean json;

    public DriftCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Warming warming = warming();
        double channel = Written.positive("--within", within, Unit.HERTZ);
        BuildFolder build = BuildFolder.open(folder);
        DriftReport report;
        try (Attention attention = new Attention(terminal)) {
            report = Drift.of(build, conditions.over(build, terminal), warming, channel, attention);
        }
        Map<String, Chart> charts = charts(report);
        if (json) terminal.printDocument(DriftJson.of(report));
        else DriftText.print(build.build().name(), report, List.copyOf(charts.values()), terminal);
        if (json && svg.isEmpty()) return ExitCode.DONE.number();
        Path target = svg.orElseGet(() -> Layout.PACKET.in(build.folder()));
        for (Map.Entry<String, Chart> chart : charts.entrySet()) {
            Drawings.draw(chart.getValue(), target, chart.getKey(), terminal);
        }
        return ExitCode.DONE.number();
    }

    private Warming warming() throws BadInputException {
        double from = conditions.celsius().orElse(Circuit.REFERENCE_TEMPERATURE);
        double to = warmed.isPresent() ? Conditions.celsius("--warmed", warmed.get()) : from;
        return new Warming(from, to, Written.positive("--over", over, Unit.SECOND));
    }

    private static Map<String, Chart> charts(DriftReport report) {
        Map<String, Chart> charts = new LinkedHashMap<>();
        charts.put("drift-carrier.svg", DriftChart.carrier(report));
        if (DriftChart.hasDepth(report)) charts.put("drift-depth.svg", DriftChart.depth(report));
        if (!report.temperatures().isEmpty()) charts.put("drift-temperature.svg", DriftChart.temperature(report));
        return charts;
    }
}
