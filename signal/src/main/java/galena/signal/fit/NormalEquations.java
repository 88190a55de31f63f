package galena.signal.fit;

import java.util.Arrays;
import java.util.Optional;

/** Weighted linear least squares of few unknowns, gathered row by row: (AᵀWA) x = AᵀWy, solved by Cholesky. */
public final class NormalEquations {
    private final int unknowns;
    private final double[] gram;
    private final double[] right;

    public NormalEquations(int unknowns) {
        this.unknowns = unknowns;
        this.gram = new double[unknowns * unknowns];
        this.right = new double[unknowns];
    }

    /** Adds one equation row·x = y with the given weight; {@code row} is read. */
    public void add(double[] row, double y, double weight) {
        for (int i = 0; i < unknowns; i++) {
            double wi = weight * row[i];
            right[i] += wi * y;
            int at = i * unknowns;
            for (int j = 0; j <= i; j++) gram[at + j] += wi * row[j];
        }
    }

    /** The solution with (AᵀWA)⁻¹, or empty when the rows do not determine every unknown. */
    public Optional<Solution> solve() {
        double[] scale = new double[unknowns];
        for (int i = 0; i < unknowns; i++) {
            double d = gram[i * unknowns + i];
            if (!(d > 0) || Double.isInfinite(d)) return Optional.empty();
            scale[i] = 1 / Math.sqrt(d);
        }
        double[] lower = new double[unknowns * unknowns];
        if (!cholesky(scale, lower)) return Optional.empty();
        double[][] inverse = new double[unknowns][];
        double[] unit = new double[unknowns];
        for (int i = 0; i < unknowns; i++) {
            Arrays.fill(unit, 0);
            unit[i] = 1;
            double[] column = backSubstitute(lower, unit);
            for (int j = 0; j < unknowns; j++) column[j] *= scale[i] * scale[j];
            inverse[i] = column;
        }
        double[] x = new double[unknowns];
        for (int i = 0; i < unknowns; i++) for (int j = 0; j < unknowns; j++) x[i] += inverse[i][j] * right[j];
        return Optional.of(new Solution(x, inverse));
    }

    /** Unknowns whose scaled pivot falls below this are told apart by rounding only. */
    private static final double SMALLEST_PIVOT = 1e-11;

    private boolean cholesky(double[] scale, double[] lower) {
        for (int i = 0; i < unknowns; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = gram[i * unknowns + j] * scale[i] * scale[j];
                for (int k = 0; k < j; k++) sum -= lower[i * unknowns + k] * lower[j * unknowns + k];
                if (i == j) {
                    if (sum < SMALLEST_PIVOT) return false;
                    lower[i * unknowns + i] = Math.sqrt(sum);
                } else {
                    lower[i * unknowns + j] = sum / lower[j * unknowns + j];
                }
            }
        }
        return true;
    }

    private double[] backSubstitute(double[] lower, double[] b) {
        double[] x = b.clone();
        for (int i = 0; i < unknowns; i++) {
            for (int k = 0; k < i; k++) x[i] -= lower[i * unknowns + k] * x[k];
            x[i] /= lower[i * unknowns + i];
        }
        for (int i = unknowns - 1; i >= 0; i--) {
            for (int k = i + 1; k < unknowns; k++) x[i] -= lower[k * unknowns + i] * x[k];
            x[i] /= lower[i * unknowns + i];
        }
        return x;
    }

    /** Unknowns and the inverse of AᵀWA, which times the noise variance is their covariance. */
    public static final class Solution {
        private final double[] x;
        private final double[][] inverse;

        Solution(double[] x, double[][] inverse) {
            this.x = x;
            this.inverse = inverse;
        }

        /** Value of unknown i. */
        public double value(int i) {
            return x[i];
        }

        /** Element of (AᵀWA)⁻¹. */
        public double cofactor(int i, int j) {
            return inverse[i][j];
        }
    }
}
