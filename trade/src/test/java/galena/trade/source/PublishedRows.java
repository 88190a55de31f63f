package galena.trade.source;

import galena.proof.Kind;
import java.util.List;

/** Tables of published values among the tests' resources, read by column name. */
public final class PublishedRows {
    private PublishedRows() {}

    /** All rows of a table under {@code /published}. */
    public static List<DataTable.Row> of(String file) {
        return DataTable.resource(PublishedRows.class, "/published/" + file).rows();
    }

    /** What stands behind a row, in the words of the validation page. */
    public static Kind kind(DataTable.Row row, Kind otherwise) {
        return row.text("basis").equals("memory") ? Kind.MEMORY : otherwise;
    }
}
