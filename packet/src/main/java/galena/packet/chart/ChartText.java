package galena.packet.chart;

import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Mark;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Draws a chart for a terminal. Lines are braille dots, or one letter each where braille can't be shown or where there is more than
 * one line; windows are dashed rules, marks are letters explained below. No colour. Stateless.
 */
public final class ChartText {
    private static final String LINE_SIGNS = "*o+x";
    private static final int LEAST_COLUMNS = 20;
    private static final int LEAST_ROWS = 5;

    private final Chart chart;
    private final boolean braille;
    private final Ruling x;
    private final Ruling y;
    private final int gutter;
    private final Dots dots;
    private final int rows;
    private final List<String> key = new ArrayList<>();

    private ChartText(Chart chart, int columns, int rows, boolean braille) {
        this.chart = chart;
        this.braille = braille;
        this.rows = Math.max(LEAST_ROWS, rows);
        x = Ruling.of(chart.x(), chart.allX(), 6);
        y = Ruling.of(chart.y(), chart.allY(), Math.max(2, this.rows / 3));
        gutter = y.labels().stream().mapToInt(String::length).max().orElse(1) + 1;
        dots = new Dots(Math.max(LEAST_COLUMNS, columns - gutter - 2), this.rows, braille);
    }

    /**
     * @param columns width of the whole, characters
     * @param rows height of the plot's field, characters
     * @param braille whether braille and box signs can be shown; plain ASCII otherwise
     */
    public static String draw(Chart chart, int columns, int rows, boolean braille) {
        return new ChartText(chart, columns, rows, braille).draw();
    }

    private String draw() {
        for (int k = 0; k < chart.series().size(); k++) series(chart.series().get(k), k);
        chart.windows().forEach(this::window);
        for (int k = 0; k < chart.marks().size(); k++) mark(chart.marks().get(k), (char) ('A' + k % 26));
        StringBuilder out = new StringBuilder();
        out.append(chart.y().title()).append('\n');
        String[] labels = new String[rows];
        Arrays.fill(labels, "");
        for (int k = 0; k < y.ticks().size(); k++)
            labels[dots.rowOf(y.place(y.ticks().get(k)))] = number(y.labels().get(k));
        for (int r = 0; r < rows; r++) {
            String edge = labels[r].isEmpty() ? (braille ? "│" : "|") : (braille ? "┤" : "+");
            out.append(" ".repeat(gutter - labels[r].length()))
                    .append(labels[r])
                    .append(edge)
                    .append(dots.row(r).stripTrailing())
                    .append('\n');
        }
        foot(out);
        key.forEach(line -> out.append("  ").append(line).append('\n'));
        return out.toString();
    }

    private void series(Series series, int index) {
        char sign = LINE_SIGNS.charAt(index);
        boolean several = chart.series().size() > 1;
        for (List<Point> stroke : series.strokes()) {
            Point last = stroke.get(0);
            for (Point p : stroke) {
                dots.line(x.place(last.x()), y.place(last.y()), x.place(p.x()), y.place(p.y()), sign);
                last = p;
            }
            if (several && braille) signs(stroke, sign);
        }
        if (several) key.add(sign + " " + series.name());
    }

    /** Dots have no shape: the line's sign is set on it at a few places. */
    private void signs(List<Point> stroke, char sign) {
        for (int k = 0; k < stroke.size(); k += Math.max(1, stroke.size() / 6)) {
            Point p = stroke.get(k);
            dots.put(dots.columnOf(x.place(p.x())), dots.rowOf(y.place(p.y())), sign);
        }
    }

    private void window(Window window) {
        boolean along = window.along() == Along.X;
        for (double end : new double[] {window.low(), window.high()}) {
            if (along) dots.ruleColumn(dots.columnOf(x.place(end)), braille ? '┊' : ':');
            else dots.ruleRow(dots.rowOf(y.place(end)), braille ? '┄' : '-');
        }
        key.add((along ? (braille ? "┊ " : ": ") : (braille ? "┄ " : "- ")) + window.name());
    }

    private void mark(Mark mark, char letter) {
        dots.put(dots.columnOf(x.place(mark.x())), dots.rowOf(y.place(mark.y())), letter);
        key.add(letter + " " + mark.name());
    }

    private String number(String label) {
        return braille ? label : label.replace('−', '-');
    }

    private void foot(StringBuilder out) {
        int columns = braille ? dots.across() / 2 : dots.across();
        char[] edge = new char[columns];
        Arrays.fill(edge, braille ? '─' : '-');
        char[] numbers = new char[columns + gutter + 8];
        Arrays.fill(numbers, ' ');
        int free = 0;
        for (int k = 0; k < x.ticks().size(); k++) {
            int column = dots.columnOf(x.place(x.ticks().get(k)));
            edge[column] = braille ? '┬' : '+';
            String label = number(x.labels().get(k));
            int from = Math.max(0, gutter + 1 + column - label.length() / 2);
            if (from < free || from + label.length() > numbers.length) continue;
            label.getChars(0, label.length(), numbers, from);
            free = from + label.length() + 1;
        }
        out.append(" ".repeat(gutter)).append(braille ? '└' : '+').append(edge).append('\n');
        out.append(new String(numbers).stripTrailing()).append('\n');
        String title = chart.x().title();
        out.append(" ".repeat(Math.max(0, gutter + 1 + columns - title.length())))
                .append(title)
                .append('\n');
    }
}
