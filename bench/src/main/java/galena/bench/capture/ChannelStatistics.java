package galena.bench.capture;

/**
 * Statistics of one channel over the whole file.
 *
 * @param count of values
 * @param lowest value
 * @param highest value
 * @param step smallest difference between distinct values, 0 if it looks continuous
 * @param bits log2 of the steps from lowest to highest, 0 if continuous
 * @param atRails share of values at the lowest or highest
 * @param longestAtRail most values in a row at the lowest or the highest
 */
public record ChannelStatistics(
        long count, double lowest, double highest, double step, double bits, double atRails, int longestAtRail) {

    /** Values in a row at a rail that a rounded crest of a clean wave can have too. */
    private static final int FLAT = 3;
    /** Share of values at the rails above which flat tops are not chance. */
    private static final double MANY = 0.002;

    /** Whether the tops look cut off. */
    public boolean clipped() {
        return highest > lowest && atRails > MANY && longestAtRail >= FLAT && crowdedBeyondCrest();
    }

    /** A finely quantised sine lingers at its crest; cut tops linger longer than its steps explain. */
    private boolean crowdedBeyondCrest() {
        if (bits <= 0) return true;
        double crest =
                2 * Math.acos(1 - 1 / Math.pow(2, bits)) / Math.PI; // share of a full-scale sine in its last step
        return atRails > 3 * crest;
    }
}
