package galena.desk.command;

import galena.bench.measure.HumDiagnosis;
import galena.bench.measure.HumDiagnosis.Answer;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.desk.console.Terminal;
import galena.desk.writing.Sum;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Where hum comes from. */
@Command(
        name = "hum",
        sortOptions = false,
        description = "Where hum comes from, by four questions; answer yes or no, or leave out what was not tried.")
final class HumSum extends Answering {
    @Option(names = "--on-battery", paramLabel = "ANSWER", description = "Does it hum on a battery?")
    private String onBattery = "unknown";

    @Option(names = "--audio-shorted", paramLabel = "ANSWER", description = "Does it hum with the audio input shorted?")
    private String audioShorted = "unknown";

    @Option(
            names = "--worse-far-away",
            paramLabel = "ANSWER",
            description = "Is it worse in the far room than beside the sender?")
    private String worseFarAway = "unknown";

    @Option(
            names = "--set-turned",
            paramLabel = "ANSWER",
            description = "Does it change when the set is turned, the signal staying as strong?")
    private String setTurned = "unknown";

    @Option(
            names = "--mains-line",
            paramLabel = "LEVEL",
            description = "Measured line at the mains frequency; with --twice-line.")
    private Optional<String> mainsLine = Optional.empty();

    @Option(names = "--twice-line", paramLabel = "LEVEL", description = "Measured line at twice the mains frequency.")
    private Optional<String> twiceLine = Optional.empty();

    HumSum(Terminal terminal) {
        super(terminal);
    }

    @Override
    Sum answer() throws Exception {
        HumDiagnosis found = HumDiagnosis.of(
                new HumDiagnosis.Answers(
                        Written.word("--on-battery", onBattery, Answer.class),
                        Written.word("--audio-shorted", audioShorted, Answer.class),
                        Written.word("--worse-far-away", worseFarAway, Answer.class),
                        Written.word("--set-turned", setTurned, Answer.class)),
                ratio());
        return new Sum(
                "Where the hum comes from", List.of(), List.of(found.sentence(), "Try: " + found.remedy() + "."));
    }

    private Optional<Double> ratio() throws BadInputException {
        if (mainsLine.isEmpty() && twiceLine.isEmpty()) return Optional.empty();
        if (mainsLine.isEmpty() || twiceLine.isEmpty())
            throw Written.bad(
                    mainsLine.isEmpty() ? "--mains-line" : "--twice-line",
                    "is missing",
                    "The two lines are compared: state both, as in --mains-line \"-46 dB\" --twice-line \"-38 dB\".");
        double once =
                Written.quantity("--mains-line", mainsLine.get(), Unit.DECIBEL).value();
        double twice =
                Written.quantity("--twice-line", twiceLine.get(), Unit.DECIBEL).value();
        return Optional.of(Math.pow(10, (twice - once) / 20));
    }
}
