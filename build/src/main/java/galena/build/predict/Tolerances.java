package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.engine.equations.Equations;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.steady.OrbitDerivatives;
import galena.engine.steady.OrbitDerivatives.Derivative;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The intervals that tolerances and device spread give to the figures of one steady state: first order for what moves every amplitude
 * by little; solved at both ends of its 95 % for what moves one by much, such as the values that tune an output coil, whose
 * resonance a straight line would overshoot.
 */
final class Tolerances {
    private static final String BASIS = "predicted, parts within tolerance, 95 %";
    private static final String TYPICAL = "predicted, typical parts";
    private static final double ROUNDING = 1e-12;

    /** Of an amplitude: beyond it the first order is not to be trusted. */
    private static final double BENDS = 0.1;

    private final SteadyState.Found found;
    private final String basis;
    private final List<Variation> straight = new ArrayList<>();
    private final List<Derivative> derivatives = new ArrayList<>();
    private final List<Sides> sides = new ArrayList<>();

    /** Of a build taken as typical throughout: no interval but the rounding. */
    private Tolerances(SteadyState.Found found) {
        this.found = found;
        basis = TYPICAL;
    }

    static Tolerances none(SteadyState.Found found) {
        return new Tolerances(found);
    }

    Tolerances(SteadyState.Found found, List<Variation> variations, Devices devices) {
        this.found = found;
        basis = BASIS;
        OrbitDerivatives orbit = new OrbitDerivatives(found);
        for (Variation v : variations) {
            Derivative derivative = orbit.between(Equations.of(v.below()), Equations.of(v.above()), v.step());
            if (bend(derivative) * v.limit() < BENDS) {
                straight.add(v);
                derivatives.add(derivative);
            } else {
                double end = v.end();
                sides.add(new Sides(
                        v.what(),
                        devices.solve(v.circuit().apply(1 - end), found),
                        devices.solve(v.circuit().apply(1 + end), found)));
            }
        }
        sides.addAll(devices.sides(found));
    }

    /** The largest relative change of a coil's carrier current, per unit. */
    private double bend(Derivative derivative) {
        Equations equations = found.waveforms().equations();
        double most = 0;
        for (Part part : equations.circuit().parts()) {
            if (!(part instanceof Coil)) continue;
            int current = equations.current(part.name()).orElseThrow();
            double size = found.waveforms().amplitude(current, 0, 1);
            if (size > 0) most = Math.max(most, Math.abs(derivative.amplitude(current, 0, 1)) / size);
        }
        return most;
    }

    Figure.Known figure(Readout readout, Unit unit, String quantity, String at) {
        Waveforms typical = found.waveforms();
        double value = readout.value(typical);
        // sizes spread by ratio: in logarithms, so that no interval reaches below zero
        boolean byRatio = readout.isSize() && value > 0;
        double scale = byRatio ? 1 / value : 1;
        Interval interval = new Interval();
        for (int k = 0; k < straight.size(); k++) {
            interval.add(scale
                    * readout.slope(typical, derivatives.get(k))
                    * straight.get(k).limit());
        }
        for (Sides side : sides) {
            interval.addSides(
                    difference(readout, side.weak(), value, byRatio),
                    difference(readout, side.strong(), value, byRatio));
        }
        double low = byRatio ? value * Math.exp(interval.low(0)) : interval.low(value);
        double high = byRatio ? value * Math.exp(interval.high(0)) : interval.high(value);
        double grain = ROUNDING * Math.abs(value);
        return new Figure.Known(
                value, unit, Math.min(value, low) - grain, Math.max(value, high) + grain, basis, quantity, at);
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
        for (int k = 0; k < straight.size(); k++) {
            double slope = readout.slope(typical, derivatives.get(k));
            causes.add(new Prediction.Cause(
                    straight.get(k).what(), Math.abs(slope) * straight.get(k).limit()));
        }
        for (Sides side : sides) {
            double one = difference(readout, side.weak(), value, false);
            double other = difference(readout, side.strong(), value, false);
            causes.add(new Prediction.Cause(side.what(), Math.max(Math.abs(one), Math.abs(other))));
        }
        causes.sort(Comparator.comparingDouble(c -> -c.hertz()));
        return causes;
    }
}
