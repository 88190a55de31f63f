package galena.desk.command;

import galena.build.depth.Deepen;
import galena.build.depth.Deepened;
import galena.build.depth.Modulate;
import galena.build.folder.BuildFolder;
import galena.build.folder.PartKind;
import galena.build.quantity.Unit;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.DeepenText;
import galena.desk.writing.ModulationJson;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena deepen DIR}: the deepest clean modulation. */
@Command(
        name = "deepen",
        description =
                "Seek the audio level and the bias that modulate deepest without more distortion than allowed, with"
                        + " a fresh and a flat battery, in cold and heat; and say what keeps it from going deeper.")
public final class DeepenCommand implements Callable<Integer> {
    private static final double LEAST = 0.002;
    private static final double MOST = 0.3;

    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(
            names = "--distortion",
            paramLabel = "D",
            description = "The most that the envelope may have; 5%% unless said.")
    private Optional<String> distortion = Optional.empty();

    @Option(
            names = "--load",
            paramLabel = "RESISTOR",
            description =
                    "A resistor that may be changed, as that across the output: half to twice its value is tried.")
    private Optional<String> load = Optional.empty();

    @Option(names = "--json", description = "Print everything as JSON instead.")
    private boolean json;

    public DeepenCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Asked asked = new Asked();
        double limit = asked.quantity("--distortion", distortion, Unit.FRACTION, LEAST, MOST)
                .orElse(Deepen.CLEAN);
        asked.done();
        BuildFolder build = BuildFolder.open(folder);
        if (load.isPresent()
                && build.build()
                        .part(load.get())
                        .filter(p -> p.kind() == PartKind.RESISTOR)
                        .isEmpty()) {
            terminal.remark("--load: the build has no resistor called \"" + load.get() + "\"");
            return ExitCode.BAD_INPUT.number();
        }
        Deepened found;
        try (Attention attention = new Attention(terminal)) {
            found = Deepen.of(build, conditions.over(build), limit, load, attention);
        } catch (Modulate.NoAudio none) {
            terminal.remark("No modulation: " + none.getMessage() + ".");
            return ExitCode.NO_ANSWER.number();
        }
        if (json) terminal.printDocument(ModulationJson.of(found));
        else DeepenText.print(found, terminal);
        return found.settings().isEmpty() ? ExitCode.NO_ANSWER.number() : ExitCode.DONE.number();
    }
}
