package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.predict.Response;
import galena.build.quantity.BadQuantity;
import galena.build.quantity.Range;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.ResponseJson;
import galena.desk.writing.ResponseText;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartSvg;
import galena.packet.response.ResponseChart;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena response DIR SOURCE NET}: gain and phase about the operating point. */
@Command(
        name = "response",
        description = "Follow a small signal from a source to a net: gain and phase against frequency, the 3 dB points,"
                + " the loaded Q of a tank. Oscillators are held at rest.")
public final class ResponseCommand implements Callable<Integer> {
    private static final String RULE = "A range of frequencies is written as 20 Hz..20 kHz.";

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Parameters(index = "1", paramLabel = "SOURCE", description = "An audio, voltage or current source of the build.")
    private String source = "";

    @Parameters(index = "2", paramLabel = "NET", description = "The net to read, against ground.")
    private String net = "";

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(names = "--over", paramLabel = "RANGE", description = "From where to where; 20 Hz..20 kHz unless said.")
    private String over = "20 Hz..20 kHz";

    @Option(names = "--per-decade", paramLabel = "N", description = "Points a decade, 1 to 1000; 50 unless said.")
    private int perDecade = 50;

    @Option(
            names = "--svg",
            paramLabel = "FILE",
            description = "Where the drawing goes; packet/response-NET.svg in the build's folder unless said.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--json", description = "Print the points as JSON instead, and draw only if --svg names a file.")
    private boolean json;

    public ResponseCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        if (perDecade < 1 || perDecade > 1000) {
            throw bad("--per-decade", perDecade + " points", "A decade takes 1 to 1000 points.", Optional.empty());
        }
        BuildFolder build = BuildFolder.open(folder);
        Range range = range();
        Response response = Response.of(
                build,
                conditions.over(build, terminal),
                source,
                net,
                range.low().value(),
                range.high().value(),
                perDecade);
        Chart chart = ResponseChart.of(response);
        if (json) terminal.printDocument(ResponseJson.of(response));
        else ResponseText.print(response, chart, terminal);
        draw(build, chart);
        return ExitCode.DONE.number();
    }

    private Range range() throws BadInputException {
        try {
            Range range = Range.read(over, Unit.HERTZ);
            if (range.low().value() > 0 && range.high().value() > range.low().value()) return range;
            throw bad("--over", '"' + over + "\" does not run upwards from above zero", RULE, Optional.empty());
        } catch (BadQuantity wrong) {
            throw bad("--over", wrong.found(), RULE, wrong.nearest().map(n -> "Nearest: " + n));
        }
    }

    private static BadInputException bad(String place, String found, String rule, Optional<String> remedy) {
        return new BadInputException(new Problem(new Place(place, 1, 1), "", found, rule, remedy));
    }

    private void draw(BuildFolder build, Chart chart) throws IOException {
        if (json && svg.isEmpty()) return;
        Path file = svg.orElseGet(() -> Layout.PACKET.in(build.folder()).resolve("response-" + net + ".svg"));
        Path parent = file.toAbsolutePath().getParent();
        if (parent != null) Files.createDirectories(parent);
        Files.writeString(file, ChartSvg.draw(chart), StandardCharsets.UTF_8);
        terminal.remark("drawn in " + file);
    }
}
