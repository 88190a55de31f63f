package galena.desk.writing;

import galena.build.depth.ModulationReport;
import galena.build.depth.ModulationReport.Cause;
import galena.build.depth.ModulationReport.Cure;
import galena.build.figure.Figure;
import galena.build.modulation.Modulated;
import galena.build.modulation.ToneAnswer;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartText;
import java.util.List;
import java.util.stream.Collectors;

/** How a build is modulated, as a page for a terminal. */
public final class ModulationText {
    private static final int FIELD_ROWS = 12;

    private final ModulationReport report;
    private final Page page;

    private ModulationText(ModulationReport report, Terminal terminal) {
        this.report = report;
        page = new Page(terminal);
    }

    public static void print(ModulationReport report, Chart response, Terminal terminal) {
        ModulationText text = new ModulationText(report, terminal);
        text.page.title(report.name(), "typical parts");
        text.tone();
        text.sweep();
        text.swing();
        text.response();
        text.page.verbatim("\n");
        text.page.verbatim(ChartText.draw(response, terminal.width() - 2, FIELD_ROWS, terminal.canShow("⠿┤┄")));
        if (!report.notes().isEmpty()) {
            text.page.heading("Notes");
            report.notes().forEach(text.page::line);
        }
        text.page.print();
    }

    private void tone() {
        Page.Table table;
        if (report.tone() instanceof Modulated m) {
            page.heading("Modulation of " + m.quantity() + " by " + Words.number(m.level(), Unit.VOLT, 3)
                    + " peak from " + report.source() + " at " + hertz(m.audio()));
        } else {
            page.heading("Modulation by " + report.source());
        }
        table = page.table().folding();
        ModulationRows.tone(table, report.tone());
        table.end();
    }

    private void sweep() {
        if (report.sweep().isEmpty()) return;
        page.heading("Other levels");
        Page.Table table = page.table();
        table.row("level", "positive", "negative", "distortion", "swing");
        for (ToneAnswer answer : report.sweep()) {
            if (!(answer instanceof Modulated m)) {
                table.row("", "not known");
                continue;
            }
            table.row(
                    Words.number(m.level(), Unit.VOLT, 3),
                    share(m.positivePeak()),
                    share(m.negativePeak()),
                    share(m.distortion()),
                    m.swing() instanceof Figure.Known k ? hertz(k.value()) : "not known");
        }
        table.end();
    }

    private static String share(Figure figure) {
        return figure instanceof Figure.Known known ? Words.number(known.value(), Unit.FRACTION, 3) : "not known";
    }

    private void swing() {
        page.heading("Swing");
        String verdict = report.swingVerdict();
        page.line(Character.toUpperCase(verdict.charAt(0)) + verdict.substring(1) + (verdict.endsWith(".") ? "" : "."));
        if (!report.cures().isEmpty()) {
            page.line("Tried, each by solving the changed circuit; swing at the same depth:");
            Page.Table table = page.table().folding();
            for (Cure cure : report.cures()) {
                String how = cure.verified() ? "" : ", to first order";
                table.row(hertz(cure.swing()), cure.what() + how);
            }
            table.end();
        }
        if (report.supplySwing() > 0) {
            page.line("Ripple on the supply: " + hertz(report.supplySwing()) + " of swing and "
                    + Words.number(report.supplyHum(), Unit.FRACTION, 2) + " of depth for a volt at 100 Hz.");
        }
    }

    private void response() {
        page.heading("Audio response, small tone");
        Page.Table table = page.table().folding();
        table.row("lower −3 dB point", ModulationRows.end(report.response().low()) + causes(report.lowSetBy()));
        table.row("upper −3 dB point", ModulationRows.end(report.response().high()) + causes(report.highSetBy()));
        table.end();
    }

    /** By how many percent the point moves for one percent of each value. */
    private static String causes(List<Cause> causes) {
        if (causes.isEmpty()) return "";
        return "; set by "
                + causes.stream()
                        .map(c -> c.what() + " ("
                                + Words.number(c.share(), Unit.NUMBER, 2).replaceFirst("^(?=\\d)", "+") + ")")
                        .collect(Collectors.joining(", "))
                + ", percent for each percent";
    }

    private static String hertz(double hertz) {
        return Words.number(hertz, Unit.HERTZ, 3);
    }
}
