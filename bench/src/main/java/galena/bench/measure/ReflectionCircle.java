package galena.bench.measure;

import galena.bench.capture.OnePort;
import galena.signal.Estimate;
import galena.signal.fit.NormalEquations;
import galena.signal.fit.StudentT;
import java.util.List;
import java.util.Optional;

/**
 * The circle that a resonance draws in the reflection plane: Γ = (a1 t + a2)/(a3 t + 1) with t = 2(f − f0)/f0, fitted by
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
            found = fit(sweep, centre, low, high);
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

    private static Optional<ReflectionCircle> fit(OnePort sweep, double f0, double low, double high) {
        NormalEquations equations = new NormalEquations(6);
        int points = 0;
        for (int k = 0; k < sweep.hertz().size(); k++) {
            double f = sweep.hertz().get(k);
            if (f < low || f > high) continue;
            points++;
            double t = 2 * (f - f0) / f0,
                    x = sweep.real().get(k),
                    y = sweep.imaginary().get(k);
            equations.add(new double[] {t, 0, 1, 0, -t * x, t * y}, x, 1);
            equations.add(new double[] {0, t, 0, 1, -t * y, -t * x}, y, 1);
        }
        if (points < FEWEST) return Optional.empty();
        int count = points;
        return equations.solve().flatMap(s -> circle(sweep, s, f0, low, high, count));
    }

    private static Optional<ReflectionCircle> circle(
            OnePort sweep, NormalEquations.Solution s, double f0, double low, double high, int points) {
        double p = s.value(4), q = s.value(5), size = p * p + q * q;
        double pole = -p / size, loaded = size / q; // −1/a3 = pole + j/loaded
        if (!(loaded > 0) || !Double.isFinite(loaded) || Math.abs(pole) > 0.5) return Optional.empty();
        double sum = 0;
        for (int k = 0; k < sweep.hertz().size(); k++) {
            double f = sweep.hertz().get(k);
            if (f < low || f > high) continue;
            double t = 2 * (f - f0) / f0,
                    x = sweep.real().get(k),
                    y = sweep.imaginary().get(k);
            double re = s.value(0) * t + s.value(2) - t * (p * x - q * y) - x,
                    im = s.value(1) * t + s.value(3) - t * (p * y + q * x) - y;
            sum += re * re + im * im;
        }
        double sigma = Math.sqrt(sum / (2 * points - 6)) * StudentT.at95(2 * points - 6) / Estimate.NORMAL_95;
        double dq = (q * q - p * p) / (q * q), dp = 2 * p / q; // derivatives of size/q
        double sigmaQ = sigma
                * Math.sqrt(Math.max(
                        0, dq * dq * s.cofactor(5, 5) + dp * dp * s.cofactor(4, 4) + 2 * dp * dq * s.cofactor(4, 5)));
        double sigmaPole = sigma * Math.sqrt(Math.max(0, s.cofactor(4, 4))) / size;
        double offRe = (s.value(0) * p + s.value(1) * q) / size,
                offIm = (s.value(1) * p - s.value(0) * q) / size; // a1/a3
        double[] on = at(s, pole);
        double d = Math.hypot(on[0] - offRe, on[1] - offIm);
        if (!(d > 0.01 && d < 1.99) || loaded < 3 * sigmaQ) return Optional.empty();
        double coupling = d / (2 - d);
        return Optional.of(new ReflectionCircle(
                Estimate.normal(f0 * (1 + pole / 2), f0 * sigmaPole / 2),
                Estimate.normal(loaded, sigmaQ),
                coupling,
                Estimate.normal(loaded * (1 + coupling), sigmaQ * (1 + coupling))));
    }

    private static double[] at(NormalEquations.Solution s, double t) {
        double nr = s.value(0) * t + s.value(2),
                ni = s.value(1) * t + s.value(3),
                dr = s.value(4) * t + 1,
                di = s.value(5) * t;
        double size = dr * dr + di * di;
        return new double[] {(nr * dr + ni * di) / size, (ni * dr - nr * di) / size};
    }
}
