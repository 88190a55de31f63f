package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.engine.equations.Equations;
import galena.engine.steady.OrbitDerivatives;
import galena.engine.steady.OrbitDerivatives.Derivative;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The intervals that tolerances and device spread give to the figures of one steady state. */
final class Tolerances {
    private static final String BASIS = "predicted, parts within tolerance, 95 %";
    private static final double ROUNDING = 1e-12;

    private final SteadyState.Found found;
    private final List<Variation> variations;
    private final List<Derivative> derivatives = new ArrayList<>();
    private final List<Sides> devices;

    Tolerances(SteadyState.Found found, List<Variation> variations, List<Sides> devices) {
        this.found = found;
        this.variations = variations;
        this.devices = devices;
        OrbitDerivatives orbit = new OrbitDerivatives(found);
        for (Variation v : variations) {
            derivatives.add(orbit.between(Equations.of(v.below()), Equations.of(v.above()), v.step()));
        }
    }

    Figure.Known figure(Readout readout, Unit unit, String quantity, String at) {
        Waveforms typical = found.waveforms();
        double value = readout.value(typical);
        // sizes spread by ratio: in logarithms, so that no interval reaches below zero
        boolean byRatio = readout.isSize() && value > 0;
        double scale = byRatio ? 1 / value : 1;
        Interval interval = new Interval();
        for (int k = 0; k < variations.size(); k++) {
            interval.add(scale
                    * readout.slope(typical, derivatives.get(k))
                    * variations.get(k).limit());
        }
        for (Sides sides : devices) {
            interval.addSides(
                    difference(readout, sides.weak(), value, byRatio),
                    difference(readout, sides.strong(), value, byRatio));
        }
        double low = byRatio ? value * Math.exp(interval.low(0)) : interval.low(value);
        double high = byRatio ? value * Math.exp(interval.high(0)) : interval.high(value);
        double grain = ROUNDING * Math.abs(value);
        return new Figure.Known(
                value, unit, Math.min(value, low) - grain, Math.max(value, high) + grain, BASIS, quantity, at);
    }

    private static double difference(
            Readout readout, Optional<SteadyState.Found> side, double typical, boolean byRatio) {
        return side.map(s -> readout.value(s.waveforms()))
                .map(there -> byRatio ? Math.log(there / typical) : there - typical)
                .orElse(0.0);
    }

    /** What each tolerance and device does to a readout, either way, largest first. */
    List<Prediction.Cause> causes(Readout readout) {
        Waveforms typical = found.waveforms();
        double value = readout.value(typical);
        List<Prediction.Cause> causes = new ArrayList<>();
        for (int k = 0; k < variations.size(); k++) {
            double slope = readout.slope(typical, derivatives.get(k));
            causes.add(new Prediction.Cause(
                    variations.get(k).what(),
                    Math.abs(slope) * variations.get(k).limit()));
        }
        for (Sides sides : devices) {
            double one = difference(readout, sides.weak(), value, false);
            double other = difference(readout, sides.strong(), value, false);
            causes.add(new Prediction.Cause(sides.what(), Math.max(Math.abs(one), Math.abs(other))));
        }
        causes.sort(Comparator.comparingDouble(c -> -c.hertz()));
        return causes;
    }
}
