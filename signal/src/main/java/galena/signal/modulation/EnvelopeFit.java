package galena.signal.modulation;

import galena.signal.Estimate;
import galena.signal.fit.RiceInterval;
import galena.signal.fit.SeriesFit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Figures of an envelope under a steady tone, from its fitted series, with what the receiver-side filter took away put
 * back. A peak is read off the series, not off the noisy samples, so noise neither raises it nor has to be averaged.
 */
public final class EnvelopeFit {
    /** Distortion counts harmonics up to this one. */
    public static final int HARMONICS = 10;

    private static final int POINTS = 720;

    private final SeriesFit fit;
    private final DoubleUnaryOperator response;
    private final OptionalDouble unmodulated;
    private final Estimate carrier;
    private final double[] cosine;
    private final double[] sine;

    /**
     * @param fit of the signed envelope
     * @param response gain that the envelope went through at an audio frequency (Hz)
     * @param unmodulated the carrier's peak without modulation if it is known, same unit
     */
    EnvelopeFit(SeriesFit fit, DoubleUnaryOperator response, OptionalDouble unmodulated) {
        this.fit = fit;
        this.response = response;
        this.unmodulated = unmodulated;
        this.carrier = unmodulated.isPresent()
                ? new Estimate(unmodulated.getAsDouble(), unmodulated.getAsDouble(), unmodulated.getAsDouble())
                : fit.trend(0);
        cosine = new double[fit.harmonics()];
        sine = new double[fit.harmonics()];
        for (int k = 1; k <= cosine.length; k++) {
            double gain = response.applyAsDouble(k * fit.frequency().value());
            cosine[k - 1] = fit.cosine(k) / gain;
            sine[k - 1] = fit.sine(k) / gain;
        }
    }

    /** Frequency of the tone (Hz). */
    public Estimate tone() {
        return fit.frequency();
    }

    /** The Ec of the peaks (unit of the capture). */
    public Estimate carrier() {
        return carrier;
    }

    /** Whether Ec is the mean envelope, for want of the unmodulated carrier. */
    public boolean carrierIsMean() {
        return unmodulated.isEmpty();
    }

    /** Mean envelope over the unmodulated carrier less 1, if the latter is known. */
    public OptionalDouble carrierShift() {
        return unmodulated.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(fit.trend(0).value() / unmodulated.getAsDouble() - 1);
    }

    /** Emax/Ec − 1, a fraction. */
    public Estimate positivePeak() {
        double t = extreme(1), e = at(t), ec = carrier.value();
        double slope = carrierIsMean() ? -e / (ec * ec) : 0;
        return Estimate.normal(Depth.positivePeak(e, ec), sigma(t, 1 / ec, slope));
    }

    /** 1 − Emin/Ec, a fraction; above 1 past 100 %. */
    public Estimate negativePeak() {
        double t = extreme(-1), e = at(t), ec = carrier.value();
        double slope = carrierIsMean() ? e / (ec * ec) : 0;
        return Estimate.normal(Depth.negativePeak(e, ec), sigma(t, -1 / ec, slope));
    }

    /** (Emax − Emin)/(Emax + Emin), a fraction: what a screen shows. */
    public Estimate depth() {
        double up = extreme(1), down = extreme(-1), a = at(up), b = at(down), sum = (a + b) * (a + b);
        double[] c = new double[cosine.length], s = new double[cosine.length];
        addGradient(up, 2 * b / sum, c, s);
        addGradient(down, -2 * a / sum, c, s);
        return Estimate.normal(Depth.symmetrical(a, b), fit.sigmaOf(2 * (b - a) / sum, c, s));
    }

    /** Amplitude of audio harmonic k over the carrier, a fraction. */
    public Estimate harmonic(int k) {
        return RiceInterval.of(Math.hypot(cosine[k - 1], sine[k - 1]), sigmaOf(k))
                .map(a -> a / carrier.value());
    }

    /** How many audio harmonics fit into the band. */
    public int harmonics() {
        return cosine.length;
    }

    /** Harmonic k over the fundamental, a fraction. */
    public Estimate relative(int k) {
        double first = Math.hypot(cosine[0], sine[0]);
        return RiceInterval.of(Math.hypot(cosine[k - 1], sine[k - 1]), sigmaOf(k))
                .map(a -> a / first);
    }

    /**
     * Total distortion over the harmonics in the band, relative to the fundamental, a fraction. Noise adds 2σ² to each
     * squared amplitude on the average; that is taken off again.
     */
    public Estimate distortion() {
        double first = Math.hypot(cosine[0], sine[0]), sum = 0, variance = 0;
        for (int k = 2; k <= cosine.length; k++) {
            double s2 = sigmaOf(k) * sigmaOf(k),
                    a2 = cosine[k - 1] * cosine[k - 1] + sine[k - 1] * sine[k - 1] - 2 * s2;
            sum += a2;
            variance += 4 * s2 * Math.max(0, a2) + 4 * s2 * s2;
        }
        double half = Estimate.NORMAL_95 * Math.sqrt(variance);
        return new Estimate(root(sum), root(sum - half), root(sum + half)).map(a -> a / first);
    }

    /** Envelope of the series at a time (s) from the middle of the record, unit of the capture. */
    public double at(double t) {
        double sum = fit.trend(0).value();
        for (int k = 1; k <= cosine.length; k++) {
            double angle = 2 * Math.PI * k * fit.frequency().value() * t;
            sum += cosine[k - 1] * Math.cos(angle) + sine[k - 1] * Math.sin(angle);
        }
        return sum;
    }

    /** One period of the series on a grid, unit of the capture. */
    public List<Double> onePeriod(int points) {
        List<Double> out = new ArrayList<>();
        for (int k = 0; k < points; k++)
            out.add(at(k / (points * fit.frequency().value())));
        return out;
    }

    private static double root(double x) {
        return Math.sqrt(Math.max(0, x));
    }

    private double sigmaOf(int k) {
        return fit.sigmaOfHarmonic(k)
                / response.applyAsDouble(k * fit.frequency().value());
    }

    /** Time of the highest (sign 1) or lowest (−1) envelope within a period from the middle. */
    private double extreme(int sign) {
        double period = 1 / fit.frequency().value(), best = 0;
        for (int k = 0; k < POINTS; k++) {
            double t = k * period / POINTS;
            if (sign * at(t) > sign * at(best)) best = t;
        }
        double h = period / POINTS, a = at(best - h), b = at(best), c = at(best + h), curve = a - 2 * b + c;
        return curve == 0 ? best : best + 0.5 * h * (a - c) / curve;
    }

    /** σ of scale·E(t) + constant·(mean envelope). */
    private double sigma(double t, double scale, double constant) {
        double[] c = new double[cosine.length], s = new double[cosine.length];
        addGradient(t, scale, c, s);
        return fit.sigmaOf(scale + constant, c, s);
    }

    private void addGradient(double t, double scale, double[] c, double[] s) {
        for (int k = 1; k <= c.length; k++) {
            double angle = 2 * Math.PI * k * fit.frequency().value() * t;
            double gain = response.applyAsDouble(k * fit.frequency().value());
            c[k - 1] += scale * Math.cos(angle) / gain;
            s[k - 1] += scale * Math.sin(angle) / gain;
        }
    }
}
