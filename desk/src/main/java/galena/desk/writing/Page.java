package galena.desk.writing;

import galena.desk.console.Terminal;
import galena.desk.console.Terminal.Tone;
import java.util.ArrayList;
import java.util.List;

/**
 * A page for a terminal: headings, lines folded at the margin, and tables whose columns line up as this terminal shows them.
 * Collects; {@link #print} hands everything over at once.
 */
final class Page {
    private static final int GAP = 2;

    private final Terminal terminal;
    private final StringBuilder out = new StringBuilder();

    Page(Terminal terminal) {
        this.terminal = terminal;
    }

    void print() {
        terminal.print(out.toString().stripTrailing());
    }

    /** A title with a remark set against the right margin, or on the next line where it doesn't fit. */
    void title(String title, String remark) {
        if (remark.isEmpty()) {
            out.append(terminal.tone(Tone.STRONG, shown(title))).append('\n');
            return;
        }
        int gap = terminal.width() - width(title) - width(remark);
        out.append(terminal.tone(Tone.STRONG, shown(title)));
        out.append(gap < GAP ? "\n" : " ".repeat(gap)).append(shown(remark)).append('\n');
    }

    void heading(String words) {
        out.append('\n').append(terminal.tone(Tone.STRONG, shown(words))).append('\n');
    }

    /** A paragraph, indented, folded at the margin; lines after the first hang by two more. */
    void line(String words) {
        out.append("  ");
        fold(shown(words), 2, 4);
    }

    /** Text that must stay as it is, such as a drawing. */
    void verbatim(String text) {
        out.append(text);
    }

    /** Folds words at the margin; the first line has {@code used} columns already, the others are indented by {@code hanging}. */
    private void fold(String words, int used, int hanging) {
        int at = used;
        boolean first = true;
        for (String word : words.strip().split(" +")) {
            int length = word.codePointCount(0, word.length());
            if (!first && at + 1 + length > terminal.width()) {
                out.append('\n').append(" ".repeat(hanging));
                at = hanging;
                first = true;
            }
            if (!first) {
                out.append(' ');
                at++;
            }
            out.append(word);
            at += length;
            first = false;
        }
        out.append('\n');
    }

    /** A table that rows are added to and that is laid out when it is complete. */
    Table table() {
        return new Table();
    }

    private String shown(String text) {
        return terminal.shown(text);
    }

    private int width(String text) {
        String shown = shown(text);
        return shown.codePointCount(0, shown.length());
    }

    /** Rows of cells. The last column may run on: it is folded at the margin under its own start. */
    final class Table {
        private record Row(List<String> cells, List<Tone> tones) {}

        private final List<Row> rows = new ArrayList<>();
        private boolean lastFolds;

        /** A row in plain ink. */
        Table row(String... cells) {
            rows.add(new Row(List.of(cells), List.of()));
            return this;
        }

        /** A row whose first cell is in a tone. */
        Table row(Tone tone, String... cells) {
            rows.add(new Row(List.of(cells), List.of(tone)));
            return this;
        }

        /** Lets the last column fold at the margin. */
        Table folding() {
            lastFolds = true;
            return this;
        }

        void end() {
            int columns = rows.stream().mapToInt(r -> r.cells().size()).max().orElse(0);
            int[] widths = new int[columns];
            for (Row row : rows)
                for (int c = 0; c < row.cells().size(); c++)
                    widths[c] = Math.max(widths[c], width(row.cells().get(c)));
            for (Row row : rows) lay(row, widths);
        }

        private void lay(Row row, int[] widths) {
            StringBuilder line = new StringBuilder("  ");
            int at = GAP;
            for (int c = 0; c < row.cells().size(); c++) {
                String cell = shown(row.cells().get(c));
                if (c == widths.length - 1 && lastFolds) {
                    out.append(line);
                    Page.this.fold(cell, at, at);
                    return;
                }
                line.append(
                        c == 0 && !row.tones().isEmpty()
                                ? terminal.tone(row.tones().get(0), cell)
                                : cell);
                line.append(" ".repeat(widths[c] - width(cell) + GAP));
                at += widths[c] + GAP;
            }
            out.append(line.toString().stripTrailing()).append('\n');
        }
    }
}
