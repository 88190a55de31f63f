package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.listen.Agreement;
import galena.build.listen.Happened;
import galena.build.listen.ListenReport;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.desk.console.Terminal.Tone;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What was listened to, as a page for a terminal. */
public final class ListenText {
    /** Points, as a share, from which the model's error is worth a word. */
    private static final double FAR_OFF = 0.03;

    private ListenText() {}

    /** @param took seconds that the programme needed */
    public static void print(ListenReport report, Path out, double took, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(report.name() + ", heard on a " + report.receiver(), Words.number(report.carrier(), Unit.HERTZ, 4));
        page.line(ListenReport.CAUTION);
        page.line(String.format(
                Locale.ROOT,
                "%.1f s of programme in %s, %.1f times as fast as it plays.",
                report.happened().seconds(),
                out,
                report.happened().seconds() / Math.max(took, 1e-9)));
        page.heading("What the listener gets");
        Page.Table table = page.table();
        for (Figure figure : report.sound().figures()) table.row(named(figure), place(figure), Words.alone(figure));
        report.air()
                .ifPresent(air -> table.row(
                        "signal-to-noise, loud passages",
                        "at " + Words.number(air.distance(), Unit.METRE, 2),
                        Words.withInterval(air.signalToNoise())));
        table.end();
        if (!report.without().isEmpty()) page.line(report.without());
        report.air().filter(a -> a.silent()).ifPresent(a -> page.line("So far off this set would not play at all."));
        if (report.mistuned() != 0)
            page.line("The set stands " + Words.number(report.mistuned(), Unit.HERTZ, 3) + " beside the carrier.");
        happened(page, report.happened());
        agreement(page, report);
        page.print();
    }

    private static String named(Figure figure) {
        return figure.quantity();
    }

    private static String place(Figure figure) {
        return figure instanceof Figure.Known known ? known.at() : "";
    }

    private static void happened(Page page, Happened happened) {
        page.heading("What happened on the way");
        Page.Table table = page.table().folding();
        for (Happened.Event event : happened.events()) {
            if (event.count() == 0) table.row(event.name(), "never");
            else table.row(Tone.STRONG, event.name(), words(event));
        }
        if (happened.softened() > 0)
            table.row("output softened", Words.percent(happened.softened()) + " of the time, by the guard for ears");
        table.end();
    }

    private static String words(Happened.Event event) {
        List<String> first = event.first().stream()
                .map(t -> String.format(Locale.ROOT, "%.2f", t))
                .toList();
        String more = event.count() > first.size() ? ", …" : "";
        return event.count() + (event.count() == 1 ? " time, " : " times, ")
                + Words.number(event.seconds(), Unit.SECOND, 2) + " in all; from "
                + first.stream().collect(Collectors.joining(", ")) + " s" + more;
    }

    private static void agreement(Page page, ListenReport report) {
        page.heading("How far to trust it");
        page.line("Heard through a reduced model of the circuit, " + report.order() + ". Beside the full envelope:");
        if (report.agreements().isEmpty()) {
            page.line("The full envelope was not found at any of the levels tried, so the model's error is not known.");
            return;
        }
        Page.Table table = page.table();
        table.row("tone", "level", "depth, full", "reduced", "distortion, full", "reduced");
        for (Agreement a : report.agreements())
            table.row(
                    Words.number(a.tone(), Unit.HERTZ, 3),
                    Words.percent(a.level()),
                    points(a.full()),
                    points(a.reduced()),
                    points(a.fullDistortion()),
                    points(a.reducedDistortion()));
        table.end();
        page.line(String.format(
                Locale.ROOT,
                "Fitted responses: audio path within %.2f %%, sidebands within %.2f %%, 25 Hz to 15 kHz.",
                100 * report.pathError(),
                100 * report.tankError()));
        if (report.worstDepth() > FAR_OFF || report.worstDistortion() > FAR_OFF)
            page.line(String.format(
                    Locale.ROOT,
                    "The model is off by up to %.0f points of depth and %.0f of distortion: this stage remembers while it"
                            + " bends, and sounds worse than what you hear.",
                    100 * report.worstDepth(),
                    100 * report.worstDistortion()));
    }

    private static String points(double share) {
        return String.format(Locale.ROOT, "%.2f %%", 100 * share);
    }
}
