package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.predict.Trim;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;

/** Where an adjustment has to stand, in a few lines. */
public final class TrimText {
    private static final int FIGURES = 4;

    private TrimText() {}

    public static void print(Trim.Answer answer, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(
                answer.part() + " for a " + answer.wanted().name() + " of "
                        + Words.number(answer.wanted().value(), answer.wanted().unit(), FIGURES),
                "typical parts");
        if (answer.position().isEmpty()) {
            page.line("Not found: " + answer.end() + ". Start nearer with --set, or ask galena predict what stops it.");
            page.print();
            return;
        }
        double position = answer.position().get();
        String place = Words.number(position, Unit.FRACTION, FIGURES);
        if (answer.end() == Trim.End.MET) {
            page.line("Set " + answer.part() + " to " + place + " of its travel; it stands at "
                    + Words.number(answer.before(), Unit.FRACTION, FIGURES) + ".");
        } else {
            page.line("No position of " + answer.part() + " gives it: " + answer.end() + ". Nearest is " + place
                    + " of the travel, with " + Words.alone(answer.found()) + ".");
        }
        page.verbatim("\n");
        Page.Table table = page.table();
        table.row(answer.found().quantity(), Words.alone(answer.found()));
        if (!(answer.wanted() instanceof Trim.Carrier)) row(table, answer.carrier());
        table.end();
        page.print();
    }

    private static void row(Page.Table table, Figure figure) {
        table.row(figure.quantity(), Words.alone(figure));
    }
}
