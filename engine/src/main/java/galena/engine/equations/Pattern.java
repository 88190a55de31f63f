package galena.engine.equations;

import java.util.Arrays;

/** The sparse pattern shared by G and C. Entry 0 is ground's and belongs to no row. */
public final class Pattern {
    private final int size;
    private final int[] rows;
    private final int[] columns;

    Pattern(int size, int[] rows, int[] columns) {
        this.size = size;
        this.rows = rows;
        this.columns = columns;
    }

    /** Unknowns; rows and columns are numbered 1 to this. */
    public int size() {
        return size;
    }

    /** Entries, the unused entry 0 included. */
    public int entries() {
        return rows.length;
    }

    public int row(int entry) {
        return rows[entry];
    }

    public int column(int entry) {
        return columns[entry];
    }

    /** True when the other pattern has the same entries in the same order, so that a plan for one serves the other. */
    public boolean sameAs(Pattern other) {
        return size == other.size && Arrays.equals(rows, other.rows) && Arrays.equals(columns, other.columns);
    }
}
