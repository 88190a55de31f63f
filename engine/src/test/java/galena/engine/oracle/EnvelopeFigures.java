package galena.engine.oracle;

/**
 * Figures of a complex envelope over one slow period on equally spaced points, its Fourier polynomial between them.
 *
 * @param positive highest magnitude over the unmodulated carrier, less 1
 * @param negative 1 less the lowest over it
 * @param distortion of the magnitude, harmonics 2 to 10 over the first
 * @param swing peak deviation of the frequency from its mean, Hz
 */
record EnvelopeFigures(double positive, double negative, double distortion, double swing) {
    private static final int PLACES = 2048;
    private static final int HARMONICS = 10;

    /**
     * @param z real and imaginary parts at equally spaced points, an odd number
     * @param carrier unmodulated amplitude
     * @param slow frequency, Hz
     */
    static EnvelopeFigures of(double[][] z, double carrier, double slow) {
        double[] magnitude = new double[PLACES], turned = new double[PLACES];
        for (int p = 0; p < PLACES; p++) {
            double[] here = at(z, p / (double) PLACES), next = at(z, (p + 1e-4) / PLACES);
            magnitude[p] = Math.hypot(here[0], here[1]);
            double turn = Math.atan2(here[0] * next[1] - here[1] * next[0], here[0] * next[0] + here[1] * next[1]);
            turned[p] = turn / (2 * Math.PI) * slow * PLACES / 1e-4;
        }
        double low = Double.POSITIVE_INFINITY, high = 0, mean = 0, swing = 0;
        for (int p = 0; p < PLACES; p++) {
            low = Math.min(low, magnitude[p]);
            high = Math.max(high, magnitude[p]);
            mean += turned[p] / PLACES;
        }
        for (double f : turned) swing = Math.max(swing, Math.abs(f - mean));
        double sum = 0, first = harmonic(magnitude, 1);
        for (int k = 2; k <= HARMONICS; k++) sum += Math.pow(harmonic(magnitude, k), 2);
        return new EnvelopeFigures(high / carrier - 1, 1 - low / carrier, Math.sqrt(sum) / first, swing);
    }

    private static double harmonic(double[] v, int k) {
        double re = 0, im = 0;
        for (int p = 0; p < v.length; p++) {
            double angle = 2 * Math.PI * k * p / v.length;
            re += 2 * v[p] * Math.cos(angle) / v.length;
            im += 2 * v[p] * Math.sin(angle) / v.length;
        }
        return Math.hypot(re, im);
    }

    private static double[] at(double[][] z, double share) {
        int n = z[0].length;
        double re = 0, im = 0;
        for (int j = 0; j < n; j++) {
            double angle = 2 * Math.PI * (share - j / (double) n), half = Math.sin(angle / 2);
            double weight = Math.abs(half) < 1e-14 ? 1 : Math.sin(n * angle / 2) / (n * half);
            re += weight * z[0][j];
            im += weight * z[1][j];
        }
        return new double[] {re, im};
    }
}
