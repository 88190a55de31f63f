package galena.engine.steady;

/**
 * How the equations change with a parameter along an orbit.
 *
 * @param current ∂i/∂p, laid out like {@link Orbit#x} with rows in place of unknowns
 * @param charge ∂q/∂p, likewise
 */
record Change(double[] current, double[] charge) {
    private static final int S = Radau.STAGES;

    /**
     * What is put into row r at stage i: rate Σⱼ Aⁱⁿᵛᵢⱼ ∂qⱼ/∂p + ∂i/∂p. Where the row already holds charge, that at the interval's start is
     * handed on with the rest; where the change alone brings charge to the row, it is taken off here.
     *
     * @param charged whether the row holds charge without the change
     */
    double put(Orbit orbit, int k, int r, int i, double rate, boolean charged) {
        double start = charged ? 0 : charge[orbit.start(k) + r], slope = 0;
        for (int j = 0; j < S; j++) slope += Radau.INVERSE[S * i + j] * (charge[orbit.at(k, j) + r] - start);
        return rate * slope + current[orbit.at(k, i) + r];
    }

    /** Adds what is handed on by an interval beyond what its unknowns hand on, times a factor. */
    void handOn(Orbit orbit, int k, int[] charged, double factor, double[] dq) {
        int last = orbit.at(k, S - 1);
        for (int m = 0; m < dq.length; m++) dq[m] += charge[last + charged[m]] * factor;
    }
}
