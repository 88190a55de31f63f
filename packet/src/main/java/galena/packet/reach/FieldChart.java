package galena.packet.reach;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.build.reach.Level;
import galena.build.reach.Reach;
import galena.build.reach.Rules;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Mark;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The carrier's field with distance, in the quantity that the region's limit on the carrier has, its limits as marks where they are
 * read. E and H are not turned into one another: in the near field that would be wrong many times over.
 */
public final class FieldChart {
    private FieldChart() {}

    public static Chart of(Reach reach) {
        List<Rules.Line> limits = limits(reach.rules());
        boolean magnetic =
                limits.stream().anyMatch(line -> line.limit().orElseThrow().unit() == Unit.AMPERE_PER_METRE);
        return magnetic ? h(reach, limits) : e(reach, limits);
    }

    private static Chart h(Reach reach, List<Rules.Line> limits) {
        List<Series> series = new ArrayList<>();
        axis(reach, Level::hAxis, "H on the axis").ifPresent(series::add);
        series.add(series(reach, Level::hBroadside, "H " + across(reach)));
        return chart("H of " + reach.name(), Axis.logarithmic("H, rms", "µA/m", 1e-6), reach, series, limits);
    }

    private static Chart e(Reach reach, List<Rules.Line> limits) {
        List<Series> series = new ArrayList<>();
        series.add(series(reach, Level::loopEquivalent, "377 Ω × H"));
        series.add(series(reach, Level::eBroadside, "E " + across(reach)));
        return chart("Field of " + reach.name(), Axis.logarithmic("field, rms", "µV/m", 1e-6), reach, series, limits);
    }

    private static Chart chart(String title, Axis y, Reach reach, List<Series> series, List<Rules.Line> limits) {
        List<Mark> marks = new ArrayList<>();
        for (Rules.Line line : limits) {
            double at = line.distance().orElseThrow(),
                    value = line.limit().orElseThrow().value();
            if (marks.stream().noneMatch(m -> m.x() == at && m.y() == value))
                marks.add(new Mark(at, value, line.verified() ? "limit held" : "limit, unverified"));
        }
        List<Window> windows = reach.wanted()
                .map(d -> List.of(new Window(Along.X, d, d, "wanted")))
                .orElse(List.of());
        return new Chart(title, Axis.logarithmic("distance", "m", 1), y, series, windows, marks);
    }

    /** Limits on the carrier's field that are read at a distance. */
    private static List<Rules.Line> limits(Rules rules) {
        if (!(rules instanceof Rules.Judged judged)) return List.of();
        return judged.routes().stream()
                .flatMap(route -> route.lines().stream())
                .filter(line -> !line.outOfBand() && line.distance().isPresent() && isField(line))
                .toList();
    }

    private static boolean isField(Rules.Line line) {
        return line.limit()
                .filter(l -> l.unit() == Unit.VOLT_PER_METRE || l.unit() == Unit.AMPERE_PER_METRE)
                .isPresent();
    }

    private static String across(Reach reach) {
        return reach.curve().get(0).hAxis().isPresent() ? "broadside" : "along the ground";
    }

    private static Optional<Series> axis(Reach reach, Function<Level, Optional<Figure.Known>> of, String name) {
        List<Point> points = reach.curve().stream()
                .flatMap(level -> of.apply(level).map(f -> point(level, f)).stream())
                .toList();
        return points.isEmpty() ? Optional.empty() : Optional.of(Series.of(name, points));
    }

    private static Series series(Reach reach, Function<Level, Figure.Known> of, String name) {
        return Series.of(
                name,
                reach.curve().stream()
                        .map(level -> point(level, of.apply(level)))
                        .toList());
    }

    private static Point point(Level level, Figure.Known figure) {
        return new Point(level.distance(), figure.value(), figure.low(), figure.high());
    }
}
