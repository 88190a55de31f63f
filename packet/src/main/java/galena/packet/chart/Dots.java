package galena.packet.chart;

import java.util.Arrays;

/**
 * A grid of character cells on which lines are drawn: eight dots to a cell where braille can be shown, one sign to a cell where
 * not. Dots count from the top left. Changed in place.
 */
final class Dots {
    private static final int FIRST_BRAILLE = 0x2800;
    /** Bit of a dot by column and row in its cell, as Unicode numbers braille dots. */
    private static final int[][] BIT = {{0x01, 0x02, 0x04, 0x40}, {0x08, 0x10, 0x20, 0x80}};

    private final boolean braille;
    private final int columns;
    private final int rows;
    private final int[][] bits;
    private final char[][] signs;

    Dots(int columns, int rows, boolean braille) {
        this.columns = columns;
        this.rows = rows;
        this.braille = braille;
        bits = new int[rows][columns];
        signs = new char[rows][columns];
        for (char[] row : signs) Arrays.fill(row, ' ');
    }

    int across() {
        return braille ? 2 * columns : columns;
    }

    int down() {
        return braille ? 4 * rows : rows;
    }

    int columnOf(double place) {
        return clamp((int) Math.round(place * (columns - 1)), columns);
    }

    int rowOf(double place) {
        return clamp((int) Math.round((1 - place) * (rows - 1)), rows);
    }

    /** A line between two places, 0..1 to the right and up, in dots or in {@code sign}. */
    void line(double x0, double y0, double x1, double y1, char sign) {
        double ax = x0 * (across() - 1), ay = (1 - y0) * (down() - 1);
        double bx = x1 * (across() - 1), by = (1 - y1) * (down() - 1);
        int steps = Math.max(1, (int) Math.ceil(Math.max(Math.abs(bx - ax), Math.abs(by - ay))));
        for (int k = 0; k <= steps; k++) {
            double t = (double) k / steps;
            int column = clamp((int) Math.round(ax + t * (bx - ax)), across());
            int row = clamp((int) Math.round(ay + t * (by - ay)), down());
            if (braille) bits[row / 4][column / 2] |= BIT[column % 2][row % 4];
            else signs[row][column] = sign;
        }
    }

    /** A sign in a cell, over whatever is drawn there. */
    void put(int column, int row, char sign) {
        signs[row][column] = sign;
    }

    /** A sign in every cell of a row that is still empty. */
    void ruleRow(int row, char sign) {
        for (int c = 0; c < columns; c++) if (isEmpty(c, row)) signs[row][c] = sign;
    }

    /** A sign in every cell of a column that is still empty. */
    void ruleColumn(int column, char sign) {
        for (int r = 0; r < rows; r++) if (isEmpty(column, r)) signs[r][column] = sign;
    }

    private boolean isEmpty(int column, int row) {
        return bits[row][column] == 0 && signs[row][column] == ' ';
    }

    String row(int row) {
        StringBuilder out = new StringBuilder(columns);
        for (int c = 0; c < columns; c++) {
            if (signs[row][c] != ' ') out.append(signs[row][c]);
            else if (bits[row][c] != 0) out.append((char) (FIRST_BRAILLE + bits[row][c]));
            else out.append(' ');
        }
        return out.toString();
    }

    private static int clamp(int value, int size) {
        return Math.max(0, Math.min(size - 1, value));
    }
}
