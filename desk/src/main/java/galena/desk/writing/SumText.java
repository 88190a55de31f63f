package galena.desk.writing;

import galena.build.figure.Figure;
import galena.desk.console.Terminal;

/** A sum done at the bench, as a few lines. */
public final class SumText {
    private SumText() {}

    public static void print(Sum sum, Terminal terminal) {
        Page page = new Page(terminal);
        page.title(sum.title(), "");
        Page.Table table = page.table().folding();
        for (Figure figure : sum.figures()) table.row(figure.quantity(), Words.withInterval(figure));
        table.end();
        sum.remarks().forEach(page::line);
        page.print();
    }
}
