package galena.engine.envelope;

/**
 * Equally spaced points of one slow period and the trigonometric polynomial through values there. Their number is odd, so that the
 * polynomial is unique. A period's values shifted in time by any amount are exact for it.
 */
final class SlowGrid {
    final int points;
    final int highest;
    final double frequency;
    private final double[] cos;
    private final double[] sin;

    /**
     * @param points odd
     * @param frequency of the slow period, Hz
     */
    SlowGrid(int points, double frequency) {
        if (points < 3 || points % 2 == 0)
            throw new IllegalArgumentException("an odd number of slow points, not " + points);
        this.points = points;
        this.frequency = frequency;
        highest = points / 2;
        cos = new double[points];
        sin = new double[points];
        for (int j = 0; j < points; j++) {
            cos[j] = Math.cos(2 * Math.PI * j / points);
            sin[j] = Math.sin(2 * Math.PI * j / points);
        }
    }

    double time(int point) {
        return point / (points * frequency);
    }

    /** Writes the weights with which the points' values enter that at a time (s), and those of its rate (1/s). */
    void weights(double time, double[] value, double[] rate) {
        double angular = 2 * Math.PI * frequency;
        for (int j = 0; j < points; j++) {
            double angle = angular * (time - time(j));
            double c = Math.cos(angle), s = Math.sin(angle), x = 1, y = 0, sum = 0.5, slope = 0;
            for (int k = 1; k <= highest; k++) {
                double turned = x * c - y * s;
                y = x * s + y * c;
                x = turned;
                sum += x;
                slope -= k * y;
            }
            value[j] = 2 * sum / points;
            rate[j] = 2 * slope * angular / points;
        }
    }

    /** Σ v e^(−2πi k j / points) / points for k = 0 … highest, as {re, im}. */
    double[][] harmonics(double[] v) {
        double[] re = new double[highest + 1], im = new double[highest + 1];
        for (int k = 0; k <= highest; k++) {
            for (int j = 0; j < points; j++) {
                int turn = k * j % points;
                re[k] += v[j] * cos[turn] / points;
                im[k] -= v[j] * sin[turn] / points;
            }
        }
        return new double[][] {re, im};
    }

    /** The real values of harmonics as {@link #harmonics} gives them. */
    double[] values(double[][] harmonics) {
        double[] v = new double[points];
        for (int j = 0; j < points; j++) {
            double sum = 0;
            for (int k = 1; k <= highest; k++) {
                int turn = k * j % points;
                sum += harmonics[0][k] * cos[turn] - harmonics[1][k] * sin[turn];
            }
            v[j] = harmonics[0][0] + 2 * sum;
        }
        return v;
    }

    /** The polynomial of harmonics at a share of the slow period. */
    static double value(double[][] harmonics, double share) {
        double sum = harmonics[0][0];
        for (int k = 1; k < harmonics[0].length; k++) {
            double angle = 2 * Math.PI * k * share;
            sum += 2 * (harmonics[0][k] * Math.cos(angle) - harmonics[1][k] * Math.sin(angle));
        }
        return sum;
    }
}
