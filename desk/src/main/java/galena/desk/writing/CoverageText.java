package galena.desk.writing;

import galena.build.predict.Coverage;
import galena.build.predict.Coverage.Point;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartText;
import java.util.List;
import java.util.Optional;

/** A coverage as a page for a terminal: what is reached, where the wanted carrier lies, the curve and a short table. */
public final class CoverageText {
    /** What is covered and where the wanted carrier lies, in one line each. */
    public static void printSummary(Coverage coverage, Optional<Quantity> wanted, Terminal terminal) {
        Page page = new Page(terminal);
        page.heading("Alignment");
        findings(page, coverage, wanted);
        page.print();
    }

    private static void findings(Page page, Coverage coverage, Optional<Quantity> wanted) {
        page.line(coverage.part() + " covers " + hertz(coverage.lowest()) + " to " + hertz(coverage.highest())
                + missing(coverage) + ".");
        wanted.ifPresent(w -> page.line(place(coverage, w)));
    }

    private static final int FIELD_ROWS = 14;
    private static final int MOST_ROWS = 11;
    private static final int FIGURES = 4;

    private CoverageText() {}

    /**
     * @param coverage with at least one point
     * @param wanted the intent's carrier, if it names one
     * @param chart of the same coverage
     */
    public static void print(Coverage coverage, Optional<Quantity> wanted, Chart chart, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(chart.title(), "typical parts");
        findings(page, coverage, wanted);
        page.verbatim("\n");
        boolean braille = terminal.canShow("⠿┤┄");
        page.verbatim(ChartText.draw(chart, terminal.width() - 2, FIELD_ROWS, braille));
        page.verbatim("\n");
        Page.Table table = page.table();
        table.row("position", "carrier", "voltage across " + coverage.site() + ", peak");
        List<Point> points = coverage.points();
        int stride = Math.max(1, (points.size() - 1 + MOST_ROWS - 2) / (MOST_ROWS - 1));
        for (int k = 0; k < points.size(); k += stride) {
            Point p = points.get(k);
            table.row(Words.percent(p.position()), hertz(p.frequency()), Words.number(p.amplitude(), Unit.VOLT, 3));
        }
        table.end();
        page.print();
    }

    /** Oscillation may stop before a stop of the travel does. */
    private static String missing(Coverage coverage) {
        double first = coverage.points().get(0).position();
        double last = coverage.points().get(coverage.points().size() - 1).position();
        if (first == 0 && last == 1) return "";
        return "; it oscillates from " + Words.percent(first) + " to " + Words.percent(last) + " of the travel only";
    }

    private static String place(Coverage coverage, Quantity wanted) {
        List<Point> points = coverage.points();
        for (int k = 1; k < points.size(); k++) {
            Point a = points.get(k - 1), b = points.get(k);
            double share = (wanted.value() - a.frequency()) / (b.frequency() - a.frequency());
            if (share < 0 || share > 1 || a.frequency() == b.frequency()) continue;
            double position = a.position() + share * (b.position() - a.position());
            return wanted.text() + " lies near " + Words.number(position, Unit.FRACTION, 2) + " of the travel.";
        }
        double miss = wanted.value() < coverage.lowest()
                ? coverage.lowest() - wanted.value()
                : wanted.value() - coverage.highest();
        return wanted.text() + " is out of reach by " + hertz(miss) + ".";
    }

    private static String hertz(double hertz) {
        return Words.number(hertz, Unit.HERTZ, FIGURES);
    }
}
