package galena.desk.writing;

import galena.build.guard.GuardReport;
import galena.build.guard.GuardReport.Effect;
import galena.build.guard.GuardReport.Moves;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.packet.chart.Ranking;
import galena.packet.chart.RankingText;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/** What spoils a build, as a page for a terminal: advice in words first, the ranking, then the numbers behind it. */
public final class GuardText {
    private static final int FIGURES = 3;

    private final GuardReport report;
    private final int rows;
    private final boolean fixed;
    private final Page page;

    private GuardText(GuardReport report, int rows, boolean fixed, Terminal terminal) {
        this.report = report;
        this.rows = rows;
        this.fixed = fixed;
        page = new Page(terminal);
    }

    /**
     * @param ranking of the same report
     * @param rows of each table
     * @param fixed whether the figures beside the carrier are those at fixed trim; otherwise those after trimming back
     */
    public static void print(
            String name, GuardReport report, Ranking ranking, int rows, boolean fixed, Terminal terminal) {
        GuardText text = new GuardText(report, rows, fixed, terminal);
        text.page.title(name, "what moves " + Words.number(report.carrier(), Unit.HERTZ, 4) + ", typical parts");
        text.page.heading("At the bench");
        report.advice().forEach(text.page::line);
        text.page.heading(ranking.title());
        text.page.verbatim(RankingText.draw(ranking, terminal.width() - 2, terminal.canShow("▬│−")));
        text.tables();
        text.page.print();
    }

    private void tables() {
        page.heading("One percent of");
        moves(report.parts(), GuardReport.Part::value, GuardReport.Part::perPercent);
        page.heading("One picofarad between");
        moves(report.distinctStrays(), s -> s.from() + ", " + s.to(), GuardReport.Stray::perPicofarad);
        page.heading("Ten nanohenries, a centimetre of lead, in");
        moves(report.leads(), l -> l.part() + " at " + l.net(), GuardReport.Lead::perTenNanohenries);
        if (!report.couplings().isEmpty()) {
            page.heading("A coupling of k = 0.001 between (reversed: the other way)");
            moves(report.couplings(), w -> w.first() + ", " + w.second(), GuardReport.Winding::moves);
        }
        page.heading("Metal near a coil: 1 % less inductance, 10 % more loss");
        moves(report.tools(), GuardReport.Tool::coil, GuardReport.Tool::moves);
        probes();
        page.heading("Heat and supply");
        Page.Table slow = head();
        row(slow, "10 °C warmer", report.drift().perTenKelvin());
        for (GuardReport.Share s : report.drift().byPart().stream().limit(rows).toList()) {
            if (s.hertz() != 0) slow.row("  of it " + s.part(), hertz(s.hertz()));
        }
        row(slow, "1 V more", report.drift().perVolt());
        slow.end();
        notes();
    }

    private void probes() {
        page.heading("A probe or a hand at");
        Page.Table probes = page.table();
        probes.row("net", "10:1 probe", "1:1 probe", "hand at 10 cm");
        for (GuardReport.Probe p : report.probes().stream().limit(rows).toList()) {
            probes.row(p.net(), touched(p.tenToOne()), touched(p.oneToOne()), hertz(p.hand()));
        }
        for (GuardReport.Point p : report.points()) {
            probes.row(p.name() + " (" + p.at() + ")", touched(p.hertz()) + " by its " + p.probe() + " probe");
        }
        probes.end();
    }

    private void notes() {
        page.heading("Notes");
        page.line("The carrier moves as said at fixed trim. Output is the carrier's current in " + report.output()
                + ", depth its static negative peak"
                + report.depth()
                        .map(d -> " (" + Words.percent(d) + " with the audio at its level)")
                        .orElse(", which cannot be had here")
                + ", " + report.strongest() + "f its strongest harmonic against the carrier; "
                + (fixed
                        ? "all at fixed trim."
                        : "all after " + (report.trimmer().isEmpty() ? "nothing" : report.trimmer())
                                + " has trimmed the carrier back. --fixed shows them at fixed trim.")
                + " --rows shows more.");
        page.line("First order and exact: small changes add up, large ones bend. Probes are solved in full.");
    }

    private Page.Table head() {
        Page.Table table = page.table();
        table.row("", "carrier", "output", "depth", report.strongest() + "f");
        return table;
    }

    private <T> void moves(List<T> items, Function<T, String> name, Function<T, Moves> moved) {
        Page.Table table = head();
        for (T item : items.stream().limit(rows).toList()) row(table, name.apply(item), moved.apply(item));
        table.end();
    }

    private void row(Page.Table table, String name, Moves m) {
        Effect effect = fixed ? m.fixed() : m.retrimmed();
        table.row(
                name,
                hertz(m.carrier()),
                decibels(effect.output()),
                effect.depth().map(d -> signed(100 * d, 2) + " %").orElse("–"),
                decibels(effect.harmonic(report.strongest())));
    }

    private static String touched(Optional<Double> hertz) {
        return hertz.map(GuardText::hertz).orElse("stops it");
    }

    /** Below a tenth of a millihertz nothing is left but rounding. */
    private static String hertz(double value) {
        if (Math.abs(value) < 1e-4) return "none";
        return (value < 0 ? "−" : "+") + Words.number(Math.abs(value), Unit.HERTZ, FIGURES);
    }

    private static String decibels(double value) {
        return signed(value, 3) + " dB";
    }

    private static String signed(double value, int decimals) {
        String digits = String.format(Locale.ROOT, "%+." + decimals + "f", value);
        return digits.matches("[-+]0\\.0+") ? "0" : digits.replace('-', '−');
    }
}
