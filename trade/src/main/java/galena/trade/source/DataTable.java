package galena.trade.source;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A table of comma-separated text (RFC 4180) shipped with Galena: comment lines start with #, the first other line
 * names the columns.
 */
public final class DataTable {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setCommentMarker('#')
            .setHeader()
            .setSkipHeaderRecord(true)
            .setIgnoreEmptyLines(true)
            .get();

    private final String name;
    private final List<CSVRecord> records;

    private DataTable(String name, List<CSVRecord> records) {
        this.name = name;
        this.records = records;
    }

    /**
     * @param beside a class in the package of the resource
     * @param name file name of the resource
     */
    public static DataTable resource(Class<?> beside, String name) {
        InputStream in = beside.getResourceAsStream(name);
        if (in == null) throw new IllegalStateException("the table " + name + " is missing from the program");
        try (Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8);
                CSVParser parser = FORMAT.parse(reader)) {
            return new DataTable(name, parser.getRecords());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public List<Row> rows() {
        return records.stream().map(Row::new).toList();
    }

    /** One row; its columns are asked for by name. */
    public final class Row {
        private final CSVRecord record;

        private Row(CSVRecord record) {
            this.record = record;
        }

        /** The cell as written, without outer blanks; empty where the table says nothing. */
        public String text(String column) {
            if (!record.isMapped(column) || !record.isSet(column)) throw fault(column, "no such column in this row");
            return record.get(column).strip();
        }

        /** The cell as a number, none if empty. */
        public OptionalDouble number(String column) {
            String text = text(column);
            if (text.isEmpty()) return OptionalDouble.empty();
            try {
                return OptionalDouble.of(Double.parseDouble(text));
            } catch (NumberFormatException e) {
                throw fault(column, "\"" + text + "\" is not a number");
            }
        }

        /** The cell as a number that has to be there. */
        public double required(String column) {
            return number(column).orElseThrow(() -> fault(column, "a number is needed"));
        }

        /** From the columns source, date, basis, where, note. */
        public Provenance provenance() {
            try {
                return new Provenance(
                        text("source"), text("date"), Basis.named(text("basis")), text("where"), text("note"));
            } catch (IllegalArgumentException e) {
                throw fault("basis", String.valueOf(e.getMessage()));
            }
        }

        /** The exception to throw when this cell can't be right. */
        public IllegalStateException fault(String column, String what) {
            return new IllegalStateException(
                    name + ", record " + record.getRecordNumber() + ", " + column + ": " + what);
        }
    }
}
