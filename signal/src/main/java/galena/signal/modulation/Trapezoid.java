package galena.signal.modulation;

import galena.signal.Estimate;
import galena.signal.fit.NormalEquations;
import galena.signal.fit.SeriesFit;
import galena.signal.fit.StudentT;
import java.util.List;
import java.util.Optional;

/**
 * The trapezoid: envelope against the audio that makes it, from two channels at the same times. A straight line is
 * linear modulation; its bend and the width of its loop are told apart.
 *
 * @param depth (A − B)/(A + B) from the fitted curve's ends, a fraction
 * @param slope envelope per unit of audio, in the middle (unit of the envelope per unit of audio)
 * @param bend largest distance of the curve from the straight line through its ends, over the carrier, a fraction
 * @param delay of the envelope behind the audio (s)
 * @param curve points of the fitted curve, audio and envelope alternating
 */
public record Trapezoid(Estimate depth, Estimate slope, double bend, double delay, List<Double> curve) {
    private static final int DEGREE = 5;
    private static final int POINTS = 33;
    private static final int PERIOD_POINTS = 720;

    /**
     * @param audio at the times of the envelope, read
     * @param envelope signed, as many, read
     * @param interval time between samples (s)
     * @return empty when the audio hardly moves, or the samples are too few
     */
    public static Optional<Trapezoid> of(double[] audio, double[] envelope, double interval) {
        int lag = bestLag(audio, envelope);
        int from = Math.max(0, lag), to = Math.min(envelope.length, audio.length + Math.min(0, lag));
        double[] ends = ends(audio, interval);
        double low = ends[0], high = ends[1];
        if (!(high > low) || to - from < 10 * DEGREE) return Optional.empty();
        double middle = (low + high) / 2, half = (high - low) / 2;
        NormalEquations equations = new NormalEquations(DEGREE + 1);
        for (int k = from; k < to; k++) equations.add(row((audio[k - lag] - middle) / half), envelope[k], 1);
        Optional<NormalEquations.Solution> solved = equations.solve();
        if (solved.isEmpty()) return Optional.empty();
        NormalEquations.Solution s = solved.get();
        double sum = 0;
        for (int k = from; k < to; k++) {
            double left = envelope[k] - value(s, (audio[k - lag] - middle) / half);
            sum += left * left;
        }
        // the filter passes just the band that the samples span, so their noise is as good as independent
        double sigma = Math.sqrt(sum / (to - from)) * StudentT.at95(to - from) / Estimate.NORMAL_95;
        return Optional.of(
                new Trapezoid(depth(s, sigma), slope(s, sigma, half), bend(s), lag * interval, curve(s, middle, half)));
    }

    /** Lowest and highest audio: of the fitted tone if there is one, for noise drives the extremes of samples apart. */
    private static double[] ends(double[] audio, double interval) {
        double top = 0.25 / interval;
        Optional<SeriesFit> tone = ToneFinder.find(audio, interval, top).flatMap(single -> {
            double f = single.frequency().value();
            int harmonics = (int) Math.max(1, Math.min(5, top / f));
            return SeriesFit.of(audio, null, interval, top, new SeriesFit.Model(f, true, harmonics, List.of(), 0));
        });
        double low = Double.POSITIVE_INFINITY, high = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < (tone.isPresent() ? PERIOD_POINTS : audio.length); k++) {
            double a = tone.isPresent() ? series(tone.get(), k) : audio[k];
            low = Math.min(low, a);
            high = Math.max(high, a);
        }
        return new double[] {low, high};
    }

    private static double series(SeriesFit tone, int point) {
        double sum = tone.trend(0).value();
        for (int h = 1; h <= tone.harmonics(); h++) {
            double angle = 2 * Math.PI * h * point / PERIOD_POINTS;
            sum += tone.cosine(h) * Math.cos(angle) + tone.sine(h) * Math.sin(angle);
        }
        return sum;
    }

    private static Estimate depth(NormalEquations.Solution s, double sigma) {
        double one = value(s, 1), other = value(s, -1), sum = one + other, sign = one > other ? 1 : -1;
        double[] gradient = new double[DEGREE + 1], up = row(1), down = row(-1);
        for (int i = 0; i <= DEGREE; i++) gradient[i] = 2 * (other * up[i] - one * down[i]) / (sum * sum);
        return Estimate.normal(sign * (one - other) / sum, sigma * norm(s, gradient));
    }

    private static Estimate slope(NormalEquations.Solution s, double sigma, double half) {
        double sign = 1 / half;
        return Estimate.normal(s.value(1) * sign, sigma * Math.sqrt(s.cofactor(1, 1)) / half);
    }

    private static double bend(NormalEquations.Solution s) {
        double low = value(s, -1), high = value(s, 1), most = 0;
        for (int k = 0; k < POINTS; k++) {
            double x = 2.0 * k / (POINTS - 1) - 1;
            most = Math.max(most, Math.abs(value(s, x) - (low + (high - low) * (x + 1) / 2)));
        }
        return most / Math.abs(value(s, 0));
    }

    private static List<Double> curve(NormalEquations.Solution s, double middle, double half) {
        List<Double> out = new java.util.ArrayList<>();
        for (int k = 0; k < POINTS; k++) {
            double x = 2.0 * k / (POINTS - 1) - 1;
            out.add(middle + half * x);
            out.add(value(s, x));
        }
        return out;
    }

    private static double norm(NormalEquations.Solution s, double[] g) {
        double sum = 0;
        for (int i = 0; i < g.length; i++) for (int j = 0; j < g.length; j++) sum += g[i] * g[j] * s.cofactor(i, j);
        return Math.sqrt(Math.max(0, sum));
    }

    private static double[] row(double x) {
        double[] row = new double[DEGREE + 1];
        row[0] = 1;
        for (int i = 1; i <= DEGREE; i++) row[i] = row[i - 1] * x;
        return row;
    }

    private static double value(NormalEquations.Solution s, double x) {
        double sum = 0;
        for (int i = DEGREE; i >= 0; i--) sum = sum * x + s.value(i);
        return sum;
    }

    /** The lag in samples, up to 3 % of the record, at which audio and envelope agree best, either way up. */
    private static int bestLag(double[] audio, double[] envelope) {
        int n = Math.min(audio.length, envelope.length), reach = Math.min(200, n / 33), best = 0;
        double meanA = 0, meanE = 0, most = -1;
        for (int k = 0; k < n; k++) {
            meanA += audio[k] / n;
            meanE += envelope[k] / n;
        }
        for (int lag = -reach; lag <= reach; lag++) {
            double sum = 0;
            for (int k = reach; k < n - reach; k++) sum += (audio[k - lag] - meanA) * (envelope[k] - meanE);
            if (Math.abs(sum) > most) {
                most = Math.abs(sum);
                best = lag;
            }
        }
        return best;
    }
}
