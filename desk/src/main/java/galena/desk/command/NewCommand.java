package galena.desk.command;

import galena.build.pattern.Pattern;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena new DIR --pattern NAME}: a commented build to start from. */
@Command(
        name = "new",
        description =
                "Start a build from a known-good pattern: writes a commented build.yaml into a folder, over nothing."
                        + " Without a folder, lists the patterns.")
public final class NewCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "DIR",
            description = "The new build's folder; made if it isn't there.")
    private Optional<Path> folder = Optional.empty();

    @Option(names = "--pattern", paramLabel = "NAME", description = "Which pattern; galena new lists them.")
    private Optional<String> pattern = Optional.empty();

    public NewCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        if (folder.isEmpty()) {
            for (Pattern each : Pattern.all()) terminal.print(String.format("%-24s %s", each.name(), each.summary()));
            return ExitCode.DONE.number();
        }
        if (pattern.isEmpty()) {
            throw new BadInputException(new Problem(
                    new Place("--pattern", 1, 1),
                    "",
                    "no pattern is named",
                    "A new build starts from a pattern.",
                    "Run galena new to see them, then galena new " + folder.get() + " --pattern NAME"));
        }
        Path file = Pattern.write(pattern.get(), folder.get());
        terminal.print(file.toString());
        terminal.remark("next: galena predict " + folder.get());
        return ExitCode.DONE.number();
    }
}
