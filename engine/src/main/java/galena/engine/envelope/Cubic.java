package galena.engine.envelope;

import galena.engine.steady.RadauTable;

/** The cubic of an interval read at the nodes of Gauss's rule, which keeps the method's order in a Fourier coefficient. */
final class Cubic {
    static final int NODES = 5;
    static final double[] SHARES = {
        0.5 - 0.4530899229693320, 0.5 - 0.2692346550528416, 0.5, 0.5 + 0.2692346550528416, 0.5 + 0.4530899229693320
    };
    static final double[] WEIGHTS = {
        0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945
    };
    private static final double[][] BASIS = new double[NODES][Layout.S + 1];

    static {
        for (int g = 0; g < NODES; g++) {
            for (int p = 0; p <= Layout.S; p++) BASIS[g][p] = RadauTable.basis(p, SHARES[g]);
        }
    }

    private Cubic() {}

    /**
     * x_a − x_b at a node.
     *
     * @param first its value at the cycle's start
     */
    static double at(Layout layout, double[] x, double first, int a, int b, int interval, int node) {
        double[] basis = BASIS[node];
        double start = first;
        if (interval > 0) {
            int before = layout.at(interval - 1, Layout.S - 1);
            start = x[before + a] - x[before + b];
        }
        double sum = basis[0] * start;
        for (int j = 0; j < Layout.S; j++) {
            int at = layout.at(interval, j);
            sum += basis[j + 1] * (x[at + a] - x[at + b]);
        }
        return sum;
    }

    /** Phase of a node, 0 to 1. */
    static double phase(Layout layout, int interval, int node) {
        return layout.mesh[interval] + SHARES[node] * layout.width(interval);
    }

    static double weight(Layout layout, int interval, int node) {
        return WEIGHTS[node] * layout.width(interval);
    }
}
