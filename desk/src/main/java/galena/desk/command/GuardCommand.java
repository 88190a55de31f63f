package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.guard.Guard;
import galena.build.guard.GuardReport;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.GuardJson;
import galena.desk.writing.GuardText;
import galena.engine.steady.Accuracy;
import galena.packet.guard.SensitivityRanking;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena guard DIR}: what spoils a build. */
@Command(
        name = "guard",
        description =
                "Say what moves the carrier and by how much: strays, leads, coils near each other, tools, probes, a"
                        + " hand, heat, the supply; and what that means for the layout.")
public final class GuardCommand implements Callable<Integer> {
    private static final int MOST_ROWS = 1000;
    private static final int SHOWN = 12;
    private static final int DRAWN = 24;

    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(names = "--rows", paramLabel = "N", description = "Rows of each table, 1 to 1000; 6 unless said.")
    private int rows = 6;

    @Option(
            names = "--fixed",
            description = "Show output, depth and harmonic at fixed trim instead of with the carrier trimmed back.")
    private boolean fixed;

    @Option(
            names = "--svg",
            paramLabel = "FOLDER",
            description = "Where the ranking is drawn; packet in the build's folder unless said.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--json", description = "Print everything as JSON instead, and draw only if --svg names a folder.")
    private boolean json;

    public GuardCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        if (rows < 1 || rows > MOST_ROWS) {
            throw Written.bad("--rows", rows + " rows", "A table has 1 to " + MOST_ROWS + " rows.");
        }
        BuildFolder build = BuildFolder.open(folder);
        GuardReport report;
        try (Attention attention = new Attention(terminal)) {
            report = Guard.of(build, conditions.over(build, terminal), Accuracy.CERTIFIED, attention);
        }
        if (json) terminal.printDocument(GuardJson.of(report));
        else {
            GuardText.print(build.build().name(), report, SensitivityRanking.of(report, SHOWN), rows, fixed, terminal);
        }
        if (!json || svg.isPresent()) {
            Path target = svg.orElseGet(() -> Layout.PACKET.in(build.folder()));
            Drawings.draw(SensitivityRanking.of(report, DRAWN), target, "guard.svg", terminal);
        }
        return ExitCode.DONE.number();
    }
}
