package galena.signal.fit;

import galena.signal.Estimate;

/**
 * True amplitude of a line from its observed amplitude, when noise of standard deviation σ sits on each of the two
 * quadratures. The observed amplitude follows the law of S. O. Rice (Bell Syst. Tech. J. 24 (1945), art. 3.10): noise
 * alone reads as an amplitude. The interval inverts that law, so that it holds at any ratio of line to noise.
 */
public final class RiceInterval {
    /** Noise alone stays below this many σ in 95 % of cases: √(−2 ln 0.05). */
    public static final double NOISE_95 = Math.sqrt(-2 * Math.log(0.05));

    /** Above this many σ the law is normal to better than the intervals are stated. */
    private static final double NORMAL_FROM = 8;

    private RiceInterval() {}

    /**
     * @param observed amplitude as fitted, not negative
     * @param sigma standard deviation of each quadrature, same unit
     * @return the true amplitude; its lower end is 0 when noise alone explains what was seen
     */
    public static Estimate of(double observed, double sigma) {
        if (sigma <= 0) return new Estimate(observed, observed, observed);
        double r = observed / sigma;
        double value = Math.sqrt(Math.max(0, r * r - 1));
        if (r > NORMAL_FROM) return Estimate.normal(value * sigma, sigma);
        double low = amplitudeAt(r, 0.975), high = amplitudeAt(r, 0.025);
        double middle = Math.min(Math.max(value, low), high);
        return new Estimate(middle * sigma, low * sigma, high * sigma);
    }

    /** The true amplitude (in σ) for which an observation of at most r has the given probability; 0 if none has. */
    private static double amplitudeAt(double r, double probability) {
        if (probabilityBelow(r, 0) < probability) return 0;
        double low = 0, high = r + 6;
        for (int k = 0; k < 60; k++) {
            double middle = (low + high) / 2;
            if (probabilityBelow(r, middle) > probability) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }

    /** P(R ≤ r) for true amplitude a, both in σ: a Poisson mixture of chi-square laws with even degrees of freedom. */
    static double probabilityBelow(double r, double a) {
        double x = r * r / 2, half = a * a / 2;
        double poisson = Math.exp(-half);
        double term = Math.exp(-x);
        double upper = term;
        double sum = 0;
        int last = (int) (half + 12 * Math.sqrt(half + 1) + 20);
        for (int j = 0; j <= last; j++) {
            sum += poisson * (1 - upper);
            poisson *= half / (j + 1);
            term *= x / (j + 1);
            upper += term;
        }
        return Math.min(1, Math.max(0, sum));
    }
}
