package galena.signal.drift;

import galena.signal.Estimate;
import galena.signal.fit.StudentT;

/** Scatter of what a fit leaves over, and how many independent readings it is worth. */
final class Residuals {
    private final double variance;
    private final double freedom;
    private final double inflation;

    /**
     * @param left readings less the fit, in order of time
     * @param unknowns of the fit
     */
    Residuals(double[] left, int unknowns) {
        int n = left.length;
        double sum = 0, lagged = 0;
        for (int k = 0; k < n; k++) {
            sum += left[k] * left[k];
            if (k > 0) lagged += left[k] * left[k - 1];
        }
        double correlation = sum > 0 ? lagged / sum : 0;
        double noise = 2 / Math.sqrt(n); // a correlation that chance alone gives is not one
        double rho = correlation > noise ? Math.min(0.98, correlation) : 0;
        inflation = (1 + rho) / (1 - rho);
        freedom = Math.max(1, n / inflation - unknowns);
        variance = sum / Math.max(1, n - unknowns);
    }

    /** Standard deviation of an unknown with this cofactor, stretched so that 1.96 of it is a 95 % interval. */
    double sigma(double cofactor) {
        return Math.sqrt(variance * inflation * Math.max(0, cofactor)) * StudentT.at95(freedom) / Estimate.NORMAL_95;
    }

    /** Root mean square of what is left over. */
    double rms() {
        return Math.sqrt(variance);
    }
}
