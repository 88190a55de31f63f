package galena.bench.capture;

import java.util.Optional;

/**
 * What a column of stamps looks like.
 *
 * @param step mean step (unit of the column): from ends, never from the first difference
 * @param paired whether every stamp stands twice
 * @param rounded whether neighbours are equal here and there, for want of digits
 * @param steady whether all steps are alike to a few per cent, apart from rounding
 */
record TimeStamps(double step, boolean paired, boolean rounded, boolean steady) {
    private static final double ALIKE = 0.03;

    /** The look of a column, or empty when it does not rise like time. A restart of the count is let pass. */
    static Optional<TimeStamps> of(double[] all) {
        double[] t = firstSegment(all);
        int n = t.length;
        if (n < 3) return Optional.empty();
        int zeros = 0, pairs = 0;
        double most = 0;
        for (int k = 1; k < n; k++) {
            double d = t[k] - t[k - 1];
            if (d < 0) return Optional.empty();
            if (d == 0) zeros++;
            if (d == 0 && k % 2 == 1) pairs++;
            most = Math.max(most, d);
        }
        if (most == 0) return Optional.empty();
        boolean paired = n >= 6 && zeros == pairs && pairs >= n / 2 - 1 && pairs > 0;
        double step = paired ? (t[n - 1] - t[0]) / (n / 2 - (n % 2 == 0 ? 1 : 0)) : (t[n - 1] - t[0]) / (n - 1);
        double off = 0;
        for (int k = 0; k < n; k++) off = Math.max(off, Math.abs(t[k] - t[0] - (paired ? k / 2 : k) * step));
        boolean linear = off <= 1.01 * Math.max(most, step);
        boolean steady = paired || most - step < ALIKE * step;
        return linear ? Optional.of(new TimeStamps(step, paired, zeros > 0 && !paired, steady)) : Optional.empty();
    }

    /** Up to the first place where the count falls back by more than half of what it had risen. */
    private static double[] firstSegment(double[] t) {
        for (int k = 2; k < t.length; k++) {
            if (t[k] < t[k - 1] && t[k - 1] - t[k] > 0.5 * (t[k - 1] - t[0])) return java.util.Arrays.copyOf(t, k);
        }
        return t;
    }
}
