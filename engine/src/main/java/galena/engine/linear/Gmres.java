package galena.engine.linear;

import java.util.Arrays;

/**
 * Generalised minimal residuals with preconditioning from the right and no restart (Y. Saad and M. H. Schultz, SIAM J. Sci. Stat.
 * Comput. 7 (1986) 856; orthogonalised twice over). For systems whose products are cheap and whose unknowns are a few thousand.
 */
public final class Gmres {
    /** A linear map. */
    @FunctionalInterface
    public interface Operator {
        /**
         * @param x read
         * @param y written
         */
        void apply(double[] x, double[] y);
    }

    private static final int PASSES = 2;

    private final int size;
    private final int most;
    private final double[][] basis;
    private final double[][] h;
    private int iterations;

    /**
     * @param size unknowns
     * @param most iterations
     */
    public Gmres(int size, int most) {
        this.size = size;
        this.most = most;
        basis = new double[most + 1][];
        h = new double[most][];
    }

    /** Of the last solve. */
    public int iterations() {
        return iterations;
    }

    /**
     * Solves A x = b with A M⁻¹ in A's place.
     *
     * @param b read
     * @param x written
     * @param tolerance on the residual, as a share of b's norm
     * @return false when the iterations did not suffice; x is then the best found
     */
    public boolean solve(Operator a, Operator inverse, double[] b, double[] x, double tolerance) {
        double norm = norm(b);
        Arrays.fill(x, 0);
        iterations = 0;
        if (norm == 0) return true;
        double[] cos = new double[most], sin = new double[most], g = new double[most + 1], z = new double[size];
        g[0] = norm;
        basis[0] = scaled(b, 1 / norm);
        int k = 0;
        while (k < most && Math.abs(g[k]) > tolerance * norm) {
            double[] w = new double[size];
            inverse.apply(basis[k], z);
            a.apply(z, w);
            h[k] = orthogonalise(w, k);
            rotate(h[k], cos, sin, g, k);
            double next = h[k][k + 1];
            h[k][k + 1] = 0;
            k++;
            if (next == 0) break;
            basis[k] = scaled(w, 1 / next);
        }
        iterations = k;
        combine(k, g, z, x, inverse);
        return Math.abs(g[k]) <= tolerance * norm;
    }

    private double[] orthogonalise(double[] w, int k) {
        double[] column = new double[k + 2];
        for (int pass = 0; pass < PASSES; pass++) {
            for (int j = 0; j <= k; j++) {
                double dot = dot(basis[j], w);
                column[j] += dot;
                for (int i = 0; i < size; i++) w[i] -= dot * basis[j][i];
            }
        }
        column[k + 1] = norm(w);
        return column;
    }

    /** Givens rotations keep the small system triangular; the length of w stays in column k + 1 for the caller. */
    private static void rotate(double[] column, double[] cos, double[] sin, double[] g, int k) {
        for (int j = 0; j < k; j++) {
            double upper = cos[j] * column[j] + sin[j] * column[j + 1];
            column[j + 1] = cos[j] * column[j + 1] - sin[j] * column[j];
            column[j] = upper;
        }
        double size = Math.hypot(column[k], column[k + 1]);
        cos[k] = size == 0 ? 1 : column[k] / size;
        sin[k] = size == 0 ? 0 : column[k + 1] / size;
        column[k] = size;
        g[k + 1] = -sin[k] * g[k];
        g[k] *= cos[k];
    }

    private void combine(int k, double[] g, double[] z, double[] x, Operator inverse) {
        double[] y = new double[k], sum = new double[size];
        for (int r = k - 1; r >= 0; r--) {
            double value = g[r];
            for (int c = r + 1; c < k; c++) value -= h[c][r] * y[c];
            y[r] = h[r][r] == 0 ? 0 : value / h[r][r];
        }
        for (int j = 0; j < k; j++) for (int i = 0; i < size; i++) sum[i] += y[j] * basis[j][i];
        inverse.apply(sum, z);
        System.arraycopy(z, 0, x, 0, size);
    }

    private static double[] scaled(double[] v, double factor) {
        double[] out = new double[v.length];
        for (int k = 0; k < v.length; k++) out[k] = factor * v[k];
        return out;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) sum += a[k] * b[k];
        return sum;
    }

    private static double norm(double[] v) {
        return Math.sqrt(dot(v, v));
    }
}
