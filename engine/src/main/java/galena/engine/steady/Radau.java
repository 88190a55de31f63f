package galena.engine.steady;

/**
 * The three-stage Radau IIA method, order 5: nodes of ∫, the inverse of its coefficient matrix, quadrature weights. Hairer and
 * Wanner, Solving ODEs II, table IV.5.6 (from memory; RadauTest derives every number from the nodes' polynomial).
 */
final class Radau {
    static final int STAGES = 3;
    private static final double ROOT6 = Math.sqrt(6);

    /** Nodes in (0, 1]; the last is 1. */
    static final double[] NODES = {(4 - ROOT6) / 10, (4 + ROOT6) / 10, 1};

    /** Quadrature weights; exact for degree 4. */
    static final double[] WEIGHTS = {(16 - ROOT6) / 36, (16 + ROOT6) / 36, 1.0 / 9};

    /** Row-major inverse of the Runge-Kutta matrix: what turns differences of q into derivatives at the nodes. */
    static final double[] INVERSE = inverse();

    /** Row sums of {@link #INVERSE}: the weight of the interval's start in each derivative. */
    static final double[] ROW_SUMS = rowSums();

    private Radau() {}

    /** The derivatives at the nodes of the Lagrange polynomials of stages 1 to 3 over the points 0, c₁, c₂, c₃. */
    private static double[] inverse() {
        double[] points = {0, NODES[0], NODES[1], NODES[2]};
        double[] inverse = new double[STAGES * STAGES];
        for (int i = 0; i < STAGES; i++) {
            for (int j = 0; j < STAGES; j++) inverse[STAGES * i + j] = Lagrange.derivative(points, j + 1, NODES[i]);
        }
        return inverse;
    }

    private static double[] rowSums() {
        double[] sums = new double[STAGES];
        for (int i = 0; i < STAGES; i++) {
            for (int j = 0; j < STAGES; j++) sums[i] += INVERSE[STAGES * i + j];
        }
        return sums;
    }
}
