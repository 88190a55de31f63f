package galena.engine.linear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The order of elimination of a sparse matrix and every index that the elimination will touch, found once from the pattern
 * and the sizes of typical values: Markowitz counts among the pivots that pass a threshold (H. M. Markowitz, Management
 * Science 3 (1957) 255; I. S. Duff, A. M. Erisman and J. K. Reid, Direct Methods for Sparse Matrices, Oxford 1986, ch. 7).
 *
 * <p>A nodal matrix of thirty unknowns has some four entries a row and fills in little, so that the elimination is a few
 * hundred block operations; a dense one of three stages would be two hundred times that. The order stays valid while the
 * sizes keep their proportions to within the threshold; {@link BlockLu#growth} tells when they have not. Immutable.
 */
public final class BlockPlan {
    /** A pivot may be this much smaller than the largest of its column, after scaling. */
    private static final double THRESHOLD = 0.02;

    private static final int SCALINGS = 4;

    final int size;
    final int slots;
    final int[] entrySlot;
    final int[] pivotRow;
    final int[] pivotColumn;
    final int[] pivotSlot;
    final int[] lowerStart;
    final int[] lowerSlot;
    final int[] lowerRow;
    final int[] upperStart;
    final int[] upperSlot;
    final int[] upperColumn;
    final int[] target;

    private BlockPlan(Elimination e, int[] entrySlot) {
        size = e.size;
        slots = e.slotCount;
        this.entrySlot = entrySlot;
        pivotRow = e.pivotRow;
        pivotColumn = e.pivotColumn;
        pivotSlot = e.pivotSlot;
        lowerStart = e.lowerStart;
        lowerSlot = ints(e.lowerSlot);
        lowerRow = ints(e.lowerRow);
        upperStart = e.upperStart;
        upperSlot = ints(e.upperSlot);
        upperColumn = ints(e.upperColumn);
        target = ints(e.target);
    }

    /**
     * @param size rows and columns
     * @param rows row of each entry, 0-based
     * @param columns column of each entry, 0-based
     * @param typical a typical magnitude of each entry; zero entries are kept in the pattern but never chosen as pivots
     * @throws SingularMatrix when some row or column has nothing left to pivot on
     */
    public static BlockPlan of(int size, int[] rows, int[] columns, double[] typical) {
        Elimination e = new Elimination(size);
        int[] entrySlot = new int[rows.length];
        for (int k = 0; k < rows.length; k++) entrySlot[k] = e.enter(rows[k], columns[k], Math.abs(typical[k]));
        e.scale();
        for (int step = 0; step < size; step++) e.eliminate(step);
        return new BlockPlan(e, entrySlot);
    }

    /** Block multiplications in one factorisation. */
    public int factorOperations() {
        return target.length + lowerSlot.length;
    }

    /** Blocks held, fill included. */
    public int blocks() {
        return slots;
    }

    private static int[] ints(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    /** The elimination carried out on magnitudes, recording what it touches. */
    private static final class Elimination {
        final int size;
        final double[][] value;
        final int[][] slot;
        final boolean[] rowDone;
        final boolean[] columnDone;
        int slotCount;
        final int[] pivotRow;
        final int[] pivotColumn;
        final int[] pivotSlot;
        final int[] lowerStart;
        final int[] upperStart;
        final List<Integer> lowerSlot = new ArrayList<>();
        final List<Integer> lowerRow = new ArrayList<>();
        final List<Integer> upperSlot = new ArrayList<>();
        final List<Integer> upperColumn = new ArrayList<>();
        final List<Integer> target = new ArrayList<>();

        Elimination(int size) {
            this.size = size;
            value = new double[size][size];
            slot = new int[size][size];
            for (int[] row : slot) Arrays.fill(row, -1);
            rowDone = new boolean[size];
            columnDone = new boolean[size];
            pivotRow = new int[size];
            pivotColumn = new int[size];
            pivotSlot = new int[size];
            lowerStart = new int[size + 1];
            upperStart = new int[size + 1];
        }

        int enter(int row, int column, double magnitude) {
            if (slot[row][column] < 0) slot[row][column] = slotCount++;
            value[row][column] += magnitude;
            return slot[row][column];
        }

        /** Rows and columns to unit maximum, alternately: volts and amperes have no common measure otherwise. */
        void scale() {
            for (int pass = 0; pass < SCALINGS; pass++) {
                for (int r = 0; r < size; r++) {
                    double top = 0;
                    for (int c = 0; c < size; c++) top = Math.max(top, value[r][c]);
                    if (top > 0) for (int c = 0; c < size; c++) value[r][c] /= top;
                }
                for (int c = 0; c < size; c++) {
                    double top = 0;
                    for (int r = 0; r < size; r++) top = Math.max(top, value[r][c]);
                    if (top > 0) for (int r = 0; r < size; r++) value[r][c] /= top;
                }
            }
        }

        void eliminate(int step) {
            choose(step);
            int p = pivotRow[step], q = pivotColumn[step];
            pivotSlot[step] = slot[p][q];
            lowerStart[step] = lowerSlot.size();
            upperStart[step] = upperSlot.size();
            rowDone[p] = true;
            columnDone[q] = true;
            for (int c = 0; c < size; c++) {
                if (!columnDone[c] && slot[p][c] >= 0) {
                    upperSlot.add(slot[p][c]);
                    upperColumn.add(c);
                }
            }
            for (int r = 0; r < size; r++) {
                if (rowDone[r] || slot[r][q] < 0) continue;
                lowerSlot.add(slot[r][q]);
                lowerRow.add(r);
                double factor = value[r][q] / value[p][q];
                for (int k = upperStart[step]; k < upperSlot.size(); k++) {
                    int c = upperColumn.get(k);
                    if (slot[r][c] < 0) slot[r][c] = slotCount++;
                    // magnitudes only: what could cancel is not counted on
                    value[r][c] = Math.max(value[r][c], factor * value[p][c]);
                    target.add(slot[r][c]);
                }
            }
            lowerStart[step + 1] = lowerSlot.size();
            upperStart[step + 1] = upperSlot.size();
        }

        private void choose(int step) {
            long best = Long.MAX_VALUE;
            double bestValue = 0;
            for (int c = 0; c < size; c++) {
                if (columnDone[c]) continue;
                double top = 0;
                int columnCount = 0;
                for (int r = 0; r < size; r++) {
                    if (rowDone[r] || slot[r][c] < 0) continue;
                    top = Math.max(top, value[r][c]);
                    columnCount++;
                }
                for (int r = 0; r < size; r++) {
                    if (rowDone[r] || slot[r][c] < 0 || value[r][c] == 0 || value[r][c] < THRESHOLD * top) continue;
                    long cost = (long) (columnCount - 1) * (rowCount(r) - 1);
                    if (cost < best || (cost == best && value[r][c] > bestValue)) {
                        best = cost;
                        bestValue = value[r][c];
                        pivotRow[step] = r;
                        pivotColumn[step] = c;
                    }
                }
            }
            if (best == Long.MAX_VALUE) throw new SingularMatrix(step, size);
        }

        private int rowCount(int r) {
            int count = 0;
            for (int c = 0; c < size; c++) if (!columnDone[c] && slot[r][c] >= 0) count++;
            return count;
        }
    }
}
