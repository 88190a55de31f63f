package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.guard.Guard;
import galena.build.guard.GuardReport;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.GuardJson;
import galena.desk.writing.GuardText;
import galena.engine.steady.Accuracy;
import java.nio.file.Path;
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
    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(names = "--rows", paramLabel = "N", description = "Rows of each table; 6 unless said.")
    private int rows = 6;

    @Option(names = "--json", description = "Print everything as JSON instead of a page.")
    private boolean json;

    public GuardCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        BuildFolder build = BuildFolder.open(folder);
        GuardReport report;
        try (Attention attention = new Attention(terminal)) {
            report = Guard.of(build, conditions.over(build), Accuracy.CERTIFIED, attention);
        }
        if (json) terminal.printDocument(GuardJson.of(report));
        else GuardText.print(build.build().name(), report, Math.max(1, rows), terminal);
        return ExitCode.DONE.number();
    }
}
