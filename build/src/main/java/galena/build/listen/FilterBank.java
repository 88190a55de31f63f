package galena.build.listen;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * A response as a sum of one-pole filters whose corners are laid out beforehand, evenly by octaves; only their weights are fitted, by
 * least squares on the responses that the filters have as samples, so that the sampling itself costs no accuracy. Networks of
 * resistors and capacitors have real poles alone, and any of them is met by neighbours on the grid; nothing can become unstable.
 *
 * <p>The first two terms are the sample itself and the one before.
 */
final class FilterBank {
    /** Keeps weights of neighbouring corners from growing against each other. */
    private static final double RIDGE = 3e-7;

    private final double rate;
    private final double[] pole;

    /**
     * @param low lowest corner, Hz
     * @param high highest corner, Hz
     * @param perOctave corners
     * @param rate samples a second, Hz
     */
    FilterBank(double low, double high, double perOctave, double rate) {
        this.rate = rate;
        int count = 1 + (int) Math.round(perOctave * Math.log(high / low) / Math.log(2));
        pole = new double[count];
        for (int k = 0; k < count; k++)
            pole[k] = Math.exp(-2 * Math.PI * low * Math.pow(high / low, k / (count - 1.0)) / rate);
    }

    /** Terms of the sum. */
    int terms() {
        return pole.length + 2;
    }

    /** The share that each one-pole filter keeps from sample to sample. */
    double[] poles() {
        return pole.clone();
    }

    /** Response of a term at a frequency (Hz), {real, imaginary}. */
    private double[] term(int k, double frequency) {
        double angle = 2 * Math.PI * frequency / rate, c = Math.cos(angle), s = -Math.sin(angle);
        if (k == 0) return new double[] {1, 0};
        if (k == 1) return new double[] {c, s};
        double a = pole[k - 2], re = 1 - a * c, im = -a * s, square = re * re + im * im;
        return new double[] {(1 - a) * re / square, -(1 - a) * im / square};
    }

    /** Response of weighted terms, {real, imaginary}. */
    double[] response(double[] weights, double frequency) {
        double re = 0, im = 0;
        for (int k = 0; k < weights.length; k++) {
            double[] one = term(k, frequency);
            re += weights[k] * one[0];
            im += weights[k] * one[1];
        }
        return new double[] {re, im};
    }

    /**
     * The weights that meet a response best.
     *
     * @param frequencies Hz
     * @param wanted by frequency, {real, imaginary}
     * @param heed by frequency, how much it counts
     */
    double[] fit(double[] frequencies, double[][] wanted, double[] heed) {
        int n = frequencies.length, m = terms();
        double largest = 1e-30;
        for (double[] each : wanted) largest = Math.max(largest, Math.hypot(each[0], each[1]));
        DMatrixRMaj a = new DMatrixRMaj(2 * n + m, m), b = new DMatrixRMaj(2 * n + m, 1), x = new DMatrixRMaj(m, 1);
        for (int r = 0; r < n; r++) {
            for (int k = 0; k < m; k++) {
                double[] one = term(k, frequencies[r]);
                a.set(2 * r, k, heed[r] * one[0]);
                a.set(2 * r + 1, k, heed[r] * one[1]);
            }
            b.set(2 * r, 0, heed[r] * wanted[r][0] / largest);
            b.set(2 * r + 1, 0, heed[r] * wanted[r][1] / largest);
        }
        for (int k = 0; k < m; k++) a.set(2 * n + k, k, RIDGE);
        LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.leastSquares(2 * n + m, m);
        if (!solver.setA(a)) throw new IllegalStateException("weights could not be fitted");
        solver.solve(b, x);
        double[] weights = x.data.clone();
        for (int k = 0; k < m; k++) weights[k] *= largest;
        return weights;
    }

    /** Largest departure of a fit from what was wanted, as a share of the largest wanted, where it counts in full. */
    double error(double[] weights, double[] frequencies, double[][] wanted, double[] heed) {
        double most = 0, largest = 1e-30;
        for (int r = 0; r < frequencies.length; r++) {
            largest = Math.max(largest, Math.hypot(wanted[r][0], wanted[r][1]));
            if (heed[r] < 1) continue;
            double[] is = response(weights, frequencies[r]);
            most = Math.max(most, Math.hypot(is[0] - wanted[r][0], is[1] - wanted[r][1]));
        }
        return most / largest;
    }
}
