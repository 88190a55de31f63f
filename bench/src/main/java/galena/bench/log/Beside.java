package galena.bench.log;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Circumstances;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.folder.Overlay;
import galena.build.folder.Supply;
import galena.build.folder.TestPoint;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.PredictedReadings;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.quantity.Quantity;
import galena.build.source.BadInputException;
import galena.build.wiring.CircuitOf;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A reading of the log beside what the prediction says of it under the circumstances noted with it: probe, adjustments,
 * temperature, supply.
 *
 * @param reading as logged
 * @param predicted the figure, or why there is none
 */
public record Beside(LogEntry reading, Figure predicted) {
    private static final double ZERO_CELSIUS = 273.15;

    /** What a prediction depends on beside the build. */
    private record Case(Optional<TestPoint> point, Overlay overlay) {}

    /**
     * @param prediction of the build as it stands, whose modulation curve is used
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     */
    public static List<Beside> of(BuildFolder folder, Prediction prediction, Progress progress)
            throws BadInputException, NoOperatingPoint {
        Map<Case, Map<What, Figure.Known>> known = new HashMap<>();
        List<Beside> all = new ArrayList<>();
        for (LogEntry reading : folder.log()) {
            if (isOfModulation(reading.what())) {
                all.add(new Beside(reading, modulation(reading, prediction)));
                continue;
            }
            Case here = new Case(
                    reading.at().map(folder.build().points()::get), overlay(folder.build(), reading.circumstances()));
            if (!known.containsKey(here)) {
                progress.at(0.9, "readings");
                known.put(here, figures(folder, here, progress));
            }
            Figure.Known figure = known.get(here).get(reading.what());
            all.add(new Beside(reading, figure != null ? figure : none(reading, here)));
        }
        return all;
    }

    private static boolean isOfModulation(What what) {
        return switch (what) {
            case POSITIVE_PEAK, NEGATIVE_PEAK, DISTORTION, SWING -> true;
            default -> false;
        };
    }

    private static Map<What, Figure.Known> figures(BuildFolder folder, Case here, Progress progress)
            throws BadInputException, NoOperatingPoint {
        try {
            return PredictedReadings.at(folder, here.overlay, here.point, progress);
        } catch (Running.NotRunning silent) {
            return Map.of();
        }
    }

    private static Figure none(LogEntry reading, Case here) {
        boolean needsPoint = reading.what() != What.CARRIER && reading.what() != What.CURRENT;
        return new Figure.Missing(
                reading.what().inWords(),
                needsPoint && here.point.isEmpty()
                        ? "the reading names no test point"
                        : "the prediction has none under these circumstances");
    }

    private static Figure modulation(LogEntry reading, Prediction prediction) {
        What what = reading.what();
        if (!(prediction.modulation() instanceof Prediction.Curve curve))
            return new Figure.Missing(what.inWords(), ((Prediction.NoCurve) prediction.modulation()).reason());
        if (what == What.SWING)
            return new Figure.Missing(what.inWords(), "swing is predicted at the programme's full level only");
        Optional<Quantity> audio = reading.circumstances().audio();
        if (audio.isEmpty()) return new Figure.Missing(what.inWords(), "the audio level was not noted");
        Figure.Known figure =
                PredictedReadings.modulated(curve, audio.get().value()).get(what);
        return figure != null
                ? figure
                : new Figure.Missing(what.inWords(), "the static curve has none at " + audio.get());
    }

    /** What the circumstances lay over a build. */
    static Overlay overlay(Build build, Circumstances circumstances) {
        Overlay overlay = Overlay.NONE;
        for (Map.Entry<String, Quantity> set : circumstances.set().entrySet())
            overlay = overlay.set(set.getKey(), set.getValue().value());
        if (circumstances.temperature().isPresent())
            overlay = overlay.atTemperature(circumstances.temperature().get().value() - ZERO_CELSIUS);
        Optional<Supply> supply = build.supply();
        if (circumstances.supply().isPresent() && supply.isPresent())
            overlay = overlay.withSupply(new Overlay.SupplyState(
                    circumstances.supply().get().value(),
                    CircuitOf.state(supply.get()).resistance()));
        return overlay;
    }

    /**
     * Whether reading and prediction can both be right: their intervals meet. Empty where nothing is predicted, and for
     * modulation, whose prediction leaves tolerances out.
     */
    public Optional<Boolean> agrees() {
        if (isOfModulation(reading.what())) return Optional.empty();
        if (!(predicted instanceof Figure.Known known)) return Optional.empty();
        double half = reading.uncertainty().map(Quantity::value).orElse(0.0),
                value = reading.value().value();
        return Optional.of(value + half >= known.low() && value - half <= known.high());
    }
}
