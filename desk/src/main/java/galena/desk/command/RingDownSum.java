package galena.desk.command;

import galena.bench.measure.RingingCapture;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.desk.writing.Sum;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Q from a capture of a circuit left to itself. */
@Command(
        name = "ring-down",
        sortOptions = false,
        description = "Q and frequency from a capture of a tuned circuit that was struck and left to ring.")
final class RingDownSum extends Answering {
    @Parameters(paramLabel = "FILE", description = "The capture.")
    private Path file = Path.of("");

    @Mixin
    private Guesses guesses = new Guesses();

    RingDownSum(Terminal terminal) {
        super(terminal);
    }

    @Override
    Sum answer() throws Exception {
        RingingCapture ringing = RingingCapture.of(file, guesses.overrides());
        return new Sum(
                "Q from a ring-down, " + file.getFileName(),
                List.of(
                        figure(
                                "Q, loaded by whatever hangs on it",
                                ringing.ringDown().q(),
                                Unit.NUMBER),
                        figure("frequency", ringing.ringDown().frequency(), Unit.HERTZ)),
                List.of("Read as " + ringing.layout()
                        + ". The instrument's clock is not in the interval of the frequency."));
    }
}
