package galena.packet.chart;

import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Mark;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Draws a chart as SVG 1.1 text. It follows the reader's light or dark setting, prints on white, and stands alone: no script, no
 * font, no other file. Stateless; every call is complete in itself.
 */
public final class ChartSvg {
    private static final double WIDTH = 720;
    private static final double HEIGHT = 420;
    private static final double LEFT = 64;
    private static final double TOP = 70;
    private static final double BOTTOM = 52;
    /** Mean width of a letter at the label's size: enough to leave room for the longest name. */
    private static final double LETTER = 6.6;

    private static final double LINE = 15;
    private static final double MARKER = 3.4;
    private static final double BETWEEN_MARKERS = 74;

    private final Chart chart;
    private final Ruling x;
    private final Ruling y;
    private final double right;
    private final StringBuilder out = new StringBuilder();

    private ChartSvg(Chart chart) {
        this.chart = chart;
        x = Ruling.of(chart.x(), chart.allX(), 8);
        y = Ruling.of(chart.y(), chart.allY(), 6);
        int longest = chart.series().size() < 2
                ? 0
                : chart.series().stream().mapToInt(s -> s.name().length()).max().orElse(0);
        right = WIDTH - 20 - LETTER * longest;
    }

    /** The whole document. */
    public static String draw(Chart chart) {
        ChartSvg svg = new ChartSvg(chart);
        svg.open();
        svg.windows();
        svg.rule();
        for (int k = 0; k < chart.series().size(); k++)
            svg.series(chart.series().get(k), k);
        svg.names();
        chart.marks().forEach(svg::mark);
        svg.out.append("</svg>\n");
        return svg.out.toString();
    }

