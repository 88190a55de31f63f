package galena.engine.timerun;

import galena.engine.steady.RadauTable;

/** One step of a run: all unknowns as cubics in the share of the step that has passed. Valid during the call that hands it over. */
public final class Passage {
    private static final int POINTS = 4;
    private static final double[][] MONOMIALS = monomials();

    private final double[][] points;
    private double start;
    private double width;

    /** @param points unknowns at the step's start and its three stages; read */
    Passage(double[][] points) {
        this.points = points;
    }

    Passage over(double from, double span) {
        start = from;
        width = span;
        return this;
    }

    /** Time of the step's start, s. */
    public double start() {
        return start;
    }

    /** Time of its end, s. */
    public double end() {
        return start + width;
    }

    /** The time at a share of the step, s. */
    public double time(double share) {
        return start + share * width;
    }

    /** Unknowns at the step's end, ground first; not to be changed. */
    public double[] x() {
        return points[POINTS - 1];
    }

    /** x_a − x_b at a share of the step, 0 to 1. */
    public double at(int a, int b, double share) {
        double sum = 0;
        for (int p = 0; p < POINTS; p++) sum += RadauTable.basis(p, share) * (points[p][a] - points[p][b]);
        return sum;
    }

    /** x_a − x_b = Σ c_k share^k: writes the four coefficients. */
    void cubic(int a, int b, double[] coefficients) {
        for (int k = 0; k < POINTS; k++) {
            coefficients[k] = 0;
            for (int p = 0; p < POINTS; p++) coefficients[k] += MONOMIALS[p][k] * (points[p][a] - points[p][b]);
        }
    }

    /** Each basis polynomial multiplied out. */
    private static double[][] monomials() {
        double[] at = {0, RadauTable.node(0), RadauTable.node(1), RadauTable.node(2)};
        double[][] all = new double[POINTS][POINTS];
        for (int p = 0; p < POINTS; p++) {
            double[] product = all[p];
            product[0] = 1;
            for (int j = 0; j < POINTS; j++) {
                if (j == p) continue;
                for (int k = POINTS - 1; k >= 0; k--) {
                    product[k] = ((k > 0 ? product[k - 1] : 0) - at[j] * product[k]) / (at[p] - at[j]);
                }
            }
        }
        return all;
    }
}
