package galena.desk.command;

import galena.bench.measure.ScreenDivisions;
import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.desk.writing.Sum;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Depth from a screen. */
@Command(
        name = "screen",
        description =
                "Modulation depth from heights read off a screen in divisions, peak to peak: at the crest and at the trough,"
                        + " or the two sides of a trapezoid.")
final class ScreenSum extends Answering {
    @Option(names = "--crest", required = true, paramLabel = "DIVISIONS", description = "Height at the crest.")
    private double crest;

    @Option(names = "--trough", required = true, paramLabel = "DIVISIONS", description = "Height at the trough.")
    private double trough;

    @Option(
            names = "--unmodulated",
            paramLabel = "DIVISIONS",
            description = "Height without modulation: gives both peaks.")
    private Optional<Double> unmodulated = Optional.empty();

    @Option(names = "--error", paramLabel = "DIVISIONS", description = "Of each reading; 0.1 unless said.")
    private double error = ScreenDivisions.USUAL_ERROR;

    ScreenSum(Terminal terminal) {
        super(terminal);
    }

    @Override
    Sum answer() throws Exception {
        ScreenDivisions found = checked("--crest", () -> ScreenDivisions.of(crest, trough, unmodulated, error));
        List<Figure> figures = new ArrayList<>();
        figures.add(figure("modulation depth", found.depth(), Unit.FRACTION));
        found.positivePeak().ifPresent(p -> figures.add(figure("positive peak", p, Unit.FRACTION)));
        found.negativePeak().ifPresent(p -> figures.add(figure("negative peak", p, Unit.FRACTION)));
        List<String> remarks = List.of("Each height is taken as ± " + error + " divisions.");
        return new Sum("Depth from a screen", figures, remarks);
    }
}
