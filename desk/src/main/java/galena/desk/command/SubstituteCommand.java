package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.substitute.Substitute;
import galena.build.substitute.SubstituteReport;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.SubstituteJson;
import galena.desk.writing.SubstituteText;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena substitute DIR PART}: what else can stand in a part's place. */
@Command(
        name = "substitute",
        description =
                "Try every device of its kind in the place of PART, each by full prediction, with what must change around it;"
                        + " say which unknown parts would work and how to tell with two resistors and a voltmeter. For a"
                        + " resistor, capacitor or coil: what one or two parts of the drawer make in its place.")
public final class SubstituteCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Parameters(index = "1", paramLabel = "PART", description = "Name of the part, as in Q1 or Cf.")
    private String part = "";

    @Option(names = "--drawer", description = "Only devices that drawer.yaml lists.")
    private boolean drawer;

    @Option(names = "--seed", paramLabel = "N", description = "Of the copies drawn; 1 unless said.")
    private long seed = 1;

    @Option(names = "--json", description = "Print everything as JSON instead.")
    private boolean json;

    public SubstituteCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        BuildFolder build = BuildFolder.open(folder);
        SubstituteReport report;
        try (Attention attention = new Attention(terminal)) {
            report = Substitute.of(build, part, drawer, seed, attention);
        }
        if (json) terminal.printDocument(SubstituteJson.of(report));
        else SubstituteText.print(report, terminal);
        return ExitCode.DONE.number();
    }
}
