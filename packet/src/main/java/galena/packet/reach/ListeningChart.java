package galena.packet.reach;

import galena.build.reach.Hearing;
import galena.build.reach.Reach;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.util.ArrayList;
import java.util.List;

/** Audio signal-to-noise with distance, one line for each class of set; what a set plays too weakly from is not drawn. */
public final class ListeningChart {
    private ListeningChart() {}

    /** @param reach in which sets hear something */
    public static Chart of(Reach reach) {
        List<Series> series = new ArrayList<>();
        for (Hearing hearing : reach.hearing()) {
            List<Point> points = hearing.curve().stream()
                    .filter(heard -> !heard.silent())
                    .map(heard ->
                            Point.at(heard.distance(), heard.signalToNoise().value()))
                    .toList();
            if (!points.isEmpty()) series.add(Series.of(hearing.kind(), points));
        }
        List<Window> windows = new ArrayList<>();
        windows.add(new Window(Along.Y, Hearing.PLEASANT, Hearing.PLEASANT, "pleasant"));
        reach.wanted().ifPresent(d -> windows.add(new Window(Along.X, d, d, "wanted")));
        return new Chart(
                "What sets make of " + reach.name(),
                Axis.logarithmic("distance", "m", 1),
                Axis.linear("audio signal-to-noise", "dB", 1),
                series,
                windows,
                List.of());
    }

    /** Whether any set plays at any distance drawn. */
    public static boolean hasLines(Reach reach) {
        return reach.hearing().stream().flatMap(h -> h.curve().stream()).anyMatch(heard -> !heard.silent());
    }
}
