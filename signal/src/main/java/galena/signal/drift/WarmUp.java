package galena.signal.drift;

import galena.signal.Estimate;
import galena.signal.fit.NormalEquations;
import java.util.Optional;

/**
 * Warm-up: f(t) = f∞ + b t + a exp(−t/τ), t from the first reading. For each τ the rest is linear, so τ alone is searched
 * and then refined with the rest by one Gauss-Newton step for the intervals.
 *
 * @param settled frequency without the warm-up term at the end of the log (Hz)
 * @param excess a, the frequency above the settled course at the first reading (Hz)
 * @param constant τ (s)
 * @param rate b, drift that goes on afterwards (Hz/s)
 * @param rms scatter about the curve (Hz)
 */
public record WarmUp(Estimate settled, Estimate excess, Estimate constant, Estimate rate, double rms) {
    private static final int FEWEST = 8;

    /**
     * @param seconds increasing, read
     * @param hertz as many, read
     * @return empty when there are under eight readings, or when the log shows no bend that one τ explains better than a
     *     straight line does
     */
    public static Optional<WarmUp> fit(double[] seconds, double[] hertz) {
        int n = seconds.length;
        if (n != hertz.length) throw new IllegalArgumentException("seconds and hertz differ in length");
        if (n < FEWEST || !(seconds[n - 1] > seconds[0])) return Optional.empty();
        double span = seconds[n - 1] - seconds[0], base = hertz[n - 1];
        double[] t = new double[n], y = new double[n];
        for (int k = 0; k < n; k++) {
            t[k] = (seconds[k] - seconds[0]) / span;
            y[k] = hertz[k] - base;
        }
        double tau = best(t, y);
        if (Double.isNaN(tau)) return Optional.empty();
        double straight =
                StraightLine.through(t, y).map(l -> l.rms() * l.rms() * (n - 2)).orElse(Double.MAX_VALUE);
        double bent = squares(t, y, tau);
        if (!(straight - bent > 5 * bent / (n - 4) * 2)) return Optional.empty();
        return interval(t, y, tau, span, base);
    }

    private static double best(double[] t, double[] y) {
        double best = Double.NaN, least = Double.POSITIVE_INFINITY;
        for (double tau = 0.01; tau < 2; tau *= 1.05) {
            double sum = squares(t, y, tau);
            if (sum < least) {
                least = sum;
                best = tau;
            }
        }
        if (Double.isNaN(best)) return best;
        double low = best / 1.1, high = best * 1.1;
        for (int k = 0; k < 60; k++) { // golden section
            double a = high - 0.618034 * (high - low), b = low + 0.618034 * (high - low);
            if (squares(t, y, a) < squares(t, y, b)) high = b;
            else low = a;
        }
        return (low + high) / 2;
    }

    private static double squares(double[] t, double[] y, double tau) {
        return solve(t, y, tau, 0)
                .map(s -> {
                    double sum = 0;
                    for (double r : left(t, y, tau, s)) sum += r * r;
                    return sum;
                })
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static Optional<NormalEquations.Solution> solve(double[] t, double[] y, double tau, double a) {
        boolean withTau = a != 0;
        NormalEquations equations = new NormalEquations(withTau ? 4 : 3);
        for (int k = 0; k < t.length; k++) {
            double e = Math.exp(-t[k] / tau);
            equations.add(
                    withTau ? new double[] {1, t[k] - 1, e, a * e * t[k] / (tau * tau)} : new double[] {1, t[k] - 1, e},
                    y[k],
                    1);
        }
        return equations.solve();
    }

    private static double[] left(double[] t, double[] y, double tau, NormalEquations.Solution s) {
        double[] left = new double[t.length];
        for (int k = 0; k < left.length; k++) {
            left[k] = y[k] - s.value(0) - s.value(1) * (t[k] - 1) - s.value(2) * Math.exp(-t[k] / tau);
        }
        return left;
    }

    private static Optional<WarmUp> interval(double[] t, double[] y, double tau, double span, double base) {
        Optional<NormalEquations.Solution> linear = solve(t, y, tau, 0);
        if (linear.isEmpty() || linear.get().value(2) == 0) return Optional.empty();
        NormalEquations.Solution values = linear.get();
        return solve(t, y, tau, values.value(2)).map(s -> {
            Residuals residuals = new Residuals(left(t, y, tau, values), 4);
            return new WarmUp(
                    Estimate.normal(base + values.value(0), residuals.sigma(s.cofactor(0, 0))),
                    Estimate.normal(values.value(2), residuals.sigma(s.cofactor(2, 2))),
                    Estimate.normal(tau * span, residuals.sigma(s.cofactor(3, 3)) * span),
                    Estimate.normal(values.value(1) / span, residuals.sigma(s.cofactor(1, 1)) / span),
                    residuals.rms());
        });
    }
}
