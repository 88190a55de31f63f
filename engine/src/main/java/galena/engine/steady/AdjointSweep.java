package galena.engine.steady;

import java.util.Arrays;

/**
 * The adjoint of a figure φ of a solved orbit, from the factors of the last {@link OrbitSystem#newtonStep}: weights Λ of the stages'
 * rows and η of the charges handed on, so that dφ/dp = Σ ηᵀ ∂q/∂p − Σ Λᵀ(explicit change) for any parameter p at the cost of a
 * product. Backwards through the period, as the forward sweeps go forwards.
 */
final class AdjointSweep {
    private static final int S = Radau.STAGES;

    private final OrbitSystem system;
    private final Intervals intervals;
    private final Orbit orbit;
    private final Closing.Free free;
    private final double[] rows;
    private final double[][] handed;

    /**
     * @param system linearised at the orbit
     * @param free as in its last step: the frequency or nothing
     * @param gradient ∂φ/∂x along the orbit, laid out like {@link Orbit#x}
     * @param byFrequency ∂φ/∂f; ignored when nothing is free
     */
    AdjointSweep(OrbitSystem system, Orbit orbit, Closing.Free free, double[] gradient, double byFrequency) {
        this.system = system;
        this.intervals = system.intervals();
        this.orbit = orbit;
        this.free = free;
        rows = new double[orbit.x.length];
        handed = new double[orbit.intervals()][intervals.charged.length];
        double[] eta = new double[intervals.charged.length];
        double extraSum = sweep(gradient, eta, 0);
        double[] end = system.closing().solveTransposed(eta, byFrequency - extraSum);
        sweep(gradient, end, free.frequency() ? system.closing().transposedPhase() : 0);
    }

    /** From η at the period's end; η at its start is left in {@code eta}. Returns Σ Λᵀ ∂R/∂f. */
    private double sweep(double[] gradient, double[] eta, double phase) {
        int n = intervals.n;
        double extraSum = 0;
        double[] one = intervals.one;
        for (int k = orbit.intervals() - 1; k >= 0; k--) {
            System.arraycopy(eta, 0, handed[k], 0, eta.length);
            for (int j = 0; j < S; j++) {
                int at = orbit.at(k, j);
                for (int u = 1; u <= n; u++) one[(u - 1) * S + j] = gradient[at + u];
            }
            if (phase != 0) system.closing().addPhaseWeights(orbit, k, system.site(), phase, one);
            double[] c = intervals.lastC[k];
            for (int e = 1; e < c.length; e++) {
                if (c[e] == 0) continue;
                int row = intervals.chargeIndex[intervals.entryRow[e]];
                one[(intervals.entryColumn[e] - 1) * S + S - 1] += c[e] * eta[row];
            }
            double[] lambda = intervals.finishTransposed(k);
            extraSum += store(k, lambda, eta);
        }
        return extraSum;
    }

    private double store(int k, double[] lambda, double[] eta) {
        double rate = orbit.frequency / orbit.width(k), extraSum = 0;
        Arrays.fill(eta, 0);
        for (int r = 1; r <= intervals.n; r++) {
            int charge = intervals.chargeIndex[r];
            for (int j = 0; j < S; j++) {
                int at = (r - 1) * S + j;
                rows[orbit.at(k, j) + r] = lambda[at];
                if (free.frequency()) extraSum += lambda[at] * intervals.byFrequency[k][at];
                if (charge >= 0) eta[charge] += rate * Radau.ROW_SUMS[j] * lambda[at];
            }
        }
        return extraSum;
    }

    /** dφ/dp from a parameter's explicit change along the orbit. */
    double by(Change change) {
        double sum = 0;
        for (int k = 0; k < orbit.intervals(); k++) {
            double rate = orbit.frequency / orbit.width(k);
            for (int r = 1; r <= intervals.n; r++) {
                for (int i = 0; i < S; i++) {
                    double lambda = rows[orbit.at(k, i) + r];
                    if (lambda != 0) sum -= lambda * change.put(orbit, k, r, i, rate, intervals.chargeIndex[r] >= 0);
                }
            }
            int last = orbit.at(k, S - 1);
            for (int m = 0; m < handed[k].length; m++)
                sum += handed[k][m] * change.charge()[last + intervals.charged[m]];
        }
        return sum;
    }
}
