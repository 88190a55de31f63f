package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.predict.Prediction.Oscillation;
import galena.build.spread.SpreadReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Mean voltages while it oscillates: with the windows of drawn copies where there are some, else those of first order. */
final class ExpectedVoltages {
    private ExpectedVoltages() {}

    static List<Figure> running(Findings findings) {
        List<Figure> means =
                findings.oscillation().map(Oscillation::meanVoltages).orElse(List.of());
        Optional<Map<String, Figure.Known>> drawn = findings.outlook().spread().map(SpreadReport::voltages);
        if (drawn.isEmpty()) return means;
        List<Figure> better = new ArrayList<>();
        for (Figure mean : means)
            better.add(
                    mean instanceof Figure.Known k && drawn.get().containsKey(k.at())
                            ? around(k, drawn.get().get(k.at()))
                            : mean);
        return better;
    }

    /** The typical value of the prediction, the window of the copies. */
    private static Figure around(Figure.Known typical, Figure.Known drawn) {
        return new Figure.Known(
                typical.value(),
                typical.unit(),
                Math.min(typical.value(), drawn.low()),
                Math.max(typical.value(), drawn.high()),
                drawn.basis(),
                typical.quantity(),
                typical.at());
    }

    /** What the windows rest on, in words. */
    static String basis(Findings findings) {
        return findings.outlook()
                .spread()
                .map(
                        s -> "windows hold 95 % of " + s.count()
                                + " copies drawn over tolerances, devices, −10 to +50 °C and a battery from fresh to nearly flat")
                .orElse("windows are of first order");
    }
}
