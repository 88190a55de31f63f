package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.substitute.DeviceWindow;
import galena.build.substitute.SubstituteReport;
import galena.build.substitute.SubstituteReport.Combination;
import galena.build.substitute.SubstituteReport.Devices;
import galena.build.substitute.SubstituteReport.Fit;
import galena.build.substitute.SubstituteReport.Row;
import galena.build.substitute.SubstituteReport.Values;
import galena.desk.console.Terminal;
import galena.desk.console.Terminal.Tone;
import java.util.List;

/** What can stand in a part's place, as a page for a terminal. */
public final class SubstituteText {
    private final Page page;

    private SubstituteText(Terminal terminal) {
        page = new Page(terminal);
    }

    public static void print(SubstituteReport report, Terminal terminal) {
        SubstituteText text = new SubstituteText(terminal);
        text.page.title(
                "In place of " + report.part() + ", " + report.now(),
                Words.percent(report.goodNow()) + " of copies meet the intent now");
        if (report instanceof Devices devices) text.devices(devices);
        else text.values((Values) report);
        text.page.print();
    }

    private void devices(Devices report) {
        for (Fit fit : Fit.values()) {
            List<Row> rows = report.rows().stream().filter(r -> r.fit() == fit).toList();
            if (rows.isEmpty()) continue;
            page.heading(Character.toUpperCase(fit.toString().charAt(0))
                    + fit.toString().substring(1));
            Page.Table table = page.table().folding();
            for (Row r : rows)
                table.row(
                        fit == Fit.NOT ? Tone.BAD : Tone.GOOD,
                        r.type(),
                        r.yield().isPresent() ? Words.percent(r.yield().getAsDouble()) : "–",
                        (r.change().isEmpty() ? "" : "with " + r.change() + ": ") + r.effects());
            table.end();
        }
        report.window().ifPresent(this::window);
        if (report.window().isEmpty()) {
            page.heading("Unknown parts");
            page.line("No window is given: it is solved for transistors whose typical specimen works here.");
        }
        page.heading("Notes");
        report.notes().forEach(page::line);
    }

    private void window(DeviceWindow window) {
        page.heading("Unknown parts that work");
        Page.Table table = page.table().folding();
        for (DeviceWindow.Axis a : window.axes())
            table.row(
                    a.parameter(),
                    "typical " + edge(a.typical()) + "; least " + edge(a.low()) + "; most " + edge(a.high()));
        table.end();
        page.heading("How to tell");
        window.test().steps().forEach(page::line);
        Page.Table readings = page.table();
        window.test()
                .readings()
                .forEach(r -> readings.row(
                        r.quantity(),
                        Words.number(r.low(), r.unit(), 3) + " to " + Words.number(r.high(), r.unit(), 3),
                        "typical " + Words.number(r.value(), r.unit(), 3)));
        readings.end();
        page.line(window.test().proof());
    }

    private static String edge(Figure figure) {
        return figure instanceof Figure.Known known
                ? Words.number(known.value(), known.unit(), 2)
                : ((Figure.Missing) figure).reason();
    }

    private void values(Values report) {
        report.range().ifPresent(range -> {
            page.heading("Single values that do");
            page.line(
                    range.low() == range.high()
                            ? "None but its own: the next values either way change too much."
                            : Words.number(range.low(), range.unit(), 2) + " to "
                                    + Words.number(range.high(), range.unit(), 2)
                                    + ", the trimmer turned back to the channel; typical parts.");
        });
        page.heading("What the drawer makes, the nearest value first");
        Page.Table table = page.table().folding();
        for (Combination c : report.combinations())
            table.row(
                    c.words(),
                    (c.error() >= 0 ? "+" : "−") + Words.percent(Math.abs(c.error())),
                    c.effects() + "; " + Words.percent(c.yield()) + " of copies");
        table.end();
        page.heading("Notes");
        report.notes().forEach(page::line);
    }
}
