package galena.build.predict;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Followed;
import galena.engine.steady.Follower;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.steady.Waveforms;
import galena.signal.modulation.EnvelopePeriod;
import java.util.List;
import java.util.Optional;
import org.hipparchus.analysis.interpolation.DividedDifferenceInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialFunctionNewtonForm;

/**
 * A look at the static modulation curve from five of its points, for builds by the thousand: the carrier, and the audio voltage that
 * gives the wanted depth by the curve's slope, and half of it, either way. All five lie on the carrier's mesh; the lowest is
 * solved in full as well, and where the two differ, all are. Keeps its arrays: one per thread.
 */
public final class QuickEnvelope {
    private static final int PERIOD = 64;
    /** Of the audio level: a step so small that a difference is a derivative. */
    private static final double SMALL = 1e-3;

    /** Amplitudes that differ by less than this share of the carrier between meshes need no second look. */
    private static final double SAME = 1e-3;

    private final List<String> held;
    private final String source;
    private final String coil;
    private final double level;
    private final Accuracy accuracy;
    private final Watch watch;
    private Optional<Follower> follower = Optional.empty();

    /**
     * @param typical a carrier of the same structure as those to come
     * @param source audio source
     * @param coil whose current is modulated
     * @param level of the audio, peak, V, above zero
     */
    public QuickEnvelope(
            SteadyState.Found typical, String source, String coil, double level, Accuracy accuracy, Watch watch) {
        if (!(level > 0)) throw new IllegalArgumentException("an audio level is above zero, not " + level);
        this.held = Envelope.holding(typical.waveforms());
        this.source = source;
        this.coil = coil;
        this.level = level;
        this.accuracy = accuracy;
        this.watch = watch;
    }

    /**
     * What was seen.
     *
     * @param distortion of the envelope at the wanted depth, a fraction
     * @param audio peak voltage of the source that gives that depth, V
     * @param negativePeak reached with the audio at its level; empty when the oscillation is lost there
     */
    public record Look(double distortion, double audio, Optional<Double> negativePeak) {}

    /**
     * @param carrier unmodulated
     * @param depth wanted, a fraction
     * @return empty when the oscillation is lost before that depth
     */
    public Optional<Look> at(SteadyState.Found carrier, double depth) {
        Circuit still = Envelope.hold(carrier.waveforms(), held);
        Equations rest = Equations.of(Envelope.at(still, source, 0));
        Followed start = Followed.of(carrier).carriedTo(rest);
        Follower following = follower(rest, start);
        Optional<Followed> centre = following.follow(rest, start);
        return centre.flatMap(c -> new Curve(following, still, c, depth).look());
    }

    private Follower follower(Equations rest, Followed start) {
        if (follower.isEmpty()) follower = Optional.of(new Follower(rest, start.site(), accuracy, watch));
        return follower.get();
    }

    /** One carrier's curve. */
    private final class Curve {
        private final Follower following;
        private final Circuit still;
        private final Followed centre;
        private final Followed.Slope slope;
        private final double rest;
        private final double audio;

        Curve(Follower following, Circuit still, Followed centre, double depth) {
            this.following = following;
            this.still = still;
            this.centre = centre;
            double step = SMALL * level;
            slope = following.slope(centre, equations(-step), equations(step), step);
            rest = amplitude(centre.waveforms());
            int unknown = centre.waveforms().equations().current(coil).orElseThrow();
            audio = Math.abs(depth * rest / slope.figures().amplitude(unknown, 0, 1));
        }

        private Equations equations(double volts) {
            return Equations.of(Envelope.at(still, source, volts));
        }

        private double amplitude(Waveforms waveforms) {
            return waveforms.currentAmplitude(coil, 1);
        }

        Optional<Look> look() {
            if (!Double.isFinite(audio)) return Optional.empty();
            double[] places = {-audio, -audio / 2, 0, audio / 2, audio}, amplitudes = new double[places.length];
            Followed[] points = new Followed[places.length];
            points[2] = centre;
            for (int side = -1; side <= 1; side += 2) {
                Optional<Followed> half = towards(side * audio / 2, Optional.empty(), 0);
                Optional<Followed> end = half.isEmpty() ? half : towards(side * audio, half, side * audio / 2);
                if (end.isEmpty()) return Optional.empty();
                points[2 + side] = half.orElseThrow();
                points[2 + 2 * side] = end.get();
            }
            for (int k = 0; k < places.length; k++) amplitudes[k] = amplitude(points[k].waveforms());
            int lowest = amplitudes[0] < amplitudes[places.length - 1] ? 0 : places.length - 1;
            Optional<Double> exact = settled(points[lowest]);
            if (exact.isEmpty()) return Optional.empty();
            if (Math.abs(exact.get() - amplitudes[lowest]) > SAME * rest) {
                for (int k = 0; k < places.length; k++) {
                    Optional<Double> one = settled(points[k]);
                    if (one.isEmpty()) return Optional.empty();
                    amplitudes[k] = one.get();
                }
            }
            return Optional.of(read(places, amplitudes, points));
        }

        private Optional<Followed> towards(double volts, Optional<Followed> known, double way) {
            Optional<Followed> there = following.along(equations(volts), centre, slope, known, way, volts);
            if (there.isPresent() || known.isEmpty()) return there;
            // a sharp bend: half of the rest of the way first, from where it is known
            return following
                    .follow(equations((way + volts) / 2), known.get())
                    .flatMap(between -> following.follow(equations(volts), between));
        }

        private Optional<Double> settled(Followed point) {
            return following.settle(point) instanceof SteadyState.Found found
                    ? Optional.of(amplitude(found.waveforms()))
                    : Optional.empty();
        }

        private Look read(double[] places, double[] amplitudes, Followed[] points) {
            PolynomialFunctionNewtonForm curve = new DividedDifferenceInterpolator().interpolate(places, amplitudes);
            double[] period = new double[PERIOD];
            for (int k = 0; k < PERIOD; k++) period[k] = curve.value(audio * Math.sin(2 * Math.PI * k / PERIOD));
            double distortion = new EnvelopePeriod(period, amplitudes[2]).distortion();
            return new Look(distortion, audio, negativePeak(curve, places, amplitudes, points));
        }

        /** Within the five points the curve is known; beyond them it is solved where the audio's own level lies. */
        private Optional<Double> negativePeak(
                PolynomialFunctionNewtonForm curve, double[] places, double[] amplitudes, Followed[] points) {
            boolean falls = amplitudes[0] < amplitudes[places.length - 1];
            double trough = falls ? -level : level;
            if (level <= audio) return Optional.of(1 - curve.value(trough) / amplitudes[2]);
            int end = falls ? 0 : places.length - 1;
            return following
                    .follow(equations(trough), points[end])
                    .map(there -> 1 - amplitude(there.waveforms()) / amplitudes[2]);
        }
    }
}
