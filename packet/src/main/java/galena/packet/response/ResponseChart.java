package galena.packet.response;

import galena.build.predict.Response;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import java.util.List;

/** Gain against frequency. */
public final class ResponseChart {
    /** What lies this far below the peak is drawn at the edge: no builder reads it. */
    private static final double DEPTH = 80;

    private ResponseChart() {}

    public static Chart of(Response response) {
        double floor = response.peak().decibels() - DEPTH;
        List<Point> points = response.points().stream()
                .map(p -> Point.at(p.frequency(), Math.max(floor, p.decibels())))
                .toList();
        return new Chart(
                response.net() + " from " + response.source(),
                Axis.logarithmic("frequency", "kHz", 1e3),
                Axis.linear("gain", "dB", 1),
                List.of(Series.of("gain", points)),
                List.of(),
                List.of());
    }
}
