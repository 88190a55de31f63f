package galena.desk.writing;

import galena.bench.log.Beside;
import galena.bench.measure.Report;
import galena.build.figure.Figure;
import galena.desk.console.Terminal;
import galena.desk.console.Terminal.Tone;
import java.util.List;

/** Captures with their one sentence each, and the readings of a log beside the prediction. */
public final class BesideText {
    private BesideText() {}

    /**
     * @param heading of the page
     * @param reports of captures, each shown by its sentence
     * @param readings in the order of the log
     */
    public static void print(String heading, List<Report> reports, List<Beside> readings, Terminal terminal) {
        Page page = new Page(terminal);
        page.heading(heading);
        for (Report report : reports) page.line(report.name() + ": " + report.verdict());
        Page.Table table = page.table().folding();
        for (Beside beside : readings) {
            String word = beside.agrees().map(agree -> agree ? "fits" : "apart").orElse("");
            Tone tone = word.equals("apart") ? Tone.WARNING : Tone.GOOD;
            table.row(
                    tone,
                    word,
                    beside.reading().what().inWords(),
                    beside.reading().at().orElse(""),
                    read(beside).replaceFirst("^-", "−"),
                    predicted(beside.predicted()));
        }
        table.end();
        page.print();
    }

    private static String read(Beside beside) {
        return beside.reading().value().text()
                + beside.reading().uncertainty().map(u -> " ± " + u.text()).orElse("");
    }

    private static String predicted(Figure figure) {
        if (figure instanceof Figure.Missing missing) return "no prediction: " + missing.reason();
        boolean typical = ((Figure.Known) figure).basis().contains("typical");
        return "predicted " + (typical ? Words.alone(figure) + " with typical parts" : Words.withInterval(figure));
    }
}
