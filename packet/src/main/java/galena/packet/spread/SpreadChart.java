package galena.packet.spread;

import galena.build.folder.Intent;
import galena.build.spread.Drawn;
import galena.build.spread.SpreadReport;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.util.ArrayList;
import java.util.List;

/** How many drawn copies have which value of one quantity, with what the intent asks of it. */
public final class SpreadChart {
    private static final int MOST_BARS = 30;
    private static final int FEWEST_BARS = 6;

    private SpreadChart() {}

    /** Whether the copies' values differ at all. */
    public static boolean canShow(SpreadReport report, Drawn.Quantity quantity) {
        double[] sorted = report.histograms().getOrDefault(quantity, new double[0]);
        return sorted.length > 1 && sorted[0] < sorted[sorted.length - 1];
    }

    /** @param quantity that {@link #canShow} */
    public static Chart of(SpreadReport report, Drawn.Quantity quantity, Intent intent) {
        double[] sorted = report.histograms().getOrDefault(quantity, new double[0]);
        // as many bars as the root of the count: each then holds enough copies to mean something
        int bars = (int) Math.max(FEWEST_BARS, Math.min(MOST_BARS, Math.round(Math.sqrt(sorted.length))));
        double low = sorted[0], width = (sorted[sorted.length - 1] - low) / bars;
        int[] counts = new int[bars];
        for (double value : sorted) counts[(int) Math.min(bars - 1, (value - low) / width)]++;
        List<Point> outline = new ArrayList<>();
        outline.add(Point.at(low, 0));
        for (int k = 0; k < bars; k++) {
            outline.add(Point.at(low + k * width, counts[k]));
            outline.add(Point.at(low + (k + 1) * width, counts[k]));
        }
        outline.add(Point.at(low + bars * width, 0));
        return new Chart(
                "Spread of the " + quantity,
                axis(quantity, sorted),
                Axis.linear("copies", "", 1),
                List.of(Series.outline("copies", outline)),
                windows(quantity, intent, report),
                List.of());
    }

    private static Axis axis(Drawn.Quantity quantity, double[] sorted) {
        double size = Math.max(Math.abs(sorted[0]), Math.abs(sorted[sorted.length - 1]));
        String name = quantity.toString();
        return switch (quantity.unit()) {
            case HERTZ -> Axis.linear(name, "kHz", 1e3);
            case FRACTION -> Axis.linear(name, "%", 0.01);
            case DECIBEL -> Axis.linear(name, "dB", 1);
            default -> {
                boolean milli = size < 1;
                yield Axis.linear(name, (milli ? "m" : "") + quantity.unit().symbol(), milli ? 1e-3 : 1);
            }
        };
    }

    private static List<Window> windows(Drawn.Quantity quantity, Intent intent, SpreadReport report) {
        List<Window> windows = new ArrayList<>();
        switch (quantity) {
            case MARGIN -> windows.add(line(0, "starts above"));
            case AS_SET -> intent.carrier().ifPresent(c -> windows.add(line(c.value(), "wanted " + c.text())));
            case TRIM -> windows.add(new Window(Along.X, 0, 1, "travel"));
            case HARMONIC -> windows.add(line(report.limits().harmonic(), "limit"));
            case DISTORTION -> windows.add(line(report.limits().distortion(), "clean below"));
            case DEPTH -> intent.modulation().ifPresent(d -> windows.add(line(d.value(), "wanted " + d.text())));
            case AUDIO ->
                intent.programme()
                        .ifPresent(p -> windows.add(
                                line(p.level().value(), "programme " + p.level().text())));
            default -> {
                // nothing is asked of it
            }
        }
        return windows;
    }

    private static Window line(double at, String name) {
        return new Window(Along.X, at, at, name);
    }

    /** The file name of a quantity's drawing, without ending. */
    public static String fileName(Drawn.Quantity quantity) {
        return "spread-" + quantity.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
}
