package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.quantity.Unit;
import galena.build.wiring.Assembled;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Standing voltages with the intervals that resistors and devices give them, each specimen solved anew. */
final class RestFigures {
    private static final String BASIS = "predicted, parts within tolerance, 95 %";

    private RestFigures() {}

    static List<Figure> voltages(Build build, Assembled assembled, OperatingPoint.Found point, Devices devices) {
        Map<String, Interval> intervals = new LinkedHashMap<>();
        for (String net : assembled.circuit().nets()) if (!Predict.isInner(net)) intervals.put(net, new Interval());
        for (Variation v : Variations.of(build, assembled)) {
            double[] below = near(v.below(), point), above = near(v.above(), point);
            intervals.forEach((net, interval) -> {
                int k = point.equations().net(net);
                interval.add((above[k] - below[k]) / (2 * v.step()) * v.limit());
            });
        }
        for (Devices.Pair pair : devices.ends()) {
            double[] weak = near(pair.weak(), point), strong = near(pair.strong(), point);
            intervals.forEach((net, interval) -> {
                int k = point.equations().net(net);
                interval.addSides(weak[k] - point.x()[k], strong[k] - point.x()[k]);
            });
        }
        List<Figure> figures = new ArrayList<>();
        intervals.forEach((net, interval) -> {
            double value = point.voltage(net);
            figures.add(new Figure.Known(
                    value,
                    Unit.VOLT,
                    Math.min(value, interval.low(value)),
                    Math.max(value, interval.high(value)),
                    BASIS,
                    "standing voltage",
                    net));
        });
        return figures;
    }

    private static double[] near(Circuit circuit, OperatingPoint.Found point) {
        OperatingPoint moved = OperatingPointLadder.near(Equations.of(circuit), point.x());
        return moved instanceof OperatingPoint.Found found ? found.x() : point.x();
    }
}
