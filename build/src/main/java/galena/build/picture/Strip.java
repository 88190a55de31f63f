package galena.build.picture;

/**
 * The band that a carrier fills on a screen too slow to show its cycles.
 *
 * @param time of each column, s
 * @param low least voltage in the column, V
 * @param high greatest
 */
public record Strip(double[] time, double[] low, double[] high) {
    public Strip {
        if (time.length == 0 || low.length != time.length || high.length != time.length)
            throw new IllegalArgumentException("a strip has a low and a high for each of its columns");
    }

    /** Greatest less least voltage of a column, V. */
    public double height(int column) {
        return high[column] - low[column];
    }
}
