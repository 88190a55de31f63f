package galena.packet.picture;

import galena.build.picture.Strip;
import galena.build.picture.TimePictures;
import galena.build.picture.Wave;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The charts of a test point, by file name without ending. */
public final class TimeCharts {
    private static final Axis VOLTS = Axis.linear("voltage", "V", 1);

    private TimeCharts() {}

    public static Map<String, Chart> of(TimePictures pictures) {
        Map<String, Chart> charts = new LinkedHashMap<>();
        String at = pictures.point().name();
        pictures.startup().ifPresent(s -> charts.put("picture-" + at + "-startup", band("Start at " + at, s, true)));
        charts.put("picture-" + at + "-carrier", waves("Carrier at " + at, List.of(pictures.carrier())));
        pictures.modulated()
                .ifPresent(s -> charts.put("picture-" + at + "-modulated", band("Modulated at " + at, s, false)));
        if (!pictures.cycles().isEmpty())
            charts.put("picture-" + at + "-cycles", waves("Crest and trough at " + at, pictures.cycles()));
        return charts;
    }

    /** Every column is a stroke from its least to its greatest voltage, so that the band is filled as on a screen. */
    private static Chart band(String title, Strip strip, boolean micro) {
        List<Point> up = new ArrayList<>();
        for (int k = 0; k < strip.time().length; k++) {
            double first = k % 2 == 0 ? strip.low()[k] : strip.high()[k];
            double second = k % 2 == 0 ? strip.high()[k] : strip.low()[k];
            up.add(Point.at(strip.time()[k], first));
            up.add(Point.at(strip.time()[k], second));
        }
        return new Chart(title, time(micro), VOLTS, List.of(Series.outline("voltage", up)), List.of(), List.of());
    }

    private static Chart waves(String title, List<Wave> waves) {
        List<Series> series = new ArrayList<>();
        for (Wave wave : waves) {
            List<Point> points = new ArrayList<>();
            for (int k = 0; k < wave.time().length; k++) points.add(Point.at(wave.time()[k], wave.volts()[k]));
            series.add(Series.outline(wave.name(), points));
        }
        return new Chart(title, time(true), VOLTS, series, List.of(), List.of());
    }

    private static Axis time(boolean micro) {
        return micro ? Axis.linear("time", "µs", 1e-6) : Axis.linear("time", "ms", 1e-3);
    }
}
