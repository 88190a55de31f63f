package galena.packet.chart;

import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Mark;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.util.ArrayList;
import java.util.List;

/** Charts that tests draw. Values are invented. */
final class Charts {
    private Charts() {}

    /** A tank of 180 µH with a trimmer of 5 to 60 pF across 112 pF, its interval 1 %. */
    static Chart coverage() {
        List<Point> points = new ArrayList<>();
        for (int k = 0; k <= 20; k++) {
            double trim = k / 20.0;
            double hertz = 1 / (2 * Math.PI * Math.sqrt(180e-6 * (112e-12 + 5e-12 + 55e-12 * trim)));
            points.add(new Point(trim, hertz, 0.99 * hertz, 1.01 * hertz));
        }
        return new Chart(
                "Carrier against trimmer Ct",
                Axis.linear("Ct", "% of travel", 0.01),
                Axis.linear("carrier", "kHz", 1e3),
                List.of(Series.of("carrier", points)),
                List.of(new Window(Along.Y, 994.5e3, 1003.5e3, "channel 999 kHz ± 4.5 kHz")),
                List.of(new Mark(0.4, points.get(8).y(), "set at 40 %")));
    }

    /** Gains of four single-tuned circuits against frequency, one of them with a part that can't be had. */
    static Chart responses() {
        List<Series> series = new ArrayList<>();
        double[] qs = {20, 40, 60, 80};
        for (double q : qs) {
            List<List<Point>> strokes = new ArrayList<>();
            strokes.add(new ArrayList<>());
            for (int k = 0; k <= 60; k++) {
                double f = 300e3 * Math.pow(10, k / 60.0);
                if (q == 80 && k > 40 && k < 46) {
                    if (k == 41) strokes.add(new ArrayList<>());
                    continue;
                }
                double y = q * (f / 1e6 - 1e6 / f);
                strokes.get(strokes.size() - 1).add(Point.at(f, -10 * Math.log10(1 + y * y)));
            }
            series.add(new Series("Q = " + (int) q, strokes));
        }
        return new Chart(
                "Response of one tuned circuit & its load",
                Axis.logarithmic("frequency", "kHz", 1e3),
                Axis.linear("gain", "dB", 1),
                series,
                List.of(new Window(Along.X, 990e3, 1010e3, "carrier ± 10 kHz")),
                List.of());
    }
}
