package galena.packet.drift;

import galena.build.drift.DriftReport;
import galena.build.drift.DriftReport.Moment;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.util.ArrayList;
import java.util.List;

/** Carrier and depth against hours from switch-on, and carrier against temperature. */
public final class DriftChart {
    private static final double HOUR = 3600;

    private DriftChart() {}

    /** The carrier's departure against hours, within its channel. */
    public static Chart carrier(DriftReport report) {
        List<Point> points = report.run().stream()
                .map(m -> Point.at(m.seconds(), m.frequency() - report.carrier()))
                .toList();
        return new Chart(
                "Carrier from switch-on",
                Axis.linear("time from switch-on", "h", HOUR),
                Axis.linear("departure of the carrier", "Hz", 1),
                List.of(Series.of("carrier", points)),
                List.of(new Window(Along.Y, -report.channel(), report.channel(), "channel")),
                List.of());
    }

    /** Depth and distortion with the audio as it was left, against hours. */
    public static Chart depth(DriftReport report) {
        List<Series> series = new ArrayList<>();
        add(series, "depth", report, m -> m.depth().orElse(Double.NaN));
        add(series, "distortion", report, m -> m.distortion().orElse(Double.NaN));
        List<Window> windows = report.wanted()
                .map(w -> List.of(new Window(Along.Y, w, w, "wanted")))
                .orElse(List.of());
        return new Chart(
                "Modulation from switch-on",
                Axis.linear("time from switch-on", "h", HOUR),
                Axis.linear("share", "%", 0.01),
                series,
                windows,
                List.of());
    }

    private interface Read {
        double of(Moment moment);
    }

    private static void add(List<Series> to, String name, DriftReport report, Read read) {
        List<List<Point>> strokes = new ArrayList<>();
        strokes.add(new ArrayList<>());
        for (Moment m : report.run()) {
            double value = read.of(m);
            if (Double.isNaN(value)) strokes.add(new ArrayList<>());
            else strokes.get(strokes.size() - 1).add(Point.at(m.seconds(), value));
        }
        Series series = new Series(name, strokes);
        if (!series.strokes().isEmpty()) to.add(series);
    }

    /** Whether anything of the modulation can be shown. */
    public static boolean hasDepth(DriftReport report) {
        return report.run().stream()
                .anyMatch(m -> m.depth().isPresent() || m.distortion().isPresent());
    }

    /** The carrier's departure against temperature. */
    public static Chart temperature(DriftReport report) {
        List<Point> points = report.temperatures().stream()
                .map(m -> Point.at(m.celsius(), m.frequency() - report.carrier()))
                .toList();
        return new Chart(
                "Carrier against temperature",
                Axis.linear("temperature", "°C", 1),
                Axis.linear("departure of the carrier", "Hz", 1),
                List.of(Series.of("carrier", points)),
                List.of(new Window(Along.Y, -report.channel(), report.channel(), "channel")),
                List.of());
    }
}
