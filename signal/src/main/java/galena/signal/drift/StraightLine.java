package galena.signal.drift;

import galena.signal.Estimate;
import galena.signal.fit.NormalEquations;
import java.util.Optional;

/**
 * y = a + b (x − mean x): pushing in Hz/V, pulling in Hz/pF, drift in Hz/s.
 *
 * @param level y at the mean x
 * @param slope unit of y per unit of x
 * @param meanX mean of x
 * @param rms scatter about the line, unit of y
 */
public record StraightLine(Estimate level, Estimate slope, double meanX, double rms) {
    /**
     * @param x as many as y, in order of time, read
     * @param y read
     * @return empty with fewer than three readings, or when x does not move
     */
    public static Optional<StraightLine> through(double[] x, double[] y) {
        if (x.length != y.length) throw new IllegalArgumentException("x and y differ in length");
        if (x.length < 3) return Optional.empty();
        double mean = 0;
        for (double v : x) mean += v / x.length;
        double most = 0, meanX = mean;
        for (double v : x) most = Math.max(most, Math.abs(v - meanX));
        if (most == 0) return Optional.empty();
        NormalEquations equations = new NormalEquations(2);
        for (int k = 0; k < x.length; k++) equations.add(new double[] {1, x[k] - meanX}, y[k], 1);
        return equations.solve().map(s -> {
            double[] left = new double[x.length];
            for (int k = 0; k < left.length; k++) left[k] = y[k] - s.value(0) - s.value(1) * (x[k] - meanX);
            Residuals residuals = new Residuals(left, 2);
            return new StraightLine(
                    Estimate.normal(s.value(0), residuals.sigma(s.cofactor(0, 0))),
                    Estimate.normal(s.value(1), residuals.sigma(s.cofactor(1, 1))),
                    meanX,
                    residuals.rms());
        });
    }
}
