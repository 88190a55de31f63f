package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.PredictionJson;
import galena.desk.writing.PredictionText;
import galena.engine.steady.Accuracy;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena predict DIR}: what a build will do before a joint is soldered. */
@Command(
        name = "predict",
        description =
                "Say what a build will do before a joint is soldered: whether it starts, where it tunes, how clean it"
                        + " is, what it draws, and whether that meets the intent.")
public final class PredictCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(names = "--live", description = "Answer sooner and less exactly: 1e-6 in frequency, 0.1 dB in harmonics.")
    private boolean live;

    @Option(names = "--json", description = "Print everything as JSON instead of a page.")
    private boolean json;

    @Option(names = "--strict", description = "Leave with exit code 4 unless every line of the intent is met.")
    private boolean strict;

    public PredictCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        BuildFolder build = BuildFolder.open(folder);
        Prediction prediction;
        try (Attention attention = new Attention(terminal)) {
            prediction = Predict.of(
                    build, conditions.over(build, terminal), live ? Accuracy.LIVE : Accuracy.CERTIFIED, attention);
        }
        if (json) terminal.printDocument(PredictionJson.of(prediction));
        else PredictionText.print(prediction, terminal);
        return code(prediction, strict).number();
    }

    static ExitCode code(Prediction prediction, boolean strict) {
        if (prediction.running() instanceof Prediction.Silent) return ExitCode.NO_ANSWER;
        boolean met = prediction.judgements().stream().allMatch(j -> j.outcome() == Prediction.Outcome.MEETS);
        return strict && !met ? ExitCode.NOT_MET : ExitCode.DONE;
    }
}
