package galena.desk.writing;

import galena.build.spread.Drawn;
import galena.build.spread.SpreadReport;
import galena.desk.console.Terminal;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartText;
import java.util.List;

/** What a spread came to, as a page for a terminal. */
public final class SpreadText {
    private static final int MOST_BARS = 24;
    private static final int FEWEST_BARS = 8;
    /** What stands to the left of the bars. */
    private static final int WORDS = 72;

    private static final int FIGURES = 4;
    private static final int FIELD_ROWS = 10;

    private SpreadText() {}

    /** @param charts of the same spread, in the order in which they are to stand */
    public static void print(String name, SpreadReport report, List<Chart> charts, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(name, report.count() + " copies, seed " + report.seed());
        page.heading("Yield");
        page.line(Words.withInterval(report.yield()) + " meet the intent.");
        report.failures().forEach((why, count) -> page.line(count + " of " + report.count() + ": " + why + "."));
        page.heading("Where 95 % lie");
        Page.Table table = page.table();
        report.windows()
                .forEach((quantity, window) -> table.row(
                        quantity.toString(),
                        Words.withInterval(window),
                        bars(report.histograms().getOrDefault(quantity, new double[0]), terminal)));
        table.end();
        boolean braille = terminal.canShow("⠿┤┄");
        for (Chart chart : charts) {
            page.heading(chart.title());
            page.verbatim(ChartText.draw(chart, terminal.width() - 2, FIELD_ROWS, braille));
        }
        if (!report.voltages().isEmpty()) {
            page.heading("Mean voltages against ground, running on channel");
            Page.Table voltages = page.table();
            report.voltages().forEach((net, window) -> voltages.row(net, Words.withInterval(window)));
            voltages.end();
        }
        if (!report.tighten().isEmpty()) {
            page.heading("Halving one tolerance would bring the yield to");
            Page.Table tighten = page.table();
            report.tighten().forEach(t -> tighten.row(t.what(), Words.percent(t.yield())));
            tighten.end();
        }
        if (!report.failures().isEmpty()) {
            page.heading("Worst copies");
            Page.Table worst = page.table();
            worst.row("number", "fails");
            report.worst().stream()
                    .filter(d -> !d.isGood())
                    .forEach(d -> worst.row(Long.toString(d.number()), String.join("; ", d.failures())));
            worst.folding().end();
        }
        page.line("galena spread DIR --seed " + report.seed() + " --copy NUMBER calls one back.");
        page.print();
    }

    /** One copy, called back. */
    public static void print(String name, long seed, Drawn one, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(name, "copy " + one.number() + " of seed " + seed);
        page.line(one.isGood() ? "It meets the intent." : "It fails: " + String.join("; ", one.failures()) + ".");
        Page.Table table = page.table();
        table.row("temperature", Math.round(one.temperature()) + " °C");
        table.row("charge of the battery", Words.percent(one.charge()));
        for (Drawn.Quantity quantity : Drawn.Quantity.values()) {
            Double value = one.values().get(quantity);
            if (value != null) table.row(quantity.toString(), Words.number(value, quantity.unit(), FIGURES));
        }
        table.end();
        page.print();
    }

    /** A histogram in one line, from the lowest to the highest value. */
    private static String bars(double[] sorted, Terminal terminal) {
        if (sorted.length < 2 || sorted[0] == sorted[sorted.length - 1]) return "";
        String blocks = terminal.canShow("▁▂▃▄▅▆▇█") ? " ▁▂▃▄▅▆▇█" : " .:-=+*#@";
        int bars = Math.max(FEWEST_BARS, Math.min(MOST_BARS, terminal.width() - WORDS));
        int[] counts = new int[bars];
        double low = sorted[0], high = sorted[sorted.length - 1];
        for (double value : sorted) counts[(int) Math.min(bars - 1, bars * (value - low) / (high - low))]++;
        int most = 1;
        for (int count : counts) most = Math.max(most, count);
        StringBuilder line = new StringBuilder();
        for (int count : counts) line.append(blocks.charAt((int) Math.ceil(8.0 * count / most)));
        return line.toString();
    }
}
