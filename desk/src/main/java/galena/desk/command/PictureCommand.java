package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.folder.TestPoint;
import galena.build.picture.TimePictures;
import galena.build.predict.Running;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.PictureJson;
import galena.desk.writing.PictureText;
import galena.engine.steady.Accuracy;
import galena.packet.chart.Chart;
import galena.packet.picture.TimeCharts;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena picture DIR}: a test point against time, through its probe. */
@Command(
        name = "picture",
        description =
                "Show what a test point will look like through its probe: the oscillation as it starts, the carrier, the"
                        + " carrier modulated by a tone. Drawn here and as SVG in the build's packet folder.")
public final class PictureCommand implements Callable<Integer> {
    private static final double USUAL_TONE = 1000;

    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Option(
            names = "--point",
            paramLabel = "POINT",
            description = "Which test point of the build; its last unless said.")
    private Optional<String> point = Optional.empty();

    @Option(names = "--tone", paramLabel = "FREQUENCY", description = "What modulates it; 1 kHz unless said.")
    private Optional<String> tone = Optional.empty();

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(
            names = "--svg",
            paramLabel = "FOLDER",
            description = "Where the drawings go; packet in the build's folder unless said.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--json", description = "Print everything as JSON instead, and draw only if --svg names a folder.")
    private boolean json;

    public PictureCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Asked asked = new Asked();
        OptionalDouble hertz = asked.quantity("--tone", tone, Unit.HERTZ, 20, 20e3);
        asked.done();
        BuildFolder build = BuildFolder.open(folder);
        TestPoint at = point(build);
        Overlay overlay = conditions.over(build).probing(at.name());
        TimePictures pictures;
        try (Attention attention = new Attention(terminal)) {
            Running running = Running.of(build.build(), overlay, Accuracy.LIVE, attention);
            pictures = TimePictures.of(running, at, hertz.orElse(USUAL_TONE), attention);
        }
        Map<String, Chart> charts = TimeCharts.of(pictures);
        if (json) terminal.printDocument(PictureJson.of(pictures));
        else PictureText.print(pictures, charts.values(), terminal);
        if (json && svg.isEmpty()) return ExitCode.DONE.number();
        Path target = svg.orElseGet(() -> Layout.PACKET.in(build.folder()));
        for (Map.Entry<String, Chart> chart : charts.entrySet())
            Drawings.draw(chart.getValue(), target, chart.getKey() + ".svg", terminal);
        return ExitCode.DONE.number();
    }

    private TestPoint point(BuildFolder build) throws BadInputException {
        Map<String, TestPoint> points = build.build().points();
        if (points.isEmpty())
            throw Written.bad("--point", "the build has no test points", "Write points: {TP1: {at: net, probe: 10x}}.");
        String name = point.orElseGet(
                () -> points.keySet().stream().reduce((a, b) -> b).orElseThrow());
        TestPoint found = points.get(name);
        if (found == null)
            throw Written.bad(
                    "--point",
                    "no test point is named \"" + name + '"',
                    "Test points: " + String.join(", ", points.keySet()) + ".");
        return found;
    }
}
