package galena.desk.writing;

import galena.build.drift.DriftReport;
import galena.build.drift.DriftReport.Moment;
import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartText;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A run from switch-on as a page for a terminal: when something gives, the curves, the table behind them. */
public final class DriftText {
    private static final int FIELD_ROWS = 12;
    private static final int ROWS = 11;
    private static final int FIGURES = 3;
    private static final double HOUR = 3600;

    private DriftText() {}

    /** @param charts of the same run, in the order in which they are to stand */
    public static void print(String name, DriftReport report, List<Chart> charts, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(name, "from switch-on, typical parts");
        page.heading("How long");
        Page.Table answers = page.table().folding();
        answers.row(
                "leaves its channel",
                when(report.leaves()) + "; the channel is ±" + Words.number(report.channel(), Unit.HERTZ, 3));
        answers.row("loses depth", when(report.loses()));
        answers.row("stops", when(report.stops()));
        answers.row("battery at its end", when(report.spent()));
        answers.row("supply pushing", signed(report.pushing()) + " a volt");
        answers.end();
        boolean braille = terminal.canShow("⠿┤┄");
        for (Chart chart : charts) {
            page.heading(chart.title());
            page.verbatim(ChartText.draw(chart, terminal.width() - 2, FIELD_ROWS, braille));
        }
        page.heading("From switch-on");
        run(page, report);
        page.heading("With temperature, otherwise as at switch-on");
        temperatures(page, report);
        page.heading("Notes");
        report.wanted()
                .ifPresent(w -> page.line("The audio is set at switch-on for a depth of " + Words.percent(w) + " ("
                        + Words.number(report.audio(), Unit.VOLT, FIGURES)
                        + " peak from the source) and left. Depth is lost below"
                        + " nine tenths of that or above 5 % distortion; it is the static negative peak of the current in "
                        + report.output() + "."));
        page.line("The circuit is solved at every step. How warm it gets is for you to say: --temperature at switch-on,"
                + " --warmed in the end, --over the time by which 63 % of the way is gone.");
        page.line("Hours rest on the capacity that the cell's maker states; old and cold cells hold less.");
        page.print();
    }

    private static String when(Figure figure) {
        if (!(figure instanceof Figure.Known known)) return "not in this run, " + ((Figure.Missing) figure).reason();
        if (known.value() == 0) return "at once";
        return "after " + Words.withInterval(figure);
    }

    private static void run(Page page, DriftReport report) {
        Page.Table table = page.table();
        table.row("after", "charge", "at", "terminals", "carrier", "output", "draws", "depth", "distorts");
        List<Moment> run = report.run();
        int stride = Math.max(1, (run.size() - 1 + ROWS - 2) / (ROWS - 1));
        for (int k = 0; k < run.size(); k++) {
            if (k % stride != 0 && k != run.size() - 1) continue;
            Moment m = run.get(k);
            table.row(
                    hours(m.seconds() / HOUR),
                    Words.percent(m.charge()),
                    celsius(m),
                    Words.number(m.terminals(), Unit.VOLT, FIGURES),
                    signed(m.frequency() - report.carrier()),
                    Words.number(m.output(), Unit.AMPERE, FIGURES),
                    Words.number(m.supply(), Unit.AMPERE, FIGURES),
                    share(m.depth()),
                    share(m.distortion()));
        }
        table.end();
    }

    private static String hours(double hours) {
        return String.format(Locale.ROOT, hours < 100 ? "%.1f h" : "%.0f h", hours);
    }

    private static void temperatures(Page page, DriftReport report) {
        Page.Table table = page.table();
        table.row("at", "carrier", "output", "depth", "distorts");
        for (Moment m : report.temperatures()) {
            table.row(
                    celsius(m),
                    signed(m.frequency() - report.carrier()),
                    Words.number(m.output(), Unit.AMPERE, FIGURES),
                    share(m.depth()),
                    share(m.distortion()));
        }
        table.end();
    }

    private static String celsius(Moment m) {
        return (Math.round(m.celsius()) + " °C").replace('-', '−');
    }

    private static String share(Optional<Double> share) {
        return share.map(Words::percent).orElse("lost");
    }

    private static String signed(double hertz) {
        if (Math.abs(hertz) < 0.05) return "0 Hz";
        return (hertz < 0 ? "−" : "+") + Words.number(Math.abs(hertz), Unit.HERTZ, FIGURES);
    }
}
