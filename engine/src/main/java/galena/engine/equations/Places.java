package galena.engine.equations;

import galena.engine.linear.BlockPlan;
import java.util.Arrays;

/** Where a circuit's charges and matrix entries lie, as arrays for sweeps over many points. Its arrays are not to be changed. */
public final class Places {
    /** Weight of q's rate against i when the sizes of a typical matrix are guessed: the largest coefficient of Radau's method. */
    private static final double RATE_WEIGHT = 4;

    /** Rows that can hold charge or flux, ascending. */
    public final int[] charged;

    /** Each row's place among those, −1 without. */
    public final int[] chargeIndex;

    /** Row of each entry of the pattern; index 0 unused. */
    public final int[] entryRow;

    /** Column of each entry of the pattern; index 0 unused. */
    public final int[] entryColumn;

    private final int size;

    public Places(Equations equations) {
        size = equations.size();
        charged = equations.chargedRows();
        chargeIndex = new int[equations.stride()];
        Arrays.fill(chargeIndex, -1);
        for (int m = 0; m < charged.length; m++) chargeIndex[charged[m]] = m;
        Pattern pattern = equations.pattern();
        entryRow = new int[pattern.entries()];
        entryColumn = new int[pattern.entries()];
        for (int e = 1; e < entryRow.length; e++) {
            entryRow[e] = pattern.row(e);
            entryColumn[e] = pattern.column(e);
        }
    }

    /** Sizes of the pattern's entries, all zero, for {@link #raise} and {@link #plan}. */
    public double[] sizes() {
        return new double[entryRow.length - 1];
    }

    /**
     * Raises sizes to those that a matrix has at a point.
     *
     * @param perSecond of the mesh: intervals a second
     */
    public void raise(double[] sizes, Evaluation at, double perSecond) {
        for (int e = 1; e < entryRow.length; e++) {
            double size = Math.abs(at.g[e]) + RATE_WEIGHT * perSecond * Math.abs(at.c[e]);
            sizes[e - 1] = Math.max(sizes[e - 1], size);
        }
    }

    /** The order of elimination for matrices of such sizes. */
    public BlockPlan plan(double[] sizes) {
        int[] rows = new int[sizes.length], columns = new int[sizes.length];
        for (int e = 0; e < sizes.length; e++) {
            rows[e] = entryRow[e + 1] - 1;
            columns[e] = entryColumn[e + 1] - 1;
        }
        return BlockPlan.of(size, rows, columns, sizes);
    }
}
