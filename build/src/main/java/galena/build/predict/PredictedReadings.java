package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.LogEntry.What;
import galena.build.folder.Overlay;
import galena.build.folder.Supply;
import galena.build.folder.TestPoint;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import galena.signal.modulation.EnvelopePeriod;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.interpolation.AkimaSplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * What the prediction says of the readings that a bench log holds, unmodulated, at one place and under the circumstances that
 * an overlay lays over the build; the probe of the place loads it.
 */
public final class PredictedReadings {
    private static final int SECOND = 2;
    private static final int THIRD = 3;
    private static final int PERIOD = 128;
    /** Of the curve's interpolation, relative; tolerances are not in it. */
    private static final double GRAIN = 5e-3;

    private static final String STATIC = "predicted, typical parts, static curve";

    private PredictedReadings() {}

    /**
     * Carrier and supply current, and at a test point its mean voltage, the carrier's peak and the first two harmonics, each with
     * the interval that tolerances and devices give it. What cannot be had is left out.
     *
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws Running.NotRunning when it does not oscillate there
     */
    public static Map<What, Figure.Known> at(
            BuildFolder folder, Overlay overlay, Optional<TestPoint> point, Progress progress)
            throws BadInputException, NoOperatingPoint, Running.NotRunning {
        Running running = running(folder.build(), overlay, point, progress);
        SteadyState.Found state = running.state();
        Devices devices = new Devices(folder.build(), running.assembled(), progress);
        Tolerances tolerances = new Tolerances(state, Variations.of(folder.build(), running.assembled()), devices);
        Map<What, Figure.Known> figures = new EnumMap<>(What.class);
        String where = point.map(TestPoint::name).orElse("");
        readouts(running, point)
                .forEach((what, readout) ->
                        figures.put(what, tolerances.figure(readout, what.unit(), what.inWords(), where)));
        return figures;
    }

    /** Carrier with typical parts, Hz. */
    public static double carrier(Running running) {
        return running.state().waveforms().frequency();
    }

    /** Mean current drawn from the supply with typical parts, A; the build names a supply. */
    public static double supplyCurrent(Running running) {
        return -running.state().waveforms().meanCurrent(Supply.NAME);
    }

    /**
     * Both peaks and the distortion by the static curve, at an audio level.
     *
     * @param level peak audio voltage, V
     * @return empty when the level lies beyond the curve
     */
    public static Map<What, Figure.Known> modulated(Prediction.Curve curve, double level) {
        double[] audio =
                curve.curve().stream().mapToDouble(Prediction.Point::audio).toArray();
        Map<What, Figure.Known> figures = new EnumMap<>(What.class);
        if (!(level > 0) || level > Math.min(-audio[0], audio[audio.length - 1])) return figures;
        PolynomialSplineFunction amplitudes = new AkimaSplineInterpolator()
                .interpolate(
                        audio,
                        curve.curve().stream()
                                .mapToDouble(Prediction.Point::amplitude)
                                .toArray());
        double[] period = new double[PERIOD];
        for (int k = 0; k < PERIOD; k++) period[k] = amplitudes.value(level * Math.sin(2 * Math.PI * k / PERIOD));
        EnvelopePeriod envelope = new EnvelopePeriod(period, amplitudes.value(0));
        figures.put(What.POSITIVE_PEAK, share(What.POSITIVE_PEAK, envelope.positivePeak(), curve.quantity()));
        figures.put(What.NEGATIVE_PEAK, share(What.NEGATIVE_PEAK, envelope.negativePeak(), curve.quantity()));
        figures.put(What.DISTORTION, share(What.DISTORTION, envelope.distortion(), curve.quantity()));
        return figures;
    }

    private static Figure.Known share(What what, double value, String quantity) {
        double grain = GRAIN * Math.abs(value) + 1e-9;
        return new Figure.Known(
                value, Unit.FRACTION, value - grain, value + grain, STATIC, what.inWords() + " of " + quantity, "");
    }

    /**
     * The build solved with the probe of a point connected, if it has one; to the live accuracy, which is far finer than any
     * reading.
     *
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws Running.NotRunning when it does not oscillate there
     */
    public static Running running(Build build, Overlay overlay, Optional<TestPoint> point, Progress progress)
            throws BadInputException, NoOperatingPoint, Running.NotRunning {
        Overlay probed = point.filter(p -> p.probe().isPresent())
                .map(p -> overlay.probing(p.name()))
                .orElse(overlay);
        return Running.of(build, probed, Accuracy.LIVE, progress);
    }

    /** The voltage at a point against time (s), without its mean, V. */
    public static DoubleUnaryOperator voltage(Running running, TestPoint point) {
        Waveforms waveforms = running.state().waveforms();
        int at = waveforms.equations().net(point.at()),
                to = waveforms.equations().net(point.to());
        double mean = waveforms.mean(at) - waveforms.mean(to);
        return t -> {
            double phase = t * waveforms.frequency();
            return value(waveforms, at, phase) - value(waveforms, to, phase) - mean;
        };
    }

    private static double value(Waveforms waveforms, int unknown, double phase) {
        return unknown == 0 ? 0 : waveforms.at(unknown, phase);
    }

    private static Map<What, Readout> readouts(Running running, Optional<TestPoint> point) {
        Waveforms waveforms = running.state().waveforms();
        Equations equations = waveforms.equations();
        Map<What, Readout> readouts = new EnumMap<>(What.class);
        readouts.put(What.CARRIER, Readout.frequency());
        if (running.build().supply().isPresent())
            readouts.put(
                    What.CURRENT, Readout.mean(equations.current(Supply.NAME).orElseThrow(), -1));
        if (point.isEmpty()) return readouts;
        int at = equations.net(point.get().at()), to = equations.net(point.get().to());
        if (to == 0) readouts.put(What.VOLTAGE, Readout.mean(at, 1));
        readouts.put(What.AMPLITUDE, Readout.amplitude(at, to, 1));
        double floor = running.state().accuracy().floor();
        Readout second = Readout.decibels(at, to, SECOND), third = Readout.decibels(at, to, THIRD);
        if (second.value(waveforms) > -floor) readouts.put(What.SECOND_HARMONIC, second);
        if (third.value(waveforms) > -floor) readouts.put(What.THIRD_HARMONIC, third);
        return readouts;
    }
}
