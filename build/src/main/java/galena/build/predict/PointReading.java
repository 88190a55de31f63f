package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.TestPoint;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitDerivatives;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.List;

/**
 * What a builder reads at a test point with its own probe connected; the probe's load is in every number.
 *
 * @param point with its probe, if it names one
 * @param carrier with the probe connected
 * @param peak of the carrier's fundamental, V
 * @param mean voltage while oscillating
 * @param lowest voltage of the period with typical parts, V
 * @param highest voltage of the period with typical parts, V
 * @param wave one period in even steps, V, typical parts
 */
public record PointReading(
        TestPoint point,
        Figure.Known carrier,
        Figure.Known peak,
        Figure.Known mean,
        double lowest,
        double highest,
        List<Double> wave) {
    private static final int STEPS = 200;

    public PointReading {
        wave = List.copyOf(wave);
    }

    /**
     * Solves the build with the probe of one test point connected.
     *
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws Running.NotRunning when it does not oscillate with the probe
     */
    public static PointReading of(
            BuildFolder folder, Overlay overlay, TestPoint point, Accuracy accuracy, Progress progress)
            throws BadInputException, NoOperatingPoint, Running.NotRunning {
        Overlay probed = point.probe().isPresent() ? overlay.probing(point.name()) : overlay;
        Running running = Running.of(folder.build(), probed, accuracy, progress);
        SteadyState.Found state = running.state();
        Devices devices = new Devices(folder.build(), running.assembled(), progress);
        Tolerances tolerances = new Tolerances(state, Variations.of(folder.build(), running.assembled()), devices);
        Waveforms waveforms = state.waveforms();
        Equations equations = waveforms.equations();
        int at = equations.net(point.at()), to = equations.net(point.to());
        double[] range = waveforms.range(at, to);
        List<Double> wave = new ArrayList<>();
        for (int k = 0; k <= STEPS; k++) {
            double phase = (double) k / STEPS;
            wave.add((at == 0 ? 0 : waveforms.at(at, phase)) - (to == 0 ? 0 : waveforms.at(to, phase)));
        }
        String name = point.name();
        return new PointReading(
                point,
                tolerances.figure(Readout.frequency(), Unit.HERTZ, "carrier with the probe", name),
                tolerances.figure(Readout.amplitude(at, to, 1), Unit.VOLT, "peak of the carrier", name),
                tolerances.figure(difference(at, to), Unit.VOLT, "mean voltage", name),
                range[0],
                range[1],
                wave);
    }

    private static Readout difference(int at, int to) {
        Readout first = Readout.mean(at, 1), second = Readout.mean(to, 1);
        if (to == 0) return first;
        return new Readout() {
            @Override
            public double value(Waveforms waveforms) {
                return first.value(waveforms) - second.value(waveforms);
            }

            @Override
            public double slope(Waveforms waveforms, OrbitDerivatives.Derivative derivative) {
                return first.slope(waveforms, derivative) - second.slope(waveforms, derivative);
            }
        };
    }
}
