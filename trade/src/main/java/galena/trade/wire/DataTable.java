package galena.trade.wire;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Rows of a data file that ships beside a class: semicolons between columns, {@code #} before remarks, the first other
 * line names the columns. A missing or ragged file is a fault of the program, not of its user.
 */
public final class DataTable {
    private DataTable() {}

    /**
     * @param owner class whose package holds the file
     * @param file name of the file
     * @param columns how many columns every row must have
     * @return one array of trimmed cells for each row, the names of the columns left out
     */
    public static List<String[]> rows(Class<?> owner, String file, int columns) {
        try (InputStream stream = owner.getResourceAsStream(file)) {
            if (stream == null) throw new IllegalStateException("data file " + file + " is not packed with " + owner);
            BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
            return reader.lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .skip(1)
                    .map(line -> cells(line, file, columns))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String[] cells(String line, String file, int columns) {
        String[] cells = line.split(";", -1);
        if (cells.length != columns) {
            throw new IllegalStateException(
                    file + ": a row has " + cells.length + " cells, not " + columns + ": " + line);
        }
        for (int i = 0; i < cells.length; i++) cells[i] = cells[i].strip();
        return cells;
    }
}
