package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.winding.Coil;
import galena.build.winding.Trial;
import galena.desk.console.Terminal;
import galena.packet.chart.ChartText;
import galena.packet.winding.QChart;
import java.util.Map;
import java.util.stream.Collectors;

/** A coil, or a trial winding, as a page for a terminal: turns first. */
public final class WindingText {
    private static final int FIELD_ROWS = 9;
    private static final double WORTH_NAMING = 0.03;

    private WindingText() {}

    public static void print(Coil coil, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(
                coil.turns() + " turns for " + print(coil.wanted(), Unit.HENRY, 3),
                coil.shape() + (coil.core().isEmpty() ? "" : ", " + coil.core()));
        Page.Table table = page.table().folding();
        table.row("wire", coil.wire() + "; " + print(coil.wireLength(), Unit.METRE, 3) + " and leads");
        table.row(
                "exactly",
                print(coil.exactTurns(), Unit.NUMBER, 4) + " turns; " + layers(coil.layers()) + ", "
                        + print(coil.windingLength(), Unit.METRE, 3) + ", room for " + Math.round(coil.spare())
                        + " more");
        table.row("inductance", Words.withInterval(coil.inductance()));
        table.row(
                "a turn less, more",
                print(coil.oneLess(), Unit.HENRY, 4) + ", " + print(coil.oneMore(), Unit.HENRY, 4));
        table.row("uncertain by", causes(coil));
        table.row(
                "tuned by",
                print(coil.tuning(), Unit.FARAD, 3) + " in all at " + print(coil.frequency(), Unit.HERTZ, 4));
        table.row("Q", Words.withInterval(coil.q()) + (coil.q() instanceof Figure.Known ? ", unloaded" : ""));
        if (!coil.losses().isEmpty()) table.row("lost in", shares(coil.losses()));
        table.row("resistance", print(coil.resistance(), Unit.OHM, 3) + " to direct current");
        table.row("self-capacitance", Words.withInterval(coil.selfCapacitance()));
        if (coil.selfResonance() instanceof Figure.Known)
            table.row("self-resonance", Words.withInterval(coil.selfResonance()));
        if (coil.moment() instanceof Figure.Known moment) table.row("moment per ampere", moment.text());
        table.end();
        if (!coil.curve().isEmpty()) {
            page.verbatim("\n");
            page.verbatim(ChartText.draw(QChart.of(coil), terminal.width() - 2, FIELD_ROWS, terminal.canShow("⠿┤┄")));
        }
        page.heading("Notes");
        for (String note : coil.notes()) page.line(note);
        page.line(
                "Wind a turn or two more than reckoned: taking off is easier. Dielectric, leads and screens are not in Q.");
        page.print();
    }

    public static void print(Trial trial, Terminal terminal) {
        Page page = new Page(terminal);
        page.title("Trial of " + trial.turns() + " turns", trial.shape());
        Page.Table table = page.table().folding();
        table.row("wire", trial.wire());
        table.row("measured", Words.withInterval(trial.measured()));
        trial.permeability().ifPresent(mu -> table.row("core's permeability", Words.withInterval(mu)));
        if (trial.permeability().isEmpty() && trial.reckoned() instanceof Figure.Known known)
            table.row("reckoned", print(known.value(), Unit.HENRY, 3));
        trial.wanted().ifPresent(wanted -> table.row("turns wanted", Words.withInterval(wanted)));
        trial.change().ifPresent(change -> table.row("do", change == 0 ? "leave it" : action(change)));
        trial.slide().ifPresent(slide -> table.row("or slide it", slide(slide)));
        table.end();
        page.heading("Notes");
        for (String note : trial.notes()) page.line(note);
        page.print();
    }

    private static String slide(Figure place) {
        if (place instanceof Figure.Missing missing) return "no: " + missing.reason();
        return "until its middle is " + Words.withInterval(place) + " from that of the rod";
    }

    private static String action(int change) {
        int turns = Math.abs(change);
        return (change < 0 ? "take off " : "add ") + turns + (turns == 1 ? " turn" : " turns");
    }

    private static String layers(int layers) {
        return layers == 1 ? "1 layer" : layers + " layers";
    }

    private static String causes(Coil coil) {
        double most = coil.causes().values().stream().mapToDouble(v -> v).max().orElse(0);
        return coil.causes().entrySet().stream()
                .filter(e -> e.getValue() > WORTH_NAMING * most)
                .map(e -> e.getKey() + " ±" + print(e.getValue(), Unit.HENRY, 2))
                .collect(Collectors.joining(", "));
    }

    private static String shares(Map<String, Double> shares) {
        return shares.entrySet().stream()
                .filter(e -> e.getValue() > WORTH_NAMING)
                .map(e -> e.getKey() + " " + Words.percent(e.getValue()))
                .collect(Collectors.joining(", "));
    }

    private static String print(double value, Unit unit, int figures) {
        return Engineering.print(value, unit, figures);
    }
}
