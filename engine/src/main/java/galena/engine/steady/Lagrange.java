package galena.engine.steady;

/** Lagrange's basis polynomials. */
final class Lagrange {
    private Lagrange() {}

    /** The k-th basis polynomial of the points, at t. */
    static double value(double[] points, int k, double t) {
        double product = 1;
        for (int j = 0; j < points.length; j++) if (j != k) product *= (t - points[j]) / (points[k] - points[j]);
        return product;
    }

    /** Its derivative at t. */
    static double derivative(double[] points, int k, double t) {
        double sum = 0;
        for (int m = 0; m < points.length; m++) {
            if (m == k) continue;
            double product = 1 / (points[k] - points[m]);
            for (int j = 0; j < points.length; j++) {
                if (j != k && j != m) product *= (t - points[j]) / (points[k] - points[j]);
            }
            sum += product;
        }
        return sum;
    }
}
