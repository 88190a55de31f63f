package galena.stopwatch;

import galena.engine.equations.Pattern;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** LU factors of a sparse matrix in an order fixed once, by Markowitz counts under a threshold; every later factorisation is a list of
 * multiplications. What a well-tuned general integrator does. */
final class ScalarLu {
    private static final double THRESHOLD = 0.01;

    private final int n;
    private final int[] slotOf;
    private final int[] pivotRow;
    private final int[] pivotColumn;
    private final int[] pivotSlot;
    private final int[][] lowerSlot;
    private final int[][] lowerRow;
    private final int[][] upperSlot;
    private final int[][] upperColumn;
    private final int[] target;
    private final double[] a;
    private final double[] y;

    /** @param typical sizes of the entries */
    ScalarLu(Pattern pattern, double[] typical) {
        n = pattern.size();
        int[][] slot = new int[n][n];
        for (int[] row : slot) Arrays.fill(row, -1);
        double[][] value = new double[n][n];
        slotOf = new int[pattern.entries()];
        int slots = 0;
        for (int e = 1; e < pattern.entries(); e++) {
            int r = pattern.row(e) - 1, c = pattern.column(e) - 1;
            if (slot[r][c] < 0) slot[r][c] = slots++;
            slotOf[e] = slot[r][c];
            value[r][c] += Math.abs(typical[e]);
        }
        scale(value);
        pivotRow = new int[n];
        pivotColumn = new int[n];
        pivotSlot = new int[n];
        lowerSlot = new int[n][];
        lowerRow = new int[n][];
        upperSlot = new int[n][];
        upperColumn = new int[n][];
        List<Integer> targets = new ArrayList<>();
        boolean[] rowDone = new boolean[n], columnDone = new boolean[n];
        for (int k = 0; k < n; k++) {
            choose(k, value, slot, rowDone, columnDone);
            int p = pivotRow[k], q = pivotColumn[k];
            pivotSlot[k] = slot[p][q];
            rowDone[p] = true;
            columnDone[q] = true;
            upperColumn[k] = open(slot[p], columnDone);
            upperSlot[k] = Arrays.stream(upperColumn[k]).map(c -> slot[p][c]).toArray();
            int[] column = new int[n];
            for (int r = 0; r < n; r++) column[r] = slot[r][q];
            lowerRow[k] = open(column, rowDone);
            lowerSlot[k] = Arrays.stream(lowerRow[k]).map(r -> slot[r][q]).toArray();
            for (int r : lowerRow[k]) {
                double factor = value[r][q] / value[p][q];
                for (int c : upperColumn[k]) {
                    if (slot[r][c] < 0) slot[r][c] = slots++;
                    value[r][c] = Math.max(value[r][c], factor * value[p][c]);
                    targets.add(slot[r][c]);
                }
            }
        }
        target = targets.stream().mapToInt(t -> t).toArray();
        a = new double[slots];
        y = new double[n];
    }

    private void scale(double[][] value) {
        for (int pass = 0; pass < 3; pass++) {
            for (int r = 0; r < n; r++) {
                double top = Arrays.stream(value[r]).max().orElse(0);
                if (top > 0) for (int c = 0; c < n; c++) value[r][c] /= top;
            }
            for (int c = 0; c < n; c++) {
                double top = 0;
                for (int r = 0; r < n; r++) top = Math.max(top, value[r][c]);
                if (top > 0) for (int r = 0; r < n; r++) value[r][c] /= top;
            }
        }
    }

    private static int[] open(int[] slots, boolean[] done) {
        List<Integer> open = new ArrayList<>();
        for (int k = 0; k < slots.length; k++) if (!done[k] && slots[k] >= 0) open.add(k);
        return open.stream().mapToInt(k -> k).toArray();
    }

    private void choose(int k, double[][] value, int[][] slot, boolean[] rowDone, boolean[] columnDone) {
        long best = Long.MAX_VALUE;
        double bestValue = 0;
        for (int c = 0; c < n; c++) {
            if (columnDone[c]) continue;
            double top = 0;
            int inColumn = 0;
            for (int r = 0; r < n; r++) {
                if (rowDone[r] || slot[r][c] < 0) continue;
                top = Math.max(top, value[r][c]);
                inColumn++;
            }
            for (int r = 0; r < n; r++) {
                if (rowDone[r] || slot[r][c] < 0 || value[r][c] == 0 || value[r][c] < THRESHOLD * top) continue;
                long cost = (long) (inColumn - 1) * (open(slot[r], columnDone).length - 1);
                if (cost < best || (cost == best && value[r][c] > bestValue)) {
                    best = cost;
                    bestValue = value[r][c];
                    pivotRow[k] = r;
                    pivotColumn[k] = c;
                }
            }
        }
        if (best == Long.MAX_VALUE) throw new IllegalStateException("the matrix is singular in structure");
    }

    /** Factors weight · c + g. */
    void factor(double weight, double[] c, double[] g) {
        Arrays.fill(a, 0);
        for (int e = 1; e < slotOf.length; e++) a[slotOf[e]] += weight * c[e] + g[e];
        int t = 0;
        for (int k = 0; k < n; k++) {
            double inverse = 1 / a[pivotSlot[k]];
            a[pivotSlot[k]] = inverse;
            int[] upper = upperSlot[k];
            for (int l : lowerSlot[k]) {
                double factor = a[l] *= inverse;
                for (int u : upper) a[target[t++]] -= factor * a[u];
            }
        }
    }

    /**
     * Solves for one right-hand side.
     *
     * @param b right-hand side by row from 1 on; read
     * @param x written, by unknown from 1 on
     */
    void solve(double[] b, double[] x) {
        System.arraycopy(b, 1, y, 0, n);
        for (int k = 0; k < n; k++) {
            double v = y[pivotRow[k]];
            int[] rows = lowerRow[k], slots = lowerSlot[k];
            for (int l = 0; l < rows.length; l++) y[rows[l]] -= a[slots[l]] * v;
        }
        for (int k = n - 1; k >= 0; k--) {
            double v = y[pivotRow[k]];
            int[] columns = upperColumn[k], slots = upperSlot[k];
            for (int u = 0; u < columns.length; u++) v -= a[slots[u]] * x[columns[u] + 1];
            x[pivotColumn[k] + 1] = v * a[pivotSlot[k]];
        }
    }
}
