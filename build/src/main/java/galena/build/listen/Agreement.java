package galena.build.listen;

import galena.build.predict.Progress;
import galena.engine.envelope.DynamicEnvelope;
import galena.engine.envelope.Envelope;
import galena.engine.envelope.EnvelopeAnswer;
import galena.engine.envelope.SlowSource;
import galena.engine.steady.SteadyState;
import galena.signal.modulation.EnvelopePeriod;
import java.util.ArrayList;
import java.util.List;

/**
 * The reduced model beside the full envelope, for one tone at one level.
 *
 * @param tone Hz
 * @param level share of the programme's level
 * @param full negative peak of the full envelope
 * @param reduced negative peak of the reduced model
 * @param fullDistortion of the full envelope
 * @param reducedDistortion of the reduced model's
 */
public record Agreement(
        double tone, double level, double full, double reduced, double fullDistortion, double reducedDistortion) {
    private static final double TOLERANCE = 1e-3;
    private static final int FIRST_POINTS = 9;
    private static final int HARMONICS = 10;
    private static final int PERIOD = 64;
    private static final double SETTLED = 0.6;
    private static final double[][] LOOKS = {{1000, 0.5}, {1000, 1}, {4000, 0.5}, {100, 0.7}};

    /** Points of depth by which the two differ. */
    public double depthError() {
        return Math.abs(reduced - full);
    }

    /** Difference of distortion. */
    public double distortionError() {
        return Math.abs(reducedDistortion - fullDistortion);
    }

    /** A full envelope at one look. */
    record Truth(double tone, double level, double negativePeak, double distortion) {}

    /**
     * Solves the full envelope at several levels and tones; those that have none are left out.
     *
     * @param rate of the reduced model: tones are chosen to fit it
     */
    static List<Truth> truths(Look look, double rate, Progress progress) {
        List<Truth> truths = new ArrayList<>();
        SteadyState.Found carrier = look.running().state();
        for (int k = 0; k < LOOKS.length; k++) {
            progress.at(0.4 + 0.1 * k, "full envelope");
            double tone = fitting(LOOKS[k][0], rate), level = LOOKS[k][1];
            SlowSource source =
                    new SlowSource(look.source(), level * look.running().audioLevel(), tone);
            EnvelopeAnswer answer =
                    new DynamicEnvelope(TOLERANCE, FIRST_POINTS, progress.watch()).solve(carrier, source);
            if (!(answer instanceof Envelope envelope)) continue;
            double[][] z = envelope.current(look.coil(), 1);
            double[] size = new double[z[0].length];
            for (int p = 0; p < size.length; p++) size[p] = Math.hypot(z[0][p], z[1][p]);
            double unmodulated = carrier.waveforms().currentAmplitude(look.coil(), 1);
            EnvelopePeriod period = new EnvelopePeriod(size, unmodulated);
            truths.add(new Truth(tone, level, period.negativePeak(), period.distortion()));
        }
        return truths;
    }

    /** The tone nearest to one wanted of which a whole number of periods lasts a fiftieth of a second. */
    static double fitting(double wanted, double rate) {
        int n = stretch(rate);
        return rate * Math.max(1, Math.round(wanted * n / rate)) / n;
    }

    /** Samples of a fiftieth of a second. */
    private static int stretch(double rate) {
        return (int) Math.round(rate / 50);
    }

    static Agreement of(Truth truth, Reduction reduction) {
        double[] size = envelope(reduction, truth.tone(), truth.level());
        EnvelopePeriod period = new EnvelopePeriod(size, 1);
        return new Agreement(
                truth.tone(),
                truth.level(),
                truth.negativePeak(),
                period.negativePeak(),
                truth.distortion(),
                period.distortion());
    }

    /** One period of the reduced model's envelope, as its first harmonics make it. */
    static double[] envelope(Reduction reduction, double tone, double level) {
        Reduction quiet = reduction.withoutHum();
        int n = stretch(reduction.rate()), settle = ((int) (SETTLED * reduction.rate() / n) + 1) * n;
        ReducedModel model = new ReducedModel(quiet, n);
        double[] in = new double[n], i = new double[n], q = new double[n];
        for (int k = 0; k < n; k++) in[k] = level * Math.sin(2 * Math.PI * tone * k / reduction.rate());
        for (int at = 0; at <= settle; at += n) model.process(in, in, n, i, q);
        double[] size = new double[n];
        for (int k = 0; k < n; k++) size[k] = Math.hypot(i[k], q[k]);
        return period(size, tone / reduction.rate());
    }

    /** One period from the harmonics of a stretch that holds a whole number of them. */
    static double[] period(double[] samples, double turns) {
        double[] period = new double[PERIOD];
        for (int h = 0; h <= HARMONICS && h * turns < 0.5; h++) {
            double re = 0, im = 0;
            for (int k = 0; k < samples.length; k++) {
                double angle = 2 * Math.PI * h * turns * k;
                re += samples[k] * Math.cos(angle);
                im += samples[k] * Math.sin(angle);
            }
            double weight = (h == 0 ? 1.0 : 2.0) / samples.length;
            for (int p = 0; p < PERIOD; p++) {
                double angle = 2 * Math.PI * h * p / PERIOD;
                period[p] += weight * (re * Math.cos(angle) + im * Math.sin(angle));
            }
        }
        return period;
    }
}
