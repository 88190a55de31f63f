package galena.desk.writing;

import galena.build.predict.Response;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartText;
import java.util.Locale;
import java.util.OptionalDouble;

/** A response as a page for a terminal. */
public final class ResponseText {
    private static final int FIELD_ROWS = 14;
    private static final int FIGURES = 4;

    private ResponseText() {}

    public static void print(Response response, Chart chart, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(chart.title(), "small signal, oscillators at rest");
        page.line("Highest: " + decibels(response.peak()) + " at "
                + hertz(response.peak().frequency()) + ".");
        page.line(
                "3 dB down: " + edge(response.lower(), "not below") + ", " + edge(response.upper(), "not above") + ".");
        response.loadedQ()
                .ifPresent(
                        q -> page.line("Peak over width, a tank's loaded Q: " + Words.number(q, Unit.NUMBER, 3) + "."));
        page.verbatim("\n");
        page.verbatim(ChartText.draw(chart, terminal.width() - 2, FIELD_ROWS, terminal.canShow("⠿┤┄")));
        page.print();
    }

    private static String edge(OptionalDouble frequency, String without) {
        return frequency.isPresent() ? hertz(frequency.getAsDouble()) : without + " the peak in this range";
    }

    private static String decibels(Response.Point p) {
        return String.format(Locale.ROOT, "%.2f dB, %.0f°", p.decibels(), p.degrees())
                .replace('-', '−');
    }

    private static String hertz(double hertz) {
        return Words.number(hertz, Unit.HERTZ, FIGURES);
    }
}
