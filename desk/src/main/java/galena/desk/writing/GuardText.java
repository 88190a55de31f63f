package galena.desk.writing;

import galena.build.guard.GuardReport;
import galena.build.guard.GuardReport.Moves;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import java.util.List;
import java.util.Locale;

/** What spoils a build, as a page for a terminal: advice in words first, then the numbers behind it. */
public final class GuardText {
    private static final int FIGURES = 3;

    private GuardText() {}

    /** @param rows of each table */
    public static void print(String name, GuardReport report, int rows, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(name, "what moves " + Words.number(report.carrier(), Unit.HERTZ, 6) + ", typical parts");
        page.heading("At the bench");
        report.advice().forEach(page::line);
        page.heading("One picofarad between");
        moves(
                page,
                report.strays().stream().limit(rows).toList(),
                s -> s.from() + " and " + s.to(),
                s -> s.perPicofarad());
        page.heading("One percent of");
        moves(
                page,
                report.parts().stream().limit(rows).toList(),
                GuardReport.Part::value,
                GuardReport.Part::perPercent);
        page.heading("A probe or a hand at");
        Page.Table probes = page.table();
        probes.row("net", "10:1 probe", "1:1 probe", "hand at 10 cm");
        for (GuardReport.Probe p : report.probes().stream().limit(rows).toList()) {
            probes.row(p.net(), hertz(p.tenToOne()), p.stops() ? "stops it" : hertz(p.oneToOne()), hertz(p.hand()));
        }
        probes.end();
        page.heading("Coils and leads");
        Page.Table coils = page.table();
        for (GuardReport.Winding w : report.couplings()) {
            coils.row("k = 0.001 between " + w.first() + " and " + w.second(), hertz(w.hertz()));
        }
        for (GuardReport.Tool t : report.tools())
            coils.row("metal near " + t.coil() + " (L −1 %, Q −10 %)", hertz(t.hertz()));
        for (GuardReport.Lead l : report.leads().stream().limit(rows).toList()) {
            coils.row("10 nH in the lead of " + l.part(), hertz(l.hertz()));
        }
        coils.end();
        page.heading("Heat and supply");
        Page.Table slow = page.table();
        slow.row("10 °C warmer", hertz(report.drift().perTenKelvin()));
        for (GuardReport.Share s : report.drift().byPart().stream().limit(rows).toList()) {
            slow.row("  of it " + s.part(), hertz(s.hertz()));
        }
        slow.row("1 V more", hertz(report.drift().perVolt()));
        slow.end();
        page.print();
    }

    private interface Named<T> {
        String of(T item);
    }

    private interface Moved<T> {
        Moves of(T item);
    }

    private static <T> void moves(Page page, List<T> items, Named<T> name, Moved<T> moved) {
        Page.Table table = page.table();
        table.row("", "carrier", "output", "output re-trimmed", "harmonic");
        for (T item : items) {
            Moves m = moved.of(item);
            table.row(
                    name.of(item),
                    hertz(m.carrier()),
                    decibels(m.output()),
                    decibels(m.outputRetrimmed()),
                    decibels(m.harmonic()));
        }
        table.end();
    }

    private static String hertz(double value) {
        if (value == 0) return "none";
        return (value < 0 ? "−" : "+") + Words.number(Math.abs(value), Unit.HERTZ, FIGURES);
    }

    private static String decibels(double value) {
        return String.format(Locale.ROOT, "%+.2f dB", value).replace('-', '−');
    }
}
