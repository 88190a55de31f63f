package galena.build.predict;

import galena.signal.modulation.EnvelopePeriod;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.analysis.interpolation.AkimaSplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;

/** The points of a static modulation curve joined: the envelope that a tone makes of it, with or without a standing voltage. */
final class AmplitudeCurve {
    private static final int PERIOD = 128;
    private static final int LEVELS = 32;
    private static final int BIASES = 16;
    private static final int BISECTIONS = 40;

    /** An envelope that varies by no more than this share has no distortion to speak of. */
    private static final double FLAT = 1e-7;

    private final double[] audio;
    private final PolynomialSplineFunction amplitudes;
    private final PolynomialSplineFunction frequencies;

    /** @param points five or more, by rising audio, on either side of zero */
    AmplitudeCurve(List<Prediction.Point> points) {
        audio = points.stream().mapToDouble(Prediction.Point::audio).toArray();
        amplitudes =
                joined(points.stream().mapToDouble(Prediction.Point::amplitude).toArray());
        frequencies =
                joined(points.stream().mapToDouble(Prediction.Point::frequency).toArray());
    }

    private PolynomialSplineFunction joined(double[] values) {
        return new AkimaSplineInterpolator().interpolate(audio, values);
    }

    /** A clean modulation: standing voltage, audio level (V) and negative peak. */
    record Clean(double bias, double level, double depth) {}

    private double low() {
        return audio[0];
    }

    private double high() {
        return audio[audio.length - 1];
    }

    /** The audio level up to which the curve is known about a standing voltage. */
    double reach(double bias) {
        return Math.min(bias - low(), high() - bias);
    }

    private double value(PolynomialSplineFunction curve, double at) {
        return curve.value(Math.max(low(), Math.min(high(), at)));
    }

    private static double audio(double bias, double level, int k) {
        return bias + level * Math.sin(2 * Math.PI * k / PERIOD);
    }

    EnvelopePeriod envelope(double bias, double level) {
        return new EnvelopePeriod(period(bias, level), value(amplitudes, bias));
    }

    private double[] period(double bias, double level) {
        double[] period = new double[PERIOD];
        for (int k = 0; k < PERIOD; k++) period[k] = value(amplitudes, audio(bias, level, k));
        return period;
    }

    /** The frequency's course over one period of the tone, Hz. */
    double[] frequencies(double level) {
        double[] course = new double[PERIOD];
        for (int k = 0; k < PERIOD; k++) course[k] = value(frequencies, audio(0, level, k));
        return course;
    }

    /** The deepest modulation whose distortion stays below a limit, about a standing voltage; empty when none does. */
    Optional<Clean> deepestClean(double bias, double limit) {
        return deepest(bias, limit)
                .map(c -> new Clean(bias, c.level, envelope(bias, c.level).negativePeak()));
    }

    /** The same by the troughs of the sampled period: a search asks for thousands. */
    private Optional<Clean> deepest(double bias, double limit) {
        Clean best = new Clean(bias, 0, 0);
        double reach = reach(bias), carrier = value(amplitudes, bias);
        if (!(carrier > 0)) return Optional.empty();
        for (int k = 1; k <= LEVELS; k++) {
            double level = reach * k / LEVELS;
            double[] period = period(bias, level);
            if (flat(period)) continue;
            if (new EnvelopePeriod(period, carrier).distortion() > limit) break;
            double depth = 1 - Arrays.stream(period).min().orElseThrow() / carrier;
            if (depth > best.depth) best = new Clean(bias, level, depth);
        }
        return best.level > 0 ? Optional.of(best) : Optional.empty();
    }

    /** The standing voltage about which the deepest clean modulation is deepest, to a hundredth of the curve. */
    Optional<Clean> bestBias(double limit) {
        double centre = (low() + high()) / 2, half = (high() - low()) / 2;
        Optional<Clean> best = Optional.empty();
        while (half > resolution()) {
            for (int k = 1; k < BIASES; k++) {
                double bias = centre - half + 2 * half * k / BIASES;
                if (!(reach(bias) > 0)) continue;
                Optional<Clean> here = deepest(bias, limit);
                if (here.isPresent() && (best.isEmpty() || here.get().depth > best.get().depth)) best = here;
            }
            if (best.isEmpty()) return best;
            centre = best.get().bias;
            half /= BIASES / 4.0;
        }
        return best.map(
                b -> new Clean(b.bias, b.level, envelope(b.bias, b.level).negativePeak()));
    }

    /** To which the best bias is looked for, V. */
    double resolution() {
        return (high() - low()) / 200;
    }

    /** Whether audio of a level leaves the carrier as it is. */
    boolean flat(double level) {
        return flat(period(0, level));
    }

    private static boolean flat(double[] period) {
        double low = Arrays.stream(period).min().orElseThrow(),
                high = Arrays.stream(period).max().orElseThrow();
        return high - low <= FLAT * high;
    }

    /** The audio level that reaches a negative peak; empty when the curve ends before. */
    Optional<Double> levelFor(double depth) {
        double low = 0, high = reach(0);
        if (trough(high) > 1 - depth) return Optional.empty();
        for (int k = 0; k < BISECTIONS; k++) {
            double middle = (low + high) / 2;
            if (trough(middle) > 1 - depth) low = middle;
            else high = middle;
        }
        return Optional.of((low + high) / 2);
    }

    /** The lowest amplitude of a period over the carrier's. */
    private double trough(double level) {
        return Arrays.stream(period(0, level)).min().orElseThrow() / value(amplitudes, 0);
    }
}
