package galena.bench.capture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where the rows of a file end up: statistics of all of them, and the samples of the longest unbroken stretch that fits.
 * A break (a gap, a bad row, a new segment) starts a new stretch; the longer one stays.
 */
final class SampleStore {
    private final int channels;
    private final int keep;
    private final StatisticsGatherer[] gatherers;
    private double[][] current;
    private int filled;
    private double[][] best;
    private int bestLength;
    private long rows;
    private long bestStart;
    private long currentStart;
    private int breaks;

    SampleStore(int channels, int keepNumbers) {
        this.channels = channels;
        this.keep = Math.max(1024, keepNumbers / channels);
        this.gatherers = new StatisticsGatherer[channels];
        for (int c = 0; c < channels; c++) gatherers[c] = new StatisticsGatherer();
        this.current = new double[channels][1024];
        this.best = new double[channels][0];
    }

    /** Takes one row; {@code row} is read from {@code from}. */
    void add(double[] row, int from) {
        for (int c = 0; c < channels; c++) gatherers[c].add(row[from + c]);
        rows++;
        if (filled == keep) return;
        if (filled == current[0].length) grow();
        for (int c = 0; c < channels; c++) current[c][filled] = row[from + c];
        filled++;
    }

    /** The next row does not follow the last one at the usual interval. */
    void breakHere() {
        if (filled == 0) return;
        breaks++;
        if (filled > bestLength) {
            double[][] old = best;
            best = current;
            bestLength = filled;
            bestStart = currentStart;
            current = old[0].length >= 1024 ? old : new double[channels][1024];
        }
        filled = 0;
        currentStart = rows;
    }

    private void grow() {
        int length = Math.min(keep, 2 * current[0].length);
        for (int c = 0; c < channels; c++) current[c] = Arrays.copyOf(current[c], length);
    }

    int channelCount() {
        return channels;
    }

    long rows() {
        return rows;
    }

    int breaks() {
        return breaks;
    }

    /** Rows before the kept stretch. */
    long keptFrom() {
        return filled > bestLength ? currentStart : bestStart;
    }

    int keptLength() {
        return Math.max(filled, bestLength);
    }

    List<Channel> channels(List<String> names, List<String> units, double[] scale, double[] offset) {
        double[][] from = filled > bestLength ? current : best;
        int length = keptLength();
        List<Channel> out = new ArrayList<>();
        for (int c = 0; c < channels; c++) {
            double[] samples = Arrays.copyOf(from[c], length);
            if (scale[c] != 1 || offset[c] != 0) {
                for (int k = 0; k < length; k++) samples[k] = samples[k] * scale[c] + offset[c];
            }
            out.add(new Channel(
                    names.get(c), units.get(c), samples, scaled(gatherers[c].statistics(), scale[c], offset[c])));
        }
        return out;
    }

    private static ChannelStatistics scaled(ChannelStatistics s, double scale, double offset) {
        double a = s.lowest() * scale + offset, b = s.highest() * scale + offset;
        return new ChannelStatistics(
                s.count(),
                Math.min(a, b),
                Math.max(a, b),
                s.step() * Math.abs(scale),
                s.bits(),
                s.atRails(),
                s.longestAtRail());
    }
}
