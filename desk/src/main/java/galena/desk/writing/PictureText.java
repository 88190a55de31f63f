package galena.desk.writing;

import galena.build.picture.Strip;
import galena.build.picture.TimePictures;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartText;
import java.util.Arrays;
import java.util.Collection;

/** Pictures of a test point, as a page for a terminal. */
public final class PictureText {
    private static final int FIELD_ROWS = 12;
    private static final int FIGURES = 3;

    private PictureText() {}

    public static void print(TimePictures pictures, Collection<Chart> charts, Terminal terminal) {
        Page page = new Page(terminal);
        String probe = pictures.point()
                .probe()
                .map(p -> "through a " + p.name() + " probe")
                .orElse("without a probe");
        page.title(
                pictures.build() + ", " + pictures.point().name() + " at "
                        + pictures.point().at(),
                probe);
        double[] v = pictures.carrier().volts();
        double high = Arrays.stream(v).max().orElse(0),
                low = Arrays.stream(v).min().orElse(0);
        page.line("Carrier " + volts(low) + " to " + volts(high) + ", " + volts(high - low) + " peak to peak.");
        if (pictures.startupTime().isPresent())
            page.line("From its operating point, kicked by a millivolt, it stands at nine tenths after "
                    + Words.number(pictures.startupTime().getAsDouble(), Unit.SECOND, FIGURES) + ".");
        else if (pictures.startup().isPresent())
            page.line("From its operating point, kicked by a millivolt, it grows for longer than the picture shows.");
        else page.line("No start is shown: it does not start by itself, or the run in time did not end.");
        if (pictures.modulated().isPresent())
            modulated(page, pictures, pictures.modulated().get());
        else page.line("No modulated picture: " + pictures.without() + ".");
        for (Chart chart : charts) {
            page.heading(chart.title());
            page.verbatim(ChartText.draw(chart, terminal.width() - 2, FIELD_ROWS, terminal.canShow("⠿┤┄")));
        }
        page.print();
    }

    private static void modulated(Page page, TimePictures pictures, Strip strip) {
        double most = 0, least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < strip.time().length; k++) {
            most = Math.max(most, strip.height(k));
            least = Math.min(least, strip.height(k));
        }
        page.line("With " + Words.number(pictures.tone(), Unit.HERTZ, FIGURES) + " at "
                + volts(pictures.level()) + " peak from the audio source: crest " + volts(most) + ", trough "
                + volts(least) + " peak to peak. The band shows voltage, not the current that radiates.");
    }

    private static String volts(double v) {
        return Words.number(v, Unit.VOLT, FIGURES);
    }
}
