package galena.build.predict;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Followed;
import galena.engine.steady.Follower;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.steady.Waveforms;
import galena.signal.spectrum.PeriodicWaveform;
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
    /** Harmonics of the audio that count as distortion, as where envelopes are measured. */
    private static final int HARMONICS = 10;

    private static final int BISECTIONS = 40;

    /** The points lie this much further than the slope says, as curves bend; not so far that the carrier would vanish. */
    private static final double BEYOND = 1.15;

    private static final double NEARLY_ALL = 0.98;
    /** Where the curve bends so much that the depth still lies beyond. */
    private static final double FURTHER = 1.5;

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
     * @param distortion of the envelope with that audio, a fraction
     * @param audio peak voltage of the source, V
     * @param deepest negative peak with that audio, a fraction
     * @param negativePeak with the audio at its level; empty when the oscillation is lost there
     */
    public record Look(double distortion, double audio, double deepest, Optional<Double> negativePeak) {}

    /**
     * @param carrier unmodulated
     * @param depth wanted, a fraction
     * @return empty when the oscillation is lost before that depth
     */
    public Optional<Look> at(SteadyState.Found carrier, double depth) {
        return curve(carrier).flatMap(curve -> curve.forDepth(depth));
    }

    /**
     * The same with the audio left at a voltage, whatever depth that gives.
     *
     * @param carrier unmodulated
     * @param audio peak, V
     * @return empty when the oscillation is lost before
     */
    public Optional<Look> left(SteadyState.Found carrier, double audio) {
        return curve(carrier).flatMap(curve -> curve.sample(audio).map(sampled -> curve.look(sampled, audio)));
    }

    private Optional<Curve> curve(SteadyState.Found carrier) {
        Circuit still = Envelope.hold(carrier.waveforms(), held);
        Equations rest = Equations.of(Envelope.at(still, source, 0));
        Followed start = Followed.of(carrier).carriedTo(rest);
        Follower following = follower(rest, start);
        Optional<Followed> centre = following.follow(rest, start);
        return centre.map(c -> new Curve(following, still, c));
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

        Curve(Follower following, Circuit still, Followed centre) {
            this.following = following;
            this.still = still;
            this.centre = centre;
            double step = SMALL * level;
            slope = following.slope(centre, equations(-step), equations(step), step);
            rest = amplitude(centre.waveforms());
        }

        /** By the curve's slope first, then on the curve itself. */
        Optional<Look> forDepth(double depth) {
            int unknown = centre.waveforms().equations().current(coil).orElseThrow();
            double audio = Math.abs(depth * rest / slope.figures().amplitude(unknown, 0, 1));
            if (!Double.isFinite(audio)) return Optional.empty();
            double beyond = Math.max(1, Math.min(BEYOND, NEARLY_ALL / depth));
            Optional<Sampled> sampled = sample(beyond * audio);
            if (sampled.isEmpty()) return sample(audio).flatMap(nearer -> read(nearer, depth));
            return read(sampled.get(), depth)
                    .or(() -> sample(FURTHER * audio).flatMap(further -> read(further, depth)));
        }

        private Optional<Look> read(Sampled sampled, double depth) {
            return sampled.audioFor(depth).map(audio -> look(sampled, audio));
        }

        private Equations equations(double volts) {
            return Equations.of(Envelope.at(still, source, volts));
        }

        private double amplitude(Waveforms waveforms) {
            return waveforms.currentAmplitude(coil, 1);
        }

        Optional<Sampled> sample(double audio) {
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
            return Optional.of(new Sampled(places, amplitudes, points));
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

        Look look(Sampled sampled, double audio) {
            double[] period = new double[PERIOD];
            for (int k = 0; k < PERIOD; k++) {
                period[k] = sampled.curve.value(audio * Math.sin(2 * Math.PI * k / PERIOD));
            }
            double distortion = PeriodicWaveform.of(period).totalDistortion(HARMONICS);
            return new Look(distortion, audio, sampled.negativePeak(audio), levelPeak(sampled));
        }

        /** Within the five points the curve is known; beyond them it is solved where the audio's own level lies. */
        private Optional<Double> levelPeak(Sampled sampled) {
            if (level <= sampled.reach()) return Optional.of(sampled.negativePeak(level));
            return following
                    .follow(equations(sampled.lowSide() * level), sampled.lowest())
                    .map(there -> 1 - amplitude(there.waveforms()) / sampled.amplitudes[2]);
        }
    }

    /** Five points of a curve and the quartic through them. */
    private static final class Sampled {
        private final double[] places;
        private final double[] amplitudes;
        private final Followed[] points;
        private final PolynomialFunctionNewtonForm curve;

        Sampled(double[] places, double[] amplitudes, Followed[] points) {
            this.places = places;
            this.amplitudes = amplitudes;
            this.points = points;
            curve = new DividedDifferenceInterpolator().interpolate(places, amplitudes);
        }

        double reach() {
            return places[places.length - 1];
        }

        /** −1 where the amplitude falls with the voltage below zero, 1 where with that above. */
        int lowSide() {
            return amplitudes[0] < amplitudes[places.length - 1] ? -1 : 1;
        }

        Followed lowest() {
            return points[lowSide() < 0 ? 0 : points.length - 1];
        }

        double negativePeak(double audio) {
            return 1 - curve.value(lowSide() * audio) / amplitudes[2];
        }

        /** The audio that reaches a negative peak; empty beyond the points. The peak grows with the audio, or bisection finds one. */
        Optional<Double> audioFor(double depth) {
            double low = 0, high = reach();
            if (negativePeak(high) < depth) return Optional.empty();
            for (int k = 0; k < BISECTIONS; k++) {
                double middle = (low + high) / 2;
                if (negativePeak(middle) < depth) low = middle;
                else high = middle;
            }
            return Optional.of((low + high) / 2);
        }
    }
}
