package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.signal.modulation.EnvelopePeriod;
import galena.signal.modulation.Swing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.analysis.interpolation.AkimaSplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/**
 * The static modulation curve: carrier amplitude and frequency against a slow audio voltage. Capacitors that a thousand hertz
 * would hardly move (above 0.2 µF, less than 800 Ω there) hold the charge they have in the unmodulated carrier; the small ones
 * follow. The tank's and the audio path's memory is left out, so the figures are those of a low audio frequency at which the
 * coupling still passes.
 */
final class StaticModulation {
    /** Capacitors above this hold their charge. */
    static final double HOLDS = 0.2e-6;

    /** Distortion up to which a modulation counts as clean; the acceptance line of home builders at 80 %, common practice. */
    static final double CLEAN = 0.05;

    private static final int POINTS_EACH_WAY = 10;
    private static final double BEYOND_LEVEL = 2;
    private static final int PERIOD = 128;
    private static final double TEST_TONE = 1000;
    private static final String BASIS = "predicted, typical parts, static curve";

    private final Circuit held;
    private final String source;
    private final String coil;
    private final String quantity;
    private final double level;
    private final Progress progress;

    private StaticModulation(
            Circuit held, String source, String coil, String quantity, double level, Progress progress) {
        this.held = held;
        this.source = source;
        this.coil = coil;
        this.quantity = quantity;
        this.level = level;
        this.progress = progress;
    }

    /**
     * @param carrier the unmodulated steady state
     * @param source the audio source's name in the circuit
     * @param level peak audio voltage, above zero
     * @param coil whose current is modulated
     * @param quantity that current's name
     */
    static Prediction.Modulation of(
            SteadyState.Found carrier, String source, double level, String coil, String quantity, Progress progress) {
        Circuit held = Envelope.hold(carrier.waveforms());
        return new StaticModulation(held, source, coil, quantity, level, progress).solve(carrier);
    }

    private Prediction.Modulation solve(SteadyState.Found carrier) {
        Optional<SteadyState.Found> centre =
                Envelope.centre(carrier, Envelope.at(held, source, 0), Accuracy.LIVE, progress.watch());
        if (centre.isEmpty()) return new Prediction.NoCurve("the carrier was lost when the large capacitors were held");
        List<Prediction.Point> curve = new ArrayList<>();
        curve.add(point(0, centre.get()));
        double step = BEYOND_LEVEL * level / POINTS_EACH_WAY;
        walk(centre.get(), step, curve);
        walk(centre.get(), -step, curve);
        curve.sort(Comparator.comparingDouble(Prediction.Point::audio));
        if (curve.size() < 5)
            return new Prediction.NoCurve("the carrier stops at less than a fifth of the audio level");
        return figures(curve);
    }

    /** Follows the curve from the centre until its end or until the oscillation is lost. */
    private void walk(SteadyState.Found centre, double step, List<Prediction.Point> curve) {
        SteadyOscillation steady = new SteadyOscillation(Accuracy.LIVE, progress.watch());
        SteadyState.Found now = centre;
        for (int k = 1; k <= POINTS_EACH_WAY; k++) {
            progress.at(0.5, "modulation curve");
            if (!(steady.solveNear(Equations.of(Envelope.at(held, source, k * step)), now)
                    instanceof SteadyState.Found next)) return;
            now = next;
            curve.add(point(k * step, next));
        }
    }

    private Prediction.Point point(double audio, SteadyState.Found state) {
        return new Prediction.Point(
                audio,
                state.waveforms().currentAmplitude(Output.branch(held, coil), 1),
                state.waveforms().frequency());
    }

    private Prediction.Modulation figures(List<Prediction.Point> curve) {
        double[] audio = curve.stream().mapToDouble(Prediction.Point::audio).toArray();
        PolynomialSplineFunction amplitudes = new AkimaSplineInterpolator()
                .interpolate(
                        audio,
                        curve.stream().mapToDouble(Prediction.Point::amplitude).toArray());
        PolynomialSplineFunction frequencies = new AkimaSplineInterpolator()
                .interpolate(
                        audio,
                        curve.stream().mapToDouble(Prediction.Point::frequency).toArray());
        double reach = Math.min(-audio[0], audio[audio.length - 1]);
        Figure deepest = deepestClean(amplitudes, reach);
        if (level > reach * (1 + 1e-9)) {
            String why = "the oscillation ends before the audio reaches its level";
            return curveWith(curve, why, deepest);
        }
        EnvelopePeriod envelope = envelope(amplitudes, level);
        return new Prediction.Curve(
                quantity,
                source,
                curve,
                level,
                known(envelope.positivePeak(), Unit.FRACTION, "positive peak"),
                known(envelope.negativePeak(), Unit.FRACTION, "negative peak"),
                known(envelope.distortion(), Unit.FRACTION, "envelope distortion"),
                known(envelope.carrierShift(), Unit.FRACTION, "carrier shift"),
                known(swing(frequencies), Unit.HERTZ, "swing"),
                deepest,
                CLEAN);
    }

    private Prediction.Modulation curveWith(List<Prediction.Point> curve, String why, Figure deepest) {
        return new Prediction.Curve(
                quantity,
                source,
                curve,
                level,
                new Figure.Missing("positive peak", why),
                new Figure.Missing("negative peak", why),
                new Figure.Missing("envelope distortion", why),
                new Figure.Missing("carrier shift", why),
                new Figure.Missing("swing", why),
                deepest,
                CLEAN);
    }

    private Figure known(double value, Unit unit, String what) {
        double grain = 5e-3 * Math.abs(value) + 1e-9; // of the curve's interpolation; tolerances are not in it
        return new Figure.Known(value, unit, value - grain, value + grain, BASIS, what, quantity);
    }

    private static EnvelopePeriod envelope(PolynomialSplineFunction amplitudes, double level) {
        double[] period = new double[PERIOD];
        for (int k = 0; k < PERIOD; k++) period[k] = amplitudes.value(audio(level, k));
        return new EnvelopePeriod(period, amplitudes.value(0));
    }

    private static double audio(double level, int k) {
        return level * Math.sin(2 * Math.PI * k / PERIOD);
    }

    /** Peak deviation for a test tone at the level: the phase that the changing frequency piles up, differentiated. */
    private double swing(PolynomialSplineFunction frequencies) {
        double mean = 0;
        double[] deviation = new double[PERIOD];
        for (int k = 0; k < PERIOD; k++) {
            deviation[k] = frequencies.value(audio(level, k));
            mean += deviation[k] / PERIOD;
        }
        double[] phase = new double[PERIOD];
        double sum = 0;
        for (int k = 0; k < PERIOD; k++) {
            phase[k] = sum;
            double next = deviation[(k + 1) % PERIOD];
            sum += 2 * Math.PI * ((deviation[k] + next) / 2 - mean) / (TEST_TONE * PERIOD);
        }
        return Swing.ofPeriod(phase, TEST_TONE);
    }

    /** The negative peak reached when distortion meets the limit, or at the curve's end when it never does. */
    private Figure deepestClean(PolynomialSplineFunction amplitudes, double reach) {
        double clean = 0;
        for (int k = 1; k <= 40; k++) {
            EnvelopePeriod envelope = envelope(amplitudes, reach * k / 40);
            if (envelope.distortion() > CLEAN) break;
            clean = Math.max(envelope.negativePeak(), clean);
        }
        if (clean == 0) return new Figure.Missing("deepest clean modulation", "even a small audio voltage distorts");
        return known(clean, Unit.FRACTION, "deepest clean modulation");
    }
}
