package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.reach.Reach;
import galena.build.reach.ReachAnswer;
import galena.build.reach.Reaching;
import galena.build.reach.Surroundings;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.ReachJson;
import galena.desk.writing.ReachText;
import galena.engine.steady.Accuracy;
import galena.packet.reach.FieldChart;
import galena.packet.reach.ListeningChart;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena reach DIR}: how far a build is heard, and how it stands to the rules. */
@Command(
        name = "reach",
        description =
                "Say how far a build is heard and how its field stands to the limits of the region that the intent"
                        + " names. Draws field and listening with distance, here and as SVG in the build's packet folder.")
public final class ReachCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Mixin
    private Conditions conditions = new Conditions();

    @Mixin
    private Whereabouts whereabouts = new Whereabouts();

    @Option(
            names = "--svg",
            paramLabel = "FOLDER",
            description = "Where the drawings go; packet in the build's folder unless said.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--json", description = "Print everything as JSON instead, and draw only if --svg names a folder.")
    private boolean json;

    public ReachCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Surroundings surroundings = whereabouts.surroundings();
        BuildFolder build = BuildFolder.open(folder);
        Prediction prediction;
        try (Attention attention = new Attention(terminal)) {
            prediction = Predict.of(build, conditions.over(build, terminal), Accuracy.CERTIFIED, attention);
        }
        ReachAnswer answer = Reaching.of(build.build(), prediction, surroundings);
        if (!(answer instanceof Reach reach)) {
            terminal.remark("No reach: " + ((ReachAnswer.None) answer).reason() + ".");
            return ExitCode.NO_ANSWER.number();
        }
        if (json) terminal.printDocument(ReachJson.of(reach));
        else ReachText.print(reach, terminal);
        draw(build, reach);
        return ExitCode.DONE.number();
    }

    private void draw(BuildFolder build, Reach reach) throws IOException {
        if (json && svg.isEmpty()) return;
        Path target = svg.orElseGet(() -> Layout.PACKET.in(build.folder()));
        Drawings.draw(FieldChart.of(reach), target, "reach-field.svg", terminal);
        if (ListeningChart.hasLines(reach))
            Drawings.draw(ListeningChart.of(reach), target, "reach-listening.svg", terminal);
    }
}
