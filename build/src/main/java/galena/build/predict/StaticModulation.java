package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.modulation.Modulator;
import galena.build.modulation.ToneAnswer;
import galena.build.quantity.Unit;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Continuation;
import galena.engine.steady.Followed;
import galena.engine.steady.Follower;
import galena.engine.steady.OrbitFigure;
import galena.engine.steady.SteadyState;
import galena.signal.modulation.EnvelopePeriod;
import galena.signal.modulation.Swing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

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

    private static final double BEYOND_LEVEL = 2;
    private static final int MOST_POINTS = 40;
    private static final int FEWEST_POINTS = 5;
    private static final double TEST_TONE = Modulator.USUAL_TONE;
    private static final double[] SHOWN = {50, 100, 200, 500, 1000, 2000, 3000, 5000, 10_000, 15_000};
    private static final String BASIS = "predicted, typical parts, static curve";

    /** Of a figure, for the curve between its points; tolerances are not in it. */
    private static final double GRAIN = 5e-3;

    /** Amplitudes of a point and of the same solved in full may differ by this share of the carrier's. */
    private static final double SAME = 2e-3;

    private final Circuit held;
    private final String source;
    private final String coil;
    private final String quantity;
    private final double level;
    private final Optional<Double> depth;
    private final Progress progress;
    private final Modulator modulator;

    private StaticModulation(
            Circuit held,
            String source,
            String coil,
            String quantity,
            double level,
            Optional<Double> depth,
            Modulator modulator,
            Progress progress) {
        this.modulator = modulator;
        this.held = held;
        this.source = source;
        this.coil = coil;
        this.quantity = quantity;
        this.level = level;
        this.depth = depth;
        this.progress = progress;
    }

    /**
     * @param carrier the unmodulated steady state
     * @param source the audio source's name in the circuit
     * @param level peak audio voltage, above zero
     * @param coil whose current is modulated
     * @param quantity that current's name
     * @param depth wanted, a fraction
     */
    static Prediction.Modulation of(
            SteadyState.Found carrier,
            String source,
            double level,
            String coil,
            String quantity,
            Optional<Double> depth,
            Progress progress) {
        Circuit held = Envelope.hold(carrier.waveforms());
        String branch = Output.branch(carrier.waveforms().equations().circuit(), coil);
        Modulator modulator = new Modulator(carrier, source, branch, quantity, progress.watch());
        return new StaticModulation(held, source, coil, quantity, level, depth, modulator, progress).solve(carrier);
    }

    private Prediction.Modulation solve(SteadyState.Found carrier) {
        Optional<SteadyState.Found> centre =
                Envelope.centre(carrier, Envelope.at(held, source, 0), Accuracy.LIVE, progress.watch());
        if (centre.isEmpty()) return new Prediction.NoCurve("the carrier was lost when the large capacitors were held");
        Walked walked = walked(centre.get(), Followed.of(centre.get()));
        if (!walked.exact) walked = walked(centre.get(), Followed.finer(centre.get()));
        if (walked.points.size() < FEWEST_POINTS
                || !(walked.points.get(0).audio() < 0)
                || !(walked.last().audio() > 0)) {
            return new Prediction.NoCurve("the carrier stops at a small part of the audio's level");
        }
        return figures(walked);
    }

    /**
     * Both branches of the curve.
     *
     * @param points by rising audio
     * @param exact whether the ends agree with the same solved in full
     */
    private record Walked(List<Prediction.Point> points, boolean exact, Figure stopsBelow, Figure stopsAbove) {
        Prediction.Point last() {
            return points.get(points.size() - 1);
        }
    }

    private Walked walked(SteadyState.Found centre, Followed start) {
        progress.at(0.7, "modulation curve");
        int current = centre.waveforms()
                .equations()
                .current(Output.branch(held, coil))
                .orElseThrow();
        OrbitFigure output = OrbitFigure.amplitude(current, 0, 1);
        double end = BEYOND_LEVEL * level, carrier = output.of(centre.waveforms());
        Continuation continuation = new Continuation(output, end, MOST_POINTS, progress.watch());
        Follower follower =
                new Follower(centre.waveforms().equations(), centre.site(), Accuracy.LIVE, progress.watch());
        List<Prediction.Point> points = new ArrayList<>();
        boolean exact = true;
        Figure[] stops = new Figure[2];
        for (int side = 0; side < 2; side++) {
            double to = side == 0 ? -end : end;
            Continuation.Curve curve =
                    continuation.follow(volts -> Equations.of(Envelope.at(held, source, volts)), 0, to, start);
            int upTo = curve.folds().isEmpty()
                    ? curve.points().size() - 1
                    : curve.folds().get(0);
            for (int k = side; k <= upTo; k++) points.add(point(curve.points().get(k)));
            stops[side] = stops(curve, side == 0 ? "stops below" : "stops above");
            Continuation.Point last = curve.points().get(upTo);
            if (follower.settle(last.period()) instanceof SteadyState.Found full) {
                exact &= Math.abs(output.of(full.waveforms()) - last.figure()) < SAME * carrier;
            }
        }
        points.sort(Comparator.comparingDouble(Prediction.Point::audio));
        return new Walked(points, exact, stops[0], stops[1]);
    }

    private Figure stops(Continuation.Curve curve, String what) {
        Optional<Double> fold = curve.firstFold();
        if (fold.isPresent()) return volts(fold.get(), what + ", where the carrier breaks off");
        return switch (curve.end()) {
            case QUITS -> volts(curve.endsAt(), what + ", where the carrier fades out");
            case RANGE -> new Figure.Missing(what, "not within twice the audio's level");
            case POINTS, LOST ->
                new Figure.Missing(what, String.format(Locale.ROOT, "not followed beyond %.3g V", curve.endsAt()));
        };
    }

    private Prediction.Point point(Continuation.Point point) {
        return new Prediction.Point(
                point.parameter(), point.figure(), point.period().waveforms().frequency());
    }

    private Prediction.Modulation figures(Walked walked) {
        AmplitudeCurve curve = new AmplitudeCurve(walked.points);
        Optional<AmplitudeCurve.Clean> clean = curve.deepestClean(0, CLEAN);
        Figure deepest = known(
                clean.map(AmplitudeCurve.Clean::depth),
                Unit.FRACTION,
                "deepest clean modulation",
                "even a small audio voltage distorts");
        boolean reached = level <= curve.reach(0) * (1 + 1e-9), flat = reached && curve.flat(level);
        Optional<EnvelopePeriod> envelope = reached && !flat ? Optional.of(curve.envelope(0, level)) : Optional.empty();
        String why = flat
                ? "the audio does not reach the carrier"
                : "the oscillation ends before the audio reaches its level";
        return new Prediction.Curve(
                quantity,
                source,
                walked.points,
                level,
                known(envelope.map(EnvelopePeriod::positivePeak), Unit.FRACTION, "positive peak", why),
                known(envelope.map(EnvelopePeriod::negativePeak), Unit.FRACTION, "negative peak", why),
                known(envelope.map(EnvelopePeriod::distortion), Unit.FRACTION, "envelope distortion", why),
                known(envelope.map(EnvelopePeriod::carrierShift), Unit.FRACTION, "carrier shift", why),
                known(envelope.map(e -> swing(curve.frequencies(level))), Unit.HERTZ, "swing", why),
                deepest,
                CLEAN,
                limits(walked, curve, clean),
                tone(),
                modulator.response(SHOWN));
    }

    private StaticLimits limits(Walked walked, AmplitudeCurve curve, Optional<AmplitudeCurve.Clean> clean) {
        Optional<AmplitudeCurve.Clean> best = curve.bestBias(CLEAN);
        String none = "no standing voltage makes it clean";
        Figure bias = best.<Figure>map(b -> new Figure.Known(
                        b.bias(),
                        Unit.VOLT,
                        b.bias() - curve.resolution(),
                        b.bias() + curve.resolution(),
                        BASIS,
                        "best bias",
                        source))
                .orElse(new Figure.Missing("best bias", none));
        return new StaticLimits(
                depth.isEmpty()
                        ? new Figure.Missing("audio for the depth", "the intent names no modulation")
                        : known(
                                curve.levelFor(depth.get()),
                                Unit.VOLT,
                                "audio for the depth",
                                "the curve ends before that depth"),
                known(
                        clean.map(AmplitudeCurve.Clean::level),
                        Unit.VOLT,
                        "audio for the deepest clean modulation",
                        "even a small audio voltage distorts"),
                bias,
                known(best.map(AmplitudeCurve.Clean::depth), Unit.FRACTION, "deepest clean with best bias", none),
                known(best.map(AmplitudeCurve.Clean::level), Unit.VOLT, "audio with best bias", none),
                walked.stopsBelow,
                walked.stopsAbove);
    }

    private ToneAnswer tone() {
        progress.at(0.8, "modulation by a tone");
        return modulator.at(level, TEST_TONE);
    }

    private Figure known(Optional<Double> value, Unit unit, String what, String why) {
        if (value.isEmpty()) return new Figure.Missing(what, why);
        double grain = GRAIN * Math.abs(value.get()) + 1e-9;
        return new Figure.Known(value.get(), unit, value.get() - grain, value.get() + grain, BASIS, what, quantity);
    }

    private Figure volts(double value, String what) {
        double grain = GRAIN * Math.abs(value) + 1e-9;
        return new Figure.Known(value, Unit.VOLT, value - grain, value + grain, BASIS, what, source);
    }

    /** Peak deviation for a test tone at the level: the phase that the changing frequency piles up, differentiated. */
    private static double swing(double[] deviation) {
        int count = deviation.length;
        double mean = 0;
        for (double d : deviation) mean += d / count;
        double[] phase = new double[count];
        double sum = 0;
        for (int k = 0; k < count; k++) {
            phase[k] = sum;
            double next = deviation[(k + 1) % count];
            sum += 2 * Math.PI * ((deviation[k] + next) / 2 - mean) / (TEST_TONE * count);
        }
        return Swing.ofPeriod(phase, TEST_TONE);
    }
}
