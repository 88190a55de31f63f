package galena.bench.capture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The block of numbers that one dialect finds in the first lines: the longest run of lines whose numbers stand in the same
 * columns, reached up to where the numbers begin.
 */
final class Block {
    private static final int COLUMNS = 62;

    private final Dialect dialect;
    private final List<String> lines;
    private final int first;
    private final int last;
    private final List<Integer> columns;
    private final double score;

    private Block(Dialect dialect, List<String> lines, int first, int last, List<Integer> columns, double score) {
        this.dialect = dialect;
        this.lines = lines;
        this.first = first;
        this.last = last;
        this.columns = columns;
        this.score = score;
    }

    /** The best block over all dialects that the overrides allow. */
    static Optional<Block> best(List<String> lines, Overrides overrides) {
        Block best = null;
        for (Dialect dialect : dialects(lines, overrides)) {
            Optional<Block> found = find(lines, dialect);
            if (found.isPresent() && (best == null || found.get().score > best.score)) best = found.get();
        }
        return Optional.ofNullable(best);
    }

    /** The ways in which these lines can be read: a mark that stands nowhere in them makes no difference. */
    private static List<Dialect> dialects(List<String> lines, Overrides overrides) {
        List<Dialect> out = new ArrayList<>();
        boolean comma = lines.stream().anyMatch(l -> l.indexOf(',') >= 0);
        for (char separator :
                overrides.separator().map(c -> new char[] {c}).orElse(new char[] {'\t', ';', ',', '|', ' '})) {
            // without its separator a line is one cell, whichever separator that is: the tab stands for them all
            boolean needed = separator == '\t' || overrides.separator().isPresent();
            if (!needed && lines.stream().noneMatch(l -> l.indexOf(separator) >= 0)) continue;
            for (char decimal : overrides
                    .decimal()
                    .map(c -> new char[] {c})
                    .orElse(comma ? new char[] {'.', ','} : new char[] {'.'})) {
                if (separator == decimal) continue; // cannot be told apart
                out.add(new Dialect(separator, decimal, (char) 0));
                char thousands = decimal == '.' ? ',' : '.';
                if (separator != thousands && comma) out.add(new Dialect(separator, decimal, thousands));
            }
        }
        return out;
    }

    private static Optional<Block> find(List<String> lines, Dialect dialect) {
        long[] masks = new long[lines.size()];
        int[] texts = new int[lines.size()];
        for (int k = 0; k < masks.length; k++) {
            List<String> cells = dialect.cells(lines.get(k));
            for (int c = 0; c < cells.size() && c < COLUMNS; c++) {
                if (cells.get(c).isEmpty()) continue;
                if (Double.isNaN(dialect.number(cells.get(c)))) texts[k]++;
                else masks[k] |= 1L << c;
            }
        }
        int bestFrom = -1, bestCount = 0, from = -1, count = 0;
        long mask = 0;
        for (int k = 0; k < masks.length; k++) {
            if (lines.get(k).isBlank()) continue;
            if (masks[k] == 0 || masks[k] != mask || from < 0) {
                mask = masks[k];
                from = k;
                count = 0;
            }
            count++;
            if (mask != 0 && count > bestCount) {
                bestCount = count;
                bestFrom = from;
            }
        }
        if (bestFrom < 0) return Optional.empty();
        return Optional.of(reach(lines, dialect, masks, texts, bestFrom));
    }

    private static Block reach(List<String> lines, Dialect dialect, long[] masks, int[] texts, int from) {
        long mask = masks[from], left = (mask & -mask) - 1; // columns left of the first number
        int first = from, last = from, rows = 0, impure = 0;
        while (first > 0 && belongs(masks[first - 1], mask, left)) first--;
        for (int k = first; k < masks.length; k++) {
            if (lines.get(k).isBlank()) continue;
            if (!belongs(masks[k], mask, left)) break;
            last = k;
            rows++;
            if (texts[k] > 0 && left == 0) impure++;
        }
        List<Integer> columns = new ArrayList<>();
        for (int c = 0; c < COLUMNS; c++) if ((mask >> c & 1) != 0) columns.add(c);
        return new Block(dialect, lines, first, last, columns, score(lines, dialect, first, rows, impure, columns));
    }

    private static boolean belongs(long row, long mask, long left) {
        return (row & mask) == mask && (row & ~mask & ~left) == 0;
    }

    private static double score(
            List<String> lines, Dialect dialect, int first, int rows, int impure, List<Integer> columns) {
        double score = rows * (impure > rows / 4 ? 0.5 : 1);
        if (columns.size() < 2) score *= 0.9;
        if (dialect.separator() == ' ') score *= 0.99;
        if (dialect.thousands() != 0) score *= 0.98;
        if (dialect.separator() == ',' && looksLikeDecimals(lines, dialect, first, rows)) score *= 0.5;
        if (steady(lines, dialect, first, rows, columns)) score *= 1.2;
        return score;
    }

    /** Whole numbers only, two to a line and the second never signed: one decimal comma, read as a separator. */
    private static boolean looksLikeDecimals(List<String> lines, Dialect dialect, int first, int rows) {
        for (int k = first; k < Math.min(lines.size(), first + rows); k++) {
            List<String> cells = dialect.cells(lines.get(k));
            if (cells.size() != 2
                    || !cells.get(0).matches("[-+]?\\d+")
                    || !cells.get(1).matches("\\d+([eE][-+]?\\d+)?")) {
                return lines.get(k).isBlank();
            }
        }
        return true;
    }

    private static boolean steady(List<String> lines, Dialect dialect, int first, int rows, List<Integer> columns) {
        int from = Math.min(first + 2, lines.size()), to = Math.min(lines.size(), first + Math.min(rows, 40));
        for (int column : columns) {
            double previous = Double.NaN, step = Double.NaN;
            int steps = 0;
            boolean constant = true;
            for (int k = from; k < to && constant; k++) {
                List<String> cells = dialect.cells(lines.get(k));
                if (cells.size() <= column) continue;
                double x = dialect.number(cells.get(column));
                if (steps++ > 0) {
                    double d = x - previous;
                    if (steps == 2) step = d;
                    constant = d > 0 && Math.abs(d - step) < 0.3 * step;
                }
                previous = x;
            }
            if (constant && steps > 3) return true;
        }
        return false;
    }

    Dialect dialect() {
        return dialect;
    }

    /** Line of the first data row, from 0. */
    int first() {
        return first;
    }

    /** Line of the last data row among those looked at, from 0. */
    int last() {
        return last;
    }

    /** Columns that hold numbers, from 0. */
    List<Integer> columns() {
        return columns;
    }

    /** Values of one column in the rows looked at. */
    double[] values(int column) {
        double[] out = new double[last - first + 1];
        int count = 0;
        for (int k = first; k <= last; k++) {
            if (!lines.get(k).isBlank()) out[count++] = dialect.number(cell(k, column));
        }
        return Arrays.copyOf(out, count);
    }

    /** A cell as text, empty if the line is shorter. */
    String cell(int line, int column) {
        List<String> cells = dialect.cells(lines.get(line));
        return column < cells.size() ? cells.get(column) : "";
    }

    List<String> lines() {
        return lines;
    }
}
