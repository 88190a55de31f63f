package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.spread.Drawn;
import galena.build.spread.Spread;
import galena.build.spread.SpreadReport;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.SpreadJson;
import galena.desk.writing.SpreadText;
import galena.packet.chart.Chart;
import galena.packet.spread.SpreadChart;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena spread DIR}: how many of a build's copies meet the intent. */
@Command(
        name = "spread",
        description =
                "Draw many copies of a build over tolerances, devices, temperature and battery; solve and trim each;"
                        + " count those that meet the intent.")
public final class SpreadCommand implements Callable<Integer> {
    private static final int MOST = 1_000_000;

    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(names = "--count", paramLabel = "N", description = "Copies to draw; 100 unless said.")
    private int count = 100;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Of the draws; 1 unless said. The same seed draws the same.")
    private long seed = 1;

    @Option(names = "--copy", paramLabel = "N", description = "Call one copy of this seed back by its number.")
    private Optional<Long> copy = Optional.empty();

    @Option(
            names = "--coldest",
            paramLabel = "T",
            description = "Coldest temperature drawn; −10 °C unless said, or what --temperature says.")
    private Optional<String> coldest = Optional.empty();

    @Option(
            names = "--warmest",
            paramLabel = "T",
            description = "Warmest temperature drawn; 50 °C unless said, or what --temperature says.")
    private Optional<String> warmest = Optional.empty();

    @Option(
            names = "--flattest",
            paramLabel = "CHARGE",
            description =
                    "How flat a battery is drawn at most, 0 %% to 100 %%; 10 %% unless said. 100 %% draws fresh ones only.")
    private Optional<String> flattest = Optional.empty();

    @Option(
            names = "--svg",
            paramLabel = "FOLDER",
            description = "Where the histograms go; packet in the build's folder unless said.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--json", description = "Print everything as JSON instead, and draw only if --svg names a folder.")
    private boolean json;

    public SpreadCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        if (count < 1 || count > MOST)
            throw Written.bad("--count", count + " copies", "Draw 1 to " + MOST + " copies.");
        if (copy.isPresent() && (copy.get() < 0 || copy.get() >= MOST))
            throw Written.bad("--copy", "copy " + copy.get(), "Copies are numbered 0 to " + (MOST - 1) + ".");
        galena.build.spread.Conditions range = range();
        BuildFolder build = BuildFolder.open(folder);
        Overlay overlay = conditions.over(build, terminal);
        return copy.isPresent() ? one(build, overlay, range, copy.get()) : many(build, overlay, range);
    }

    private galena.build.spread.Conditions range() throws BadInputException {
        galena.build.spread.Conditions full = galena.build.spread.Conditions.FULL;
        Optional<Double> pinned = conditions.celsius();
        double low =
                coldest.isPresent() ? Conditions.celsius("--coldest", coldest.get()) : pinned.orElse(full.coldest());
        double high =
                warmest.isPresent() ? Conditions.celsius("--warmest", warmest.get()) : pinned.orElse(full.warmest());
        double charge = flattest.isPresent()
                ? Written.quantity("--flattest", flattest.get(), Unit.FRACTION).value()
                : full.flattest();
        if (low > high) {
            String found = low + " °C is above the warmest, " + high + " °C";
            throw Written.bad("--coldest", found, "The coldest temperature drawn lies below the warmest.");
        }
        if (!(charge >= 0 && charge <= 1)) {
            throw Written.bad(
                    "--flattest", '"' + flattest.orElse("") + "\" is out of range", "A charge is 0 % to 100 %.");
        }
        return new galena.build.spread.Conditions(low, high, charge);
    }

    private int one(BuildFolder build, Overlay overlay, galena.build.spread.Conditions range, long number)
            throws Exception {
        Drawn one;
        try (Attention attention = new Attention(terminal)) {
            one = Spread.one(build, overlay, range, seed, number, attention);
        }
        if (json) terminal.printDocument(SpreadJson.of(seed, one));
        else SpreadText.print(build.build().name(), seed, one, terminal);
        return ExitCode.DONE.number();
    }

    private int many(BuildFolder build, Overlay overlay, galena.build.spread.Conditions range) throws Exception {
        SpreadReport report;
        try (Attention attention = new Attention(terminal)) {
            report = Spread.of(build, overlay, range, count, seed, attention);
        }
        if (json) terminal.printDocument(SpreadJson.of(report));
        else SpreadText.print(build.build().name(), report, shown(build, report), terminal);
        if (json && svg.isEmpty()) return ExitCode.DONE.number();
        Path target = svg.orElseGet(() -> Layout.PACKET.in(build.folder()));
        for (Drawn.Quantity quantity : Drawn.Quantity.values()) {
            if (!SpreadChart.canShow(report, quantity)) continue;
            Chart chart = SpreadChart.of(report, quantity, build.build().intent());
            Drawings.draw(chart, target, SpreadChart.fileName(quantity) + ".svg", terminal);
        }
        return ExitCode.DONE.number();
    }

    /** On a terminal the one that says most; the rest are bars in the table. */
    private static List<Chart> shown(BuildFolder build, SpreadReport report) {
        return SpreadChart.canShow(report, Drawn.Quantity.AS_SET)
                ? List.of(SpreadChart.of(
                        report, Drawn.Quantity.AS_SET, build.build().intent()))
                : List.of();
    }
}
