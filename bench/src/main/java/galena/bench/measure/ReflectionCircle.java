package galena.bench.measure;

import galena.bench.capture.OnePort;
import galena.signal.Estimate;
import galena.signal.fit.NormalEquations;
import galena.signal.fit.StudentT;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * The circle that a resonance draws in the reflection plane: Γ = (a1 t + a2)/(a3 t + 1) with t = f/f0 − f0/f, fitted by
 * linear least squares to all points near the resonance, as in D. Kajfez, IEEE Trans. Microwave Theory Tech. 42 (1994)
 * 1149. The pole of the fraction gives frequency and loaded Q, the circle's diameter d the coupling d/(2 − d).
 *
 * @param frequency of resonance (Hz)
 * @param loadedQ with the analyser's resistance coupled in
 * @param coupling κ
 * @param unloadedQ loadedQ·(1 + κ)
 */
record ReflectionCircle(Estimate frequency, Estimate loadedQ, double coupling, Estimate unloadedQ) {
    private static final int FEWEST = 7;
    /** Half-widths of the resonance that the second fit takes in. */
    private static final double WIDTHS = 5;

    static Optional<ReflectionCircle> through(OnePort sweep) {
        double centre = steepest(sweep);
        double low = 0, high = Double.POSITIVE_INFINITY;
        Optional<ReflectionCircle> found = Optional.empty();
        for (int pass = 0; pass < 4; pass++) {
            found = fit(
                    sweep, centre, low, high, found.map(c -> c.loadedQ.value()).orElse(0.0));
            if (found.isEmpty()) return Optional.empty();
            centre = found.get().frequency.value();
            double half = centre / found.get().loadedQ.value() / 2 * WIDTHS;
            low = centre - half;
            high = centre + half;
        }
        return found;
    }

    /** Frequency about which the reflection moves fastest. */
    private static double steepest(OnePort sweep) {
        List<Double> f = sweep.hertz();
        double most = -1, at = f.get(0);
        for (int k = 1; k < f.size(); k++) {
            double move = Math.hypot(
                            sweep.real().get(k) - sweep.real().get(k - 1),
                            sweep.imaginary().get(k) - sweep.imaginary().get(k - 1))
                    / (f.get(k) - f.get(k - 1));
            if (move > most) {
                most = move;
                at = (f.get(k) + f.get(k - 1)) / 2;
            }
        }
        return at;
    }

    private static Optional<ReflectionCircle> fit(OnePort sweep, double f0, double low, double high, double q) {
        NormalEquations equations = new NormalEquations(6);
        int points = 0;
        for (int k = 0; k < sweep.hertz().size(); k++) {
            double f = sweep.hertz().get(k);
            if (f < low || f > high) continue;
            points++;
            double t = f / f0 - f0 / f,
                    x = sweep.real().get(k),
                    y = sweep.imaginary().get(k);
            double weight = 1 / (1 + q * t * q * t); // undoes the factor a3 t + 1 that the errors are multiplied by
            equations.add(new double[] {t, 0, 1, 0, -t * x, t * y}, x, weight);
            equations.add(new double[] {0, t, 0, 1, -t * y, -t * x}, y, weight);
        }
        if (points < FEWEST) return Optional.empty();
        int count = points;
        return equations.solve().flatMap(s -> circle(sweep, s, f0, low, high, count));
    }

    private static Optional<ReflectionCircle> circle(
            OnePort sweep, NormalEquations.Solution s, double f0, double low, double high, int points) {
        double[] theta = new double[6];
        for (int i = 0; i < 6; i++) theta[i] = s.value(i);
        if (!(theta[5] > 0)) return Optional.empty();
        double sum = 0;
        for (int k = 0; k < sweep.hertz().size(); k++) {
            double f = sweep.hertz().get(k);
            if (f < low || f > high) continue;
            double t = f / f0 - f0 / f,
                    x = sweep.real().get(k),
                    y = sweep.imaginary().get(k);
            double p = theta[4], q = theta[5];
            double re = theta[0] * t + theta[2] - t * (p * x - q * y) - x;
            double im = theta[1] * t + theta[3] - t * (p * y + q * x) - y;
            // the equation was multiplied by a3 t + 1, and its error with it
            sum += (re * re + im * im) / ((p * t + 1) * (p * t + 1) + q * t * q * t);
        }
        double sigma = Math.sqrt(sum / (2 * points - 6)) * StudentT.at95(2 * points - 6) / Estimate.NORMAL_95;
        Estimate loaded = estimate(ReflectionCircle::loaded, theta, s, sigma);
        double d = diameter(theta);
        if (!(d > 0.01 && d < 1.99) || loaded.low() <= 0) return Optional.empty();
        return Optional.of(new ReflectionCircle(
                estimate(th -> resonance(th, f0), theta, s, sigma),
                loaded,
                d / (2 - d),
                estimate(th -> loaded(th) * 2 / (2 - diameter(th)), theta, s, sigma)));
    }

    /** A function of the six coefficients, its σ from their covariance by differences. */
    private static Estimate estimate(
            ToDoubleFunction<double[]> f, double[] theta, NormalEquations.Solution s, double sigma) {
        double[] gradient = new double[theta.length];
        for (int i = 0; i < theta.length; i++) {
            double h = 1e-3 * sigma * Math.sqrt(s.cofactor(i, i)) + 1e-12;
            double[] moved = theta.clone();
            moved[i] += h;
            double up = f.applyAsDouble(moved);
            moved[i] -= 2 * h;
            gradient[i] = (up - f.applyAsDouble(moved)) / (2 * h);
        }
        double variance = 0;
        for (int i = 0; i < theta.length; i++) {
            for (int j = 0; j < theta.length; j++) variance += gradient[i] * gradient[j] * s.cofactor(i, j);
        }
        return Estimate.normal(f.applyAsDouble(theta), sigma * Math.sqrt(Math.max(0, variance)));
    }

    /** The pole of the fraction is −1/a3 = t + j/Q. */
    private static double loaded(double[] th) {
        return (th[4] * th[4] + th[5] * th[5]) / th[5];
    }

    private static double pole(double[] th) {
        return -th[4] / (th[4] * th[4] + th[5] * th[5]);
    }

    private static double resonance(double[] th, double f0) {
        double half = pole(th) / 2;
        return f0 * (half + Math.sqrt(1 + half * half));
    }

    /** Distance between the points on resonance and far from it. */
    private static double diameter(double[] th) {
        double size = th[4] * th[4] + th[5] * th[5], t = pole(th);
        double offRe = (th[0] * th[4] + th[1] * th[5]) / size, offIm = (th[1] * th[4] - th[0] * th[5]) / size;
        double nr = th[0] * t + th[2],
                ni = th[1] * t + th[3],
                dr = th[4] * t + 1,
                di = th[5] * t,
                norm = dr * dr + di * di;
        return Math.hypot((nr * dr + ni * di) / norm - offRe, (ni * dr - nr * di) / norm - offIm);
    }
}
