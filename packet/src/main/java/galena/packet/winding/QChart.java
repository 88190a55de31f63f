package galena.packet.winding;

import galena.build.winding.Coil;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.util.List;

/** Unloaded Q against frequency, with what it may be. */
public final class QChart {
    private QChart() {}

    /** @param coil whose curve has points */
    public static Chart of(Coil coil) {
        List<Point> points = coil.curve().stream()
                .map(p -> new Point(p.frequency(), p.q().value(), p.q().low(), p.q().high()))
                .toList();
        return new Chart(
                "Q of " + coil.turns() + " turns, " + coil.shape(),
                Axis.linear("frequency", "kHz", 1e3),
                Axis.linear("unloaded Q", "", 1),
                List.of(Series.of("Q", points)),
                List.of(new Window(Along.X, coil.frequency(), coil.frequency(), "wanted")),
                List.of());
    }
}
