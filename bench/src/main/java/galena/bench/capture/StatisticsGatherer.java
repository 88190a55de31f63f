package galena.bench.capture;

import java.util.Arrays;

/** Gathers {@link ChannelStatistics} in one pass and constant memory. */
final class StatisticsGatherer {
    private static final int DISTINCT = 1 << 12;

    private long count;
    private double lowest = Double.POSITIVE_INFINITY;
    private double highest = Double.NEGATIVE_INFINITY;
    private long atLowest;
    private long atHighest;
    private int run;
    private int longestLow;
    private int longestHigh;
    private double previous = Double.NaN;
    private final double[] seen = new double[DISTINCT];
    private int kept;

    void add(double x) {
        if (kept < DISTINCT) seen[kept++] = x;
        count++;
        run = x == previous ? run + 1 : 1;
        previous = x;
        if (x <= lowest) {
            if (x < lowest) {
                lowest = x;
                atLowest = 0;
                longestLow = 0;
            }
            atLowest++;
            if (run > longestLow) longestLow = run;
        }
        if (x >= highest) {
            if (x > highest) {
                highest = x;
                atHighest = 0;
                longestHigh = 0;
            }
            atHighest++;
            if (run > longestHigh) longestHigh = run;
        }
    }

    ChannelStatistics statistics() {
        if (count == 0) return new ChannelStatistics(0, 0, 0, 0, 0, 0, 0);
        double step = step();
        double bits = step > 0 ? Math.log((highest - lowest) / step + 1) / Math.log(2) : 0;
        double share = highest > lowest ? (atLowest + atHighest) / (double) count : 0;
        return new ChannelStatistics(
                count, lowest, highest, step, bits, share, highest > lowest ? Math.max(longestLow, longestHigh) : 0);
    }

    /**
     * The converter's step: the smallest difference between distinct values, if all differences are whole multiples of
     * it and few values are distinct. Otherwise the values count as continuous.
     */
    private double step() {
        double[] sorted = Arrays.copyOf(seen, kept);
        Arrays.sort(sorted);
        double range = sorted[kept - 1] - sorted[0], step = Double.POSITIVE_INFINITY;
        int distinct = 1;
        for (int k = 1; k < kept; k++) {
            double d = sorted[k] - sorted[k - 1];
            if (d > 1e-9 * range) {
                step = Math.min(step, d);
                distinct++;
            }
        }
        if (distinct < 2 || distinct > kept / 2 || range / step > 1 << 20) return 0;
        for (int k = 1; k < kept; k++) {
            double d = (sorted[k] - sorted[k - 1]) / step;
            if (Math.abs(d - Math.rint(d)) > 0.2) return 0;
        }
        return step;
    }
}
