package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.reach.Emission;
import galena.build.reach.Hearing;
import galena.build.reach.Level;
import galena.build.reach.Reach;
import galena.build.reach.Rules;
import galena.build.reach.Standing;
import galena.desk.console.Terminal;
import galena.desk.console.Terminal.Tone;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartText;
import galena.packet.reach.FieldChart;
import galena.packet.reach.ListeningChart;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A reach as a page for a terminal: what is heard first, then the rules, then the field that both rest on. */
public final class ReachText {
    private static final int FIELD_ROWS = 12;

    private final Reach reach;
    private final Page page;
    private final Terminal terminal;

    private ReachText(Reach reach, Terminal terminal) {
        this.reach = reach;
        this.terminal = terminal;
        page = new Page(terminal);
    }

    public static void print(Reach reach, Terminal terminal) {
        ReachText text = new ReachText(reach, terminal);
        text.head();
        text.hearing();
        text.rules();
        text.field();
        text.harmonics();
        text.notes();
        text.page.print();
    }

    private void head() {
        page.title("Reach of " + reach.name(), reach.aerial());
        Emission carrier = reach.carrier();
        page.line("Carrier " + Engineering.print(carrier.frequency(), Unit.HERTZ, 4) + ", "
                + Words.withInterval(carrier.current()) + " rms in "
                + carrier.current().at()
                + (reach.moment() instanceof Figure.Known moment
                        ? ", magnetic moment " + Words.withInterval(moment) + " rms."
                        : "."));
    }

    private void hearing() {
        if (reach.hearing().isEmpty()) return;
        page.heading("Heard, over noise " + reach.surroundings());
        Page.Table table = page.table().folding();
        for (Hearing h : reach.hearing()) {
            h.wanted().ifPresent(at -> table.row(h.kind(), metres(at.distance()), heard(at)));
            h.neighbour().ifPresent(at -> table.row(h.kind(), "neighbour, " + metres(at.distance()), heard(at)));
            table.row(h.kind(), "pleasant to", Words.withInterval(h.pleasant()));
            if (h.usable() instanceof Figure.Known) table.row(h.kind(), "speech to", Words.withInterval(h.usable()));
        }
        table.end();
        page.line(
                "Depth " + reach.depth().text() + ". Audio over noise for sets turned to their best; "
                        + Engineering.exact(Hearing.PLEASANT, Unit.DECIBEL)
                        + " is pleasant. What is held of the classes of set is custom or recalled, unverified: yours may differ by 10 dB.");
        if (ListeningChart.hasLines(reach)) chart(ListeningChart.of(reach));
    }

    private static String heard(Hearing.Heard heard) {
        return heard.silent() ? heard.sound() : heard.sound() + ", " + Words.withInterval(heard.signalToNoise());
    }

    private void rules() {
        if (reach.rules() instanceof Rules.NotHeld none) {
            page.heading("Rules: " + none.region());
            page.line("Not held: " + none.reason() + ". Read: " + none.check() + ".");
        } else if (reach.rules() instanceof Rules.Judged judged) {
            page.heading("Rules: " + judged.region());
            judged.routes().forEach(this::route);
            page.line("Read the rules in force: " + judged.check() + ".");
            if (!judged.note().isEmpty()) page.line(capital(judged.note()) + ".");
        }
        page.line(reach.caution());
    }

    private void route(Rules.Route route) {
        String remark = route.standing() == Standing.NOT_AVAILABLE ? ", " + route.words() : "";
        page.line("By " + route.name() + ": " + route.standing() + remark
                + (route.verified() ? "" : " (unverified: a figure is recalled and not read)") + ".");
        Page.Table table = page.table().folding();
        for (Rules.Line line : told(route)) {
            table.row(
                    tone(line.standing()),
                    sign(line.standing()),
                    line.subject(),
                    line.decisive().map(ReachText::text).orElse(""),
                    words(line));
        }
        table.end();
        int untold = route.lines().size() - told(route).size();
        if (untold > 0) page.line("Inside by more: " + untold + " more lines on harmonics; --json has them.");
    }

    /** Of harmonics that are inside, the nearest to its limit by each section; everything else. */
    private static List<Rules.Line> told(Rules.Route route) {
        return route.lines().stream()
                .filter(line -> !line.outOfBand() || line.standing() != Standing.WITHIN || isTightest(line, route))
                .toList();
    }

