package galena.engine.equations;

/**
 * What a linear part takes up: v (conductance · v + drive) between two nets, and i (resistance · i + emf) in a branch whose
 * current is an unknown.
 */
record LinearBranch(int from, int to, double conductance, double drive, int current, double resistance, double emf) {
    static LinearBranch conductance(int from, int to, double siemens) {
        return new LinearBranch(from, to, siemens, 0, 0, 0, 0);
    }

    static LinearBranch driven(int from, int to, double amperes) {
        return new LinearBranch(from, to, 0, amperes, 0, 0, 0);
    }

    static LinearBranch carrying(int current, double resistance, double emf) {
        return new LinearBranch(0, 0, 0, 0, current, resistance, emf);
    }

    /** Watts taken up at x. */
    double power(double[] x, int offset) {
        double v = x[offset + from] - x[offset + to], i = x[offset + current];
        return v * (conductance * v + drive) + i * (resistance * i + emf);
    }

    /** wᵀ G v of the branch alone, the sources silent. */
    double form(double[] w, double[] v) {
        return conductance * (w[from] - w[to]) * (v[from] - v[to]) + resistance * w[current] * v[current];
    }
}
