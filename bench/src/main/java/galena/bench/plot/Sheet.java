package galena.bench.plot;

import java.util.List;
import java.util.Locale;

/** A sheet of paper: axes drawn by hand with a ruler, curves in ink, words in the margin. */
final class Sheet {
    static final int WIDTH = 720;
    static final int HEIGHT = 360;
    static final double LEFT = 64;
    static final double RIGHT = 700;
    static final double TOP = 40;
    static final double BOTTOM = 312;

    static final String INK = "#1d2a3a";
    static final String SECOND_INK = "#9b3d1f";
    static final String PENCIL = "#8a8577";
    private static final String PAPER = "#fdfbf4";

    private final StringBuilder svg = new StringBuilder();

    Sheet(String title, String description) {
        line(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 %d %d\" font-family=\"Georgia, serif\" font-size=\"12\">",
                WIDTH, HEIGHT);
        line("<title>%s</title><desc>%s</desc>", escaped(title), escaped(description));
        line("<rect width=\"%d\" height=\"%d\" fill=\"%s\"/>", WIDTH, HEIGHT, PAPER);
        text(LEFT, 22, "start", INK, title);
    }

    void axes(Axis x, String xName, Axis y, String yName) {
        line("<path d=\"M%.1f %.1fV%.1fH%.1f\" fill=\"none\" stroke=\"%s\"/>", LEFT, TOP, BOTTOM, RIGHT, INK);
        for (double mark : x.marks()) {
            line("<path d=\"M%.1f %.1fv5\" stroke=\"%s\"/>", x.at(mark), BOTTOM, INK);
            text(x.at(mark), BOTTOM + 18, "middle", INK, Axis.label(mark));
        }
        for (double mark : y.marks()) {
            line("<path d=\"M%.1f %.1fh-5\" stroke=\"%s\"/>", LEFT, y.at(mark), INK);
            text(LEFT - 8, y.at(mark) + 4, "end", INK, Axis.label(mark));
        }
        text(RIGHT, BOTTOM + 36, "end", INK, xName);
        text(LEFT, TOP - 6, "middle", INK, yName);
    }

    void curve(Axis x, List<Double> xs, Axis y, List<Double> ys, String colour, double width) {
        StringBuilder path = new StringBuilder();
        for (int k = 0; k < Math.min(xs.size(), ys.size()); k++) {
            path.append(
                    String.format(Locale.ROOT, "%s%.1f %.1f", k == 0 ? "M" : "L", x.at(xs.get(k)), y.at(ys.get(k))));
        }
        line(
                "<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%.1f\" stroke-linejoin=\"round\"/>",
                path, colour, width);
    }

    /** Upright strokes from one list to the other. */
    void strokes(Axis x, List<Double> xs, Axis y, List<Double> low, List<Double> high, String colour) {
        StringBuilder path = new StringBuilder();
        for (int k = 0; k < xs.size(); k++) {
            path.append(String.format(
                    Locale.ROOT, "M%.1f %.1fV%.1f", x.at(xs.get(k)), y.at(low.get(k)), y.at(high.get(k))));
        }
        line("<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"0.7\"/>", path, colour);
    }

    void dots(Axis x, Axis y, List<Double> pairs, int sign, String colour) {
        for (int k = 0; k + 1 < pairs.size(); k += 2) {
            line(
                    "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"1.1\" fill=\"%s\"/>",
                    x.at(pairs.get(k)), y.at(sign * pairs.get(k + 1)), colour);
        }
    }

    /** A dashed level with its words in the margin. */
    void level(Axis y, double value, String words, String colour) {
        line(
                "<path d=\"M%.1f %.1fH%.1f\" stroke=\"%s\" stroke-dasharray=\"5 4\" fill=\"none\"/>",
                LEFT, y.at(value), RIGHT, colour);
        text(RIGHT, y.at(value) + 14, "end", colour, words);
    }

    void note(String words) {
        text(LEFT, BOTTOM + 36, "start", PENCIL, words);
    }

    private void text(double x, double y, String anchor, String colour, String words) {
        line(
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" fill=\"%s\">%s</text>",
                x, y, anchor, colour, escaped(words));
    }

    String finished() {
        return svg + "</svg>\n";
    }

    private void line(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replaceAll("\\p{Cntrl}", " ");
    }
}
