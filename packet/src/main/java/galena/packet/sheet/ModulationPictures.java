package galena.packet.sheet;

import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Curve;
import galena.build.quantity.Unit;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.ChartSvg;
import galena.packet.page.Page.Drawing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Envelope and trapezoid at the programme's level, from the static curve, the carrier within them hatched. */
final class ModulationPictures {
    private static final int STEPS = 120;
    private static final int HATCHES = 90;
    private static final double TONE = 1000;
    private static final String MEMORY = " From the static curve: the tanks' memory is not in it.";

    private final Curve curve;

    ModulationPictures(Curve curve) {
        this.curve = curve;
    }

    private boolean reaches() {
        List<Prediction.Point> points = curve.curve();
        return points.get(0).audio() <= -curve.level()
                && points.get(points.size() - 1).audio() >= curve.level();
    }

    /** What a tone at the programme's level draws, two of its periods. */
    Optional<Drawing> envelope() {
        if (!reaches()) return Optional.empty();
        List<Point> edge = new ArrayList<>();
        for (int k = 0; k <= STEPS; k++) {
            double time = 2.0 * k / STEPS / TONE;
            edge.add(Point.at(time, amplitude(curve.level() * Math.sin(2 * Math.PI * TONE * time))));
        }
        Chart chart = new Chart(
                "Modulated by a 1 kHz tone of " + Wording.number(curve.level(), Unit.VOLT, 3) + " peak",
                Axis.linear("time", "ms", 1e-3),
                axis(curve),
                outline(edge),
                List.of(),
                List.of());
        return Optional.of(new Drawing(
                "envelope",
                "The modulated carrier on a screen that shows time. The hatching stands for the carrier, of which a screen shows"
                        + " a band." + MEMORY,
                ChartSvg.draw(chart)));
    }

    /** The same with the audio on the screen's other axis. */
    Optional<Drawing> trapezoid() {
        if (!reaches()) return Optional.empty();
        List<Point> edge = new ArrayList<>();
        for (int k = 0; k <= STEPS; k++) {
            double audio = curve.level() * (2.0 * k / STEPS - 1);
            edge.add(Point.at(audio, amplitude(audio)));
        }
        Chart chart = new Chart(
                "Trapezoid at the programme's level",
                Axis.linear("voltage of " + curve.source(), "mV", 1e-3),
                axis(curve),
                outline(edge),
                List.of(),
                List.of());
        return Optional.of(new Drawing(
                "trapezoid",
                "The same with the audio on the level axis. Straight slanting edges are clean modulation; a bent edge distorts, a"
                        + " point on the left is 100 %." + MEMORY,
                ChartSvg.draw(chart)));
    }

    /** Both edges and, between them, the carrier as a pencil would hint at it. */
    private static List<Series> outline(List<Point> edge) {
        List<Point> lower = edge.stream().map(p -> Point.at(p.x(), -p.y())).toList();
        List<List<Point>> hatches = new ArrayList<>();
        double from = edge.get(0).x(), to = edge.get(edge.size() - 1).x();
        for (int k = 0; k <= HATCHES; k++) {
            Point p = edge.get((int) Math.round((double) k / HATCHES * (edge.size() - 1)));
            double x = from + (to - from) * k / HATCHES;
            hatches.add(List.of(Point.at(x, -p.y()), Point.at(x, p.y())));
        }
        return List.of(new Series("envelope", List.of(edge, lower), false), new Series("carrier", hatches, false));
    }

    private double amplitude(double audio) {
        List<Prediction.Point> points = curve.curve();
        for (int k = 1; k < points.size(); k++) {
            Prediction.Point a = points.get(k - 1), b = points.get(k);
            if (audio > b.audio() && k < points.size() - 1) continue;
            double share = (audio - a.audio()) / (b.audio() - a.audio());
            return a.amplitude() + share * (b.amplitude() - a.amplitude());
        }
        throw new IllegalStateException("a curve has two points or more");
    }

    static Axis axis(Curve curve) {
        boolean current = curve.quantity().startsWith("current");
        return Axis.linear(curve.quantity(), current ? "mA" : "V", current ? 1e-3 : 1);
    }
}
