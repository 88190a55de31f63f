package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.spread.Drawn;
import galena.build.spread.Spread;
import galena.build.spread.SpreadReport;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.SpreadJson;
import galena.desk.writing.SpreadText;
import java.nio.file.Path;
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
            paramLabel = "CELSIUS",
            description = "Coldest temperature drawn, °C; −10 unless said.")
    private double coldest = galena.build.spread.Conditions.FULL.coldest();

    @Option(names = "--warmest", paramLabel = "CELSIUS", description = "Warmest temperature drawn, °C; 50 unless said.")
    private double warmest = galena.build.spread.Conditions.FULL.warmest();

    @Option(names = "--json", description = "Print everything as JSON instead of a page.")
    private boolean json;

    public SpreadCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        if (count < 1 || count > MOST) throw bad("--count", count + " copies", "Draw 1 to " + MOST + " copies.");
        if (!(coldest <= warmest)) throw bad("--coldest", coldest + " °C is above --warmest", "Cold comes below warm.");
        BuildFolder build = BuildFolder.open(folder);
        Overlay overlay = conditions.over(build);
        var range =
                new galena.build.spread.Conditions(coldest, warmest, galena.build.spread.Conditions.FULL.flattest());
        if (copy.isPresent()) {
            Drawn one;
            try (Attention attention = new Attention(terminal)) {
                one = Spread.one(build, overlay, range, seed, copy.get(), attention);
            }
            SpreadText.print(build.build().name(), seed, one, terminal);
            return ExitCode.DONE.number();
        }
        SpreadReport report;
        try (Attention attention = new Attention(terminal)) {
            report = Spread.of(build, overlay, range, count, seed, attention);
        }
        if (json) terminal.printDocument(SpreadJson.of(report));
        else SpreadText.print(build.build().name(), report, terminal);
        return ExitCode.DONE.number();
    }

    private static BadInputException bad(String option, String found, String rule) {
        return new BadInputException(new Problem(new Place(option, 1, 1), "", found, rule));
    }
}