    private void open() {
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" class=\"galena\">",
                WIDTH, HEIGHT);
        add("<title>%s</title>", escaped(chart.title()));
        add(
                "<desc>%s against %s</desc>",
                escaped(chart.y().title()), escaped(chart.x().title()));
        out.append(ChartStyle.SHEET);
        add("<rect class=\"paper\" width=\"%.0f\" height=\"%.0f\"/>", WIDTH, HEIGHT);
        text("title", LEFT, 26, "start", chart.title());
        add("<path class=\"rule\" d=\"M%.1f 36.5H%.1f\"/>", LEFT, WIDTH - 20);
        text("axis", LEFT, 56, "start", chart.y().title());
        text("axis", right, HEIGHT - 12, "end", chart.x().title());
    }

    private double atX(double value) {
        return LEFT + (right - LEFT) * x.place(value);
    }

    private double atY(double value) {
        return TOP + (HEIGHT - BOTTOM - TOP) * (1 - y.place(value));
    }

    private void rule() {
        double foot = HEIGHT - BOTTOM;
        for (int k = 0; k < x.ticks().size(); k++) {
            double at = atX(x.ticks().get(k));
            add("<path class=\"grid\" d=\"M%.1f %.1fV%.1f\"/>", at, TOP, foot);
            text("number", at, foot + 17, "middle", x.labels().get(k));
        }
        for (int k = 0; k < y.ticks().size(); k++) {
            double at = atY(y.ticks().get(k));
            add("<path class=\"grid\" d=\"M%.1f %.1fH%.1f\"/>", LEFT, at, right);
            text("number", LEFT - 8, at + 4, "end", y.labels().get(k));
        }
        add("<path class=\"edge\" d=\"M%.1f %.1fV%.1fH%.1f\"/>", LEFT, TOP, foot, right);
    }

    private void windows() {
        for (Window window : chart.windows()) {
            boolean along = window.along() == Along.X;
            double left = along ? atX(window.low()) : LEFT, end = along ? atX(window.high()) : right;
            double top = along ? TOP : atY(window.high()), foot = along ? HEIGHT - BOTTOM : atY(window.low());
            add(
                    "<rect class=\"window\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
                    left, top, end - left, foot - top);
            String edges =
                    along ? "M%1$.1f %3$.1fV%4$.1fM%2$.1f %3$.1fV%4$.1f" : "M%1$.1f %3$.1fH%2$.1fM%1$.1f %4$.1fH%2$.1f";
            add("<path class=\"limit\" d=\"" + edges + "\"/>", left, end, top, foot);
            boolean late = along && left + 5 + LETTER * window.name().length() > WIDTH - 4;
            text(
                    "note",
                    late ? left - 5 : left + 5,
                    top + (foot - top < LINE ? -5 : 13),
                    late ? "end" : "start",
                    window.name());
        }
    }

    private void series(Series series, int index) {
        add("<g class=\"line line%d\">", index + 1);
        for (List<Point> stroke : series.strokes()) {
            if (stroke.stream().anyMatch(p -> p.high() > p.low())) interval(stroke);
            StringBuilder path = new StringBuilder();
            for (Point p : stroke)
                path.append(
                        String.format(Locale.ROOT, "%s%.1f %.1f", path.isEmpty() ? "M" : "L", atX(p.x()), atY(p.y())));
            add("<path class=\"ink\" d=\"%s\"/>", path);
            if (series.marked()) markers(stroke, index);
        }
        add("</g>");
    }

    private void interval(List<Point> stroke) {
        StringBuilder path = new StringBuilder();
        for (Point p : stroke)
            path.append(
                    String.format(Locale.ROOT, "%s%.1f %.1f", path.isEmpty() ? "M" : "L", atX(p.x()), atY(p.high())));
        for (int k = stroke.size() - 1; k >= 0; k--)
            path.append(String.format(
                    Locale.ROOT,
                    "L%.1f %.1f",
                    atX(stroke.get(k).x()),
                    atY(stroke.get(k).low())));
        add("<path class=\"interval\" d=\"%sZ\"/>", path);
    }

    /** A marker at the ends and about every finger's breadth between: dashes alone are hard to tell in a short stroke. */
    private void markers(List<Point> stroke, int index) {
        double last = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < stroke.size(); k++) {
            double px = atX(stroke.get(k).x());
            boolean end = k == stroke.size() - 1;
            if (!end
                    && (px - last < BETWEEN_MARKERS
                            || atX(stroke.get(stroke.size() - 1).x()) - px < BETWEEN_MARKERS / 2)) continue;
            last = px;
            add(
                    "<path class=\"marker\" d=\"%s\"/>",
                    shape(index, px, atY(stroke.get(k).y())));
        }
    }

    private static String shape(int index, double px, double py) {
        if (index > 0) return polygon(index, px, py, MARKER);
        return String.format(
                Locale.ROOT,
                "M%.1f %.1fa%3$.1f %3$.1f 0 1 0 %4$.1f 0a%3$.1f %3$.1f 0 1 0 -%4$.1f 0Z",
                px - MARKER,
                py,
                MARKER,
                2 * MARKER);
    }

    private static String polygon(int index, double px, double py, double r) {
        double[][] corners =
                switch (index) {
                    case 1 -> new double[][] {{-r, -r}, {r, -r}, {r, r}, {-r, r}};
                    case 2 -> new double[][] {{0, -1.3 * r}, {1.2 * r, r}, {-1.2 * r, r}};
                    default -> new double[][] {{0, -1.4 * r}, {1.4 * r, 0}, {0, 1.4 * r}, {-1.4 * r, 0}};
                };
        StringBuilder path = new StringBuilder();
        for (double[] c : corners)
            path.append(String.format(Locale.ROOT, "%s%.1f %.1f", path.isEmpty() ? "M" : "L", px + c[0], py + c[1]));
        return path.append('Z').toString();
    }

    /** A name at each line's end, moved apart where ends lie close. One line alone is named by the title. */
    private void names() {
        if (chart.series().size() < 2) return;
        record Name(int index, String text, double wanted) {}
        List<Name> names = new ArrayList<>();
        for (int k = 0; k < chart.series().size(); k++) {
            List<List<Point>> strokes = chart.series().get(k).strokes();
            if (strokes.isEmpty()) continue;
            List<Point> last = strokes.get(strokes.size() - 1);
            names.add(new Name(
                    k,
                    chart.series().get(k).name(),
                    atY(last.get(last.size() - 1).y()) + 4));
        }
        names.sort(Comparator.comparingDouble(Name::wanted));
        double[] at = new double[names.size()];
        for (int k = 0; k < at.length; k++) at[k] = Math.max(names.get(k).wanted(), k == 0 ? TOP : at[k - 1] + LINE);
        double most = HEIGHT - BOTTOM + 4;
        for (int k = at.length - 1; k >= 0 && at[k] > most; k--, most -= LINE) at[k] = most;
        for (int k = 0; k < at.length; k++)
            text(
                    "name line" + (names.get(k).index() + 1),
                    right + 10,
                    at[k],
                    "start",
                    names.get(k).text());
    }

    private void mark(Mark mark) {
        double px = atX(mark.x()), py = atY(mark.y());
        add("<path class=\"mark\" d=\"M%.1f %.1fl-4.5 -9h9Z\"/>", px, py - 3);
        boolean late = px + LETTER * mark.name().length() > right;
        text("note", late ? px - 7 : px + 7, Math.max(TOP + 12, py - 6), late ? "end" : "start", mark.name());
    }

    private void text(String kind, double px, double py, String anchor, String words) {
        add(
                "<text class=\"%s\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>",
                kind, px, py, anchor, escaped(words));
    }

    private void add(String form, Object... values) {
        out.append(String.format(Locale.ROOT, form, values)).append('\n');
    }

    static String escaped(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
