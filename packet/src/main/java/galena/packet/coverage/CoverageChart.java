package galena.packet.coverage;

import galena.build.predict.Coverage;
import galena.build.quantity.Quantity;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.util.List;
import java.util.Optional;

/** The carrier against an adjustment's position, with the wanted carrier ruled across. */
public final class CoverageChart {
    private CoverageChart() {}

    /**
     * @param coverage with at least one point
     * @param wanted the intent's carrier, if it names one
     */
    public static Chart of(Coverage coverage, Optional<Quantity> wanted) {
        List<Point> points = coverage.points().stream()
                .map(p -> Point.at(p.position(), p.frequency()))
                .toList();
        List<Window> windows = wanted.map(w -> List.of(new Window(Along.Y, w.value(), w.value(), "wanted " + w.text())))
                .orElse(List.of());
        return new Chart(
                "Carrier against " + coverage.part(),
                Axis.linear(coverage.part(), "% of travel", 0.01),
                Axis.linear("carrier", "kHz", 1e3),
                List.of(Series.of("carrier", points)),
                windows,
                List.of());
    }
}
