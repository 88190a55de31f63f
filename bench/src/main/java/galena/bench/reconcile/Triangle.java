package galena.bench.reconcile;

/** The lower triangle whose product with its transpose is the covariance of some rows of values. */
final class Triangle {
    private static final double SMALL = 1e-14;

    private Triangle() {}

    /**
     * By Cholesky's method.
     *
     * @param rows read
     * @param middle their mean; read
     */
    static double[][] of(double[][] rows, double[] middle) {
        int n = middle.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (double[] row : rows) sum += (row[i] - middle[i]) * (row[j] - middle[j]);
                sum /= rows.length - 1;
                for (int k = 0; k < j; k++) sum -= l[i][k] * l[j][k];
                if (i == j) l[i][i] = Math.sqrt(Math.max(SMALL, sum));
                else l[i][j] = sum / l[j][j];
            }
        }
        return l;
    }
}
