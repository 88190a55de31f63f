package galena.desk.command;

import galena.bench.measure.ResonanceWidth;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.desk.writing.Sum;
import galena.signal.Estimate;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Q from the width of a resonance. */
@Command(
        name = "width",
        description = "Q from the two frequencies at which a resonance has fallen by 3 dB, to 0.707 of its voltage.")
final class WidthSum extends Answering {
    @Option(names = "--lower", required = true, paramLabel = "FREQUENCY", description = "Below the resonance.")
    private String lower = "";

    @Option(names = "--upper", required = true, paramLabel = "FREQUENCY", description = "Above it.")
    private String upper = "";

    WidthSum(Terminal terminal) {
        super(terminal);
    }

    @Override
    Sum answer() throws Exception {
        Estimate f = reading("--lower", lower, Unit.HERTZ), g = reading("--upper", upper, Unit.HERTZ);
        Estimate q = checked("--upper", () -> ResonanceWidth.q(f, g));
        return new Sum(
                "Q from the width of a resonance",
                List.of(figure("Q, loaded by whatever hangs on it", q, Unit.NUMBER)),
                assumed);
    }
}
