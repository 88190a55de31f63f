package galena.desk.writing;

import galena.bench.capture.Understanding;
import galena.bench.measure.Figure;
import galena.bench.measure.Finding;
import galena.bench.measure.Reading;
import galena.bench.measure.Report;
import galena.desk.console.Terminal;
import galena.desk.console.Terminal.Tone;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** A report as a page: the one sentence first, then how the file was read, the figures, and what was found. */
public final class MeasurementText {
    /** From here on hertz are shown as kilohertz. */
    private static final double KILOHERTZ_FROM = 10e3;

    private static final double MILLI_BELOW = 0.1;
    private static final Pattern HYPHEN = Pattern.compile("(?<![\\p{L}\\d])-(?=\\d)");

    private final Report report;
    private final Page page;

    private MeasurementText(Report report, Terminal terminal) {
        this.report = report;
        page = new Page(terminal);
    }

    /**
     * @param expected what was expected of the carrier and why, or empty
     * @param explain whether to say under each figure how it was taken
     */
    public static void print(Report report, String expected, boolean explain, Terminal terminal) {
        MeasurementText text = new MeasurementText(report, terminal);
        text.page.title(report.name(), "");
        text.page.line(report.verdict());
        text.understood(expected);
        text.figures(explain);
        text.findings();
        text.page.print();
    }

    /** The sentence and the figures with these keys alone. */
    public static void printSummary(Report report, Collection<String> keys, Terminal terminal) {
        MeasurementText text = new MeasurementText(report, terminal);
        text.page.line(report.name() + ": " + report.verdict());
        Page.Table table = text.page.table().folding();
        report.figures().stream()
                .filter(f -> keys.contains(f.key()))
                .forEach(f -> table.row("  " + f.label(), words(f)));
        table.end();
        text.page.print();
    }

    private void understood(String expected) {
        Understanding u = report.understanding();
        page.heading("Understood");
        page.table()
                .folding()
                .row("layout", u.layout())
                .row("numbers", u.encoding())
                .row("interval", u.intervalSource())
                .row("read", rows(u))
                .end();
        if (!expected.isEmpty()) page.line(expected);
    }

    private static String rows(Understanding u) {
        return u.read()
                + (u.heading() > 0
                        ? ", behind " + u.heading() + (u.heading() == 1 ? " row" : " rows") + " of heading"
                        : "")
                + (u.skipped() > 0 ? "; " + u.skipped() + " skipped" : "");
    }

    private void figures(boolean explain) {
        Map<String, List<Figure>> byQuantity = new LinkedHashMap<>();
        for (Figure f : report.figures())
            byQuantity.computeIfAbsent(f.quantity(), q -> new ArrayList<>()).add(f);
        byQuantity.forEach((quantity, figures) -> {
            page.heading("Figures: " + quantity + ", with 95 % intervals");
            Page.Table table = page.table().folding();
            for (Figure f : figures) {
                table.row(f.label(), words(f));
                if (explain && !f.how().isEmpty()) table.row("", f.how());
            }
            table.end();
        });
    }

    private void findings() {
        if (report.findings().isEmpty()) return;
        page.heading("Found");
        Page.Table table = page.table().folding();
        for (Finding f : report.findings()) table.row(Tone.WARNING, "!", f.sentence() + ".");
        table.end();
    }

    /** The figure in the prefix that builders use, with a true minus sign. */
    static String words(Figure figure) {
        return HYPHEN.matcher(prefixed(figure)).replaceAll("−");
    }

    private static String prefixed(Figure figure) {
        if (!(figure.reading() instanceof Reading.Known known)) return figure.words();
        double size = Math.abs(known.estimate().value());
        if (figure.unit().equals("Hz") && size >= KILOHERTZ_FROM) return scaled(figure, known, 1e-3, "kHz");
        if (figure.unit().equals("V") && size < MILLI_BELOW) return scaled(figure, known, 1e3, "mV");
        return figure.words();
    }

    private static String scaled(Figure figure, Reading.Known known, double factor, String unit) {
        Reading reading = new Reading.Known(known.estimate().map(x -> factor * x));
        return new Figure(figure.key(), figure.label(), reading, unit, figure.quantity(), figure.how()).words();
    }
}