    private static boolean isTightest(Rules.Line line, Rules.Route route) {
        return route.lines().stream()
                .filter(l -> l.outOfBand() && l.section().equals(line.section()))
                .min(Comparator.comparingDouble(
                        l -> l.decisive().map(Figure.Known::value).orElse(Double.MAX_VALUE)))
                .filter(tightest -> tightest.equals(line))
                .isPresent();
    }

    private static String words(Rules.Line line) {
        StringBuilder words = new StringBuilder();
        line.found()
                .ifPresent(
                        found -> words.append(found.low() == found.high() ? text(found) : Words.withInterval(found)));
        line.loopEquivalent().ifPresent(loop -> words.append(", 377 Ω × H ").append(loop.text()));
        line.limit().ifPresent(limit -> words.append(words.isEmpty() ? "limit " : ", limit ")
                .append(Engineering.print(limit.value(), limit.unit(), 3))
                .append(line.distance().map(d -> " at " + metres(d)).orElse("")));
        words.append(" (").append(line.section()).append(line.verified() ? ")" : ", unverified)");
        if (line.crestMargin().isPresent())
            words.append("; ")
                    .append(line.margin().map(Figure::text).orElse(""))
                    .append(" unmodulated");
        if (!line.remark().isEmpty()) words.append("; ").append(line.remark());
        return words.toString();
    }

    /** A figure that is exact stands with as many digits as a meter has. */
    private static String text(Figure.Known figure) {
        return figure.low() == figure.high() ? Engineering.print(figure.value(), figure.unit(), 3) : figure.text();
    }

    private static Tone tone(Standing standing) {
        return switch (standing) {
            case WITHIN -> Tone.GOOD;
            case TYPICALLY, OPEN, NOT_AVAILABLE -> Tone.WARNING;
            case EXCEEDED -> Tone.BAD;
        };
    }

    private static String sign(Standing standing) {
        return switch (standing) {
            case WITHIN -> "within";
            case TYPICALLY -> "may exceed";
            case OPEN -> "open";
            case EXCEEDED -> "EXCEEDS";
            case NOT_AVAILABLE -> "not open";
        };
    }

    private void field() {
        page.heading("Field of the carrier, rms, unmodulated");
        Page.Table table = page.table();
        boolean axis =
                !reach.levels().isEmpty() && reach.levels().get(0).hAxis().isPresent();
        if (axis) table.row("distance", "E broadside", "H broadside", "H on the axis", "377 Ω × H");
        else table.row("distance", "E", "H", "377 Ω × H");
        for (Level level : reach.levels()) {
            if (axis)
                table.row(
                        metres(level.distance()),
                        level.eBroadside().text(),
                        level.hBroadside().text(),
                        level.hAxis().map(Figure::text).orElse(""),
                        level.loopEquivalent().text());
            else
                table.row(
                        metres(level.distance()),
                        level.eBroadside().text(),
                        level.hBroadside().text(),
                        level.loopEquivalent().text());
        }
        table.end();
        if (axis) page.line("On its axis a loop has no E.");
        chart(FieldChart.of(reach));
    }

    private void harmonics() {
        if (reach.harmonicLevels().isEmpty()) return;
        double at = reach.harmonicLevels().get(0).level().distance();
        page.heading("Harmonics at " + metres(at) + ", rms");
        Page.Table table = page.table();
        table.row("", "frequency", "E", "greatest H", "377 Ω × H");
        for (Reach.HarmonicLevel h : reach.harmonicLevels()) {
            Optional<Figure.Known> onAxis = h.level().hAxis();
            Figure.Known broadside = h.level().hBroadside();
            Figure.Known greatest =
                    onAxis.filter(a -> a.value() > broadside.value()).orElse(broadside);
            table.row(
                    h.emission().name(),
                    Engineering.print(h.emission().frequency(), Unit.HERTZ, 4),
                    h.level().eBroadside().text(),
                    greatest.text(),
                    h.level().loopEquivalent().text());
        }
        table.end();
    }

    private void notes() {
        page.heading("Notes");
        for (String note : reach.notes()) page.line(note);
    }

    private void chart(Chart chart) {
        page.verbatim("\n");
        page.verbatim(ChartText.draw(chart, terminal.width() - 2, FIELD_ROWS, terminal.canShow("⠿┤┄")));
    }

    private static String metres(double metres) {
        return Engineering.print(metres, Unit.METRE, 3).replaceFirst("\\.0+ ", " ");
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
