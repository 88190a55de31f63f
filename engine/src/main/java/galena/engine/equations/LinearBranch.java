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

    /** conductance · v² + resistance · i², the sources silent. */
    double quadratic(double[] x) {
        double v = x[from] - x[to], i = x[current];
        return conductance * v * v + resistance * i * i;
    }
}
