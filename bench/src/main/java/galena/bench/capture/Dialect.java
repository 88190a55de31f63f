package galena.bench.capture;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * How numbers stand in a line.
 *
 * @param separator between cells; a space stands for any run of them
 * @param decimal mark
 * @param thousands mark between groups of three, or 0
 */
record Dialect(char separator, char decimal, char thousands) {
    /** Cells of a line, trimmed, without their quotes. */
    List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int k = 0; k < line.length(); k++) {
            char c = line.charAt(k);
            if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && separates(c)) {
                if (separator != ' ' || cell.length() > 0)
                    cells.add(cell.toString().trim());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        if (separator != ' ' || cell.length() > 0) cells.add(cell.toString().trim());
        return cells;
    }

    private boolean separates(char c) {
        return c == separator || (separator == ' ' && c == '\t');
    }

    /** The number in a cell, or NaN. */
    double number(String cell) {
        byte[] bytes = cell.getBytes(StandardCharsets.UTF_8);
        return Numbers.parse(bytes, 0, bytes.length, (byte) decimal, (byte) thousands);
    }

    /** In words, for the builder. */
    String words() {
        String name =
                switch (separator) {
                    case '\t' -> "tab";
                    case ' ' -> "spaces";
                    default -> "\"" + separator + "\"";
                };
        return "cells parted by " + name + ", decimal " + (decimal == ',' ? "comma" : "point")
                + (thousands == 0 ? "" : ", thousands marked");
    }
}
