package galena.engine.linear;

/**
 * LU factors of one matrix of 3-by-3 blocks in the order of a {@link BlockPlan}. The matrix is entered block by block, then
 * factored in place; right-hand sides come one at a time or many side by side. Nothing allocates after construction. One
 * per thread and matrix.
 *
 * <p>Many right-hand sides are rows of arrays of one width, each an array of its own: the innermost loops then run over one
 * index for all operands, which is what lets the compiler use vector instructions.
 */
public final class BlockLu {
    private static final int S = 3;
    private static final int BLOCK = S * S;

    private final BlockPlan plan;
    private final double[] a;
    private final double[] single;
    private double growth;

    public BlockLu(BlockPlan plan) {
        this.plan = plan;
        a = new double[plan.slots * BLOCK];
        single = new double[plan.size * S];
    }

    public BlockPlan plan() {
        return plan;
    }

    /** Sets all blocks to zero. */
    public void clear() {
        java.util.Arrays.fill(a, 0);
    }

    /** Where the block of an entry starts in {@link #values}; a block is stored by rows. */
    public int at(int entry) {
        return plan.entrySlot[entry] * BLOCK;
    }

    /** The blocks, to be added to before {@link #factor}. */
    public double[] values() {
        return a;
    }

    /** Factors what was entered. @throws SingularMatrix when a pivot block has no inverse */
    public void factor() {
        BlockPlan p = plan;
        double largest = 0;
        int t = 0;
        for (int k = 0; k < p.size; k++) {
            invert(p.pivotSlot[k] * BLOCK, k);
            int upperFrom = p.upperStart[k], upperTo = p.upperStart[k + 1];
            for (int l = p.lowerStart[k]; l < p.lowerStart[k + 1]; l++) {
                int at = p.lowerSlot[l] * BLOCK;
                multiplyInPlace(at, p.pivotSlot[k] * BLOCK);
                largest = Math.max(largest, Math.abs(a[at]));
                for (int u = upperFrom; u < upperTo; u++)
                    subtractProduct(p.target[t++] * BLOCK, at, p.upperSlot[u] * BLOCK);
            }
        }
        growth = largest;
    }

    /** The largest multiplier of the last factorisation (first of each block): far above 1/threshold, the plan is stale. */
    public double growth() {
        return growth;
    }

    /** a[at] ← a[at] · a[right]. */
    private void multiplyInPlace(int at, int right) {
        double[] m = a;
        double b00 = m[right], b01 = m[right + 1], b02 = m[right + 2];
        double b10 = m[right + 3], b11 = m[right + 4], b12 = m[right + 5];
        double b20 = m[right + 6], b21 = m[right + 7], b22 = m[right + 8];
        for (int row = at; row < at + BLOCK; row += S) {
            double x = m[row], y = m[row + 1], z = m[row + 2];
            m[row] = x * b00 + y * b10 + z * b20;
            m[row + 1] = x * b01 + y * b11 + z * b21;
            m[row + 2] = x * b02 + y * b12 + z * b22;
        }
    }

    /** a[at] ← a[at] − a[left] · a[right]. */
    private void subtractProduct(int at, int left, int right) {
        double[] m = a;
        double b00 = m[right], b01 = m[right + 1], b02 = m[right + 2];
        double b10 = m[right + 3], b11 = m[right + 4], b12 = m[right + 5];
        double b20 = m[right + 6], b21 = m[right + 7], b22 = m[right + 8];
        for (int row = 0; row < BLOCK; row += S) {
            double x = m[left + row], y = m[left + row + 1], z = m[left + row + 2];
            m[at + row] -= x * b00 + y * b10 + z * b20;
            m[at + row + 1] -= x * b01 + y * b11 + z * b21;
            m[at + row + 2] -= x * b02 + y * b12 + z * b22;
        }
    }

    /** a[at] ← its inverse, by cofactors: the blocks are far from singular or the plan is wrong. */
    private void invert(int at, int step) {
        double[] m = a;
        double a0 = m[at], a1 = m[at + 1], a2 = m[at + 2];
        double a3 = m[at + 3], a4 = m[at + 4], a5 = m[at + 5];
        double a6 = m[at + 6], a7 = m[at + 7], a8 = m[at + 8];
        double c0 = a4 * a8 - a5 * a7, c1 = a5 * a6 - a3 * a8, c2 = a3 * a7 - a4 * a6;
        double determinant = a0 * c0 + a1 * c1 + a2 * c2;
        double inverse = 1 / determinant;
        if (determinant == 0 || !Double.isFinite(inverse)) throw new SingularMatrix(step, plan.size);
        m[at] = c0 * inverse;
        m[at + 1] = (a2 * a7 - a1 * a8) * inverse;
        m[at + 2] = (a1 * a5 - a2 * a4) * inverse;
        m[at + 3] = c1 * inverse;
        m[at + 4] = (a0 * a8 - a2 * a6) * inverse;
        m[at + 5] = (a2 * a3 - a0 * a5) * inverse;
        m[at + 6] = c2 * inverse;
        m[at + 7] = (a1 * a6 - a0 * a7) * inverse;
        m[at + 8] = (a0 * a4 - a1 * a3) * inverse;
    }

    /**
     * Solves for one right-hand side.
     *
     * @param b read and overwritten; stage j of row r at 3r + j
     * @param x written; stage j of column c at 3c + j
     */
    public void solve(double[] b, double[] x) {
        BlockPlan p = plan;
        double[] m = a;
        for (int k = 0; k < p.size; k++) {
            int from = p.pivotRow[k] * S;
            double y0 = b[from], y1 = b[from + 1], y2 = b[from + 2];
            for (int l = p.lowerStart[k]; l < p.lowerStart[k + 1]; l++) {
                int at = p.lowerSlot[l] * BLOCK, to = p.lowerRow[l] * S;
                b[to] -= m[at] * y0 + m[at + 1] * y1 + m[at + 2] * y2;
                b[to + 1] -= m[at + 3] * y0 + m[at + 4] * y1 + m[at + 5] * y2;
                b[to + 2] -= m[at + 6] * y0 + m[at + 7] * y1 + m[at + 8] * y2;
            }
        }
        for (int k = p.size - 1; k >= 0; k--) {
            int from = p.pivotRow[k] * S;
            double y0 = b[from], y1 = b[from + 1], y2 = b[from + 2];
            for (int u = p.upperStart[k]; u < p.upperStart[k + 1]; u++) {
                int at = p.upperSlot[u] * BLOCK, column = p.upperColumn[u] * S;
                double x0 = x[column], x1 = x[column + 1], x2 = x[column + 2];
                y0 -= m[at] * x0 + m[at + 1] * x1 + m[at + 2] * x2;
                y1 -= m[at + 3] * x0 + m[at + 4] * x1 + m[at + 5] * x2;
                y2 -= m[at + 6] * x0 + m[at + 7] * x1 + m[at + 8] * x2;
            }
            int at = p.pivotSlot[k] * BLOCK, to = p.pivotColumn[k] * S;
            x[to] = m[at] * y0 + m[at + 1] * y1 + m[at + 2] * y2;
            x[to + 1] = m[at + 3] * y0 + m[at + 4] * y1 + m[at + 5] * y2;
            x[to + 2] = m[at + 6] * y0 + m[at + 7] * y1 + m[at + 8] * y2;
        }
    }

    /**
     * Solves for many right-hand sides.
     *
     * @param b read and overwritten; row 3r + j holds stage j of row r for all right-hand sides
     * @param x written; row 3c + j holds stage j of column c
     * @param width right-hand sides
     */
    public void solve(double[][] b, double[][] x, int width) {
        BlockPlan p = plan;
        for (int k = 0; k < p.size; k++) {
            int from = p.pivotRow[k] * S;
            for (int l = p.lowerStart[k]; l < p.lowerStart[k + 1]; l++) {
                subtractProduct(p.lowerSlot[l] * BLOCK, b, from, b, p.lowerRow[l] * S, width);
            }
        }
        for (int k = p.size - 1; k >= 0; k--) {
            int from = p.pivotRow[k] * S;
            for (int u = p.upperStart[k]; u < p.upperStart[k + 1]; u++) {
                subtractProduct(p.upperSlot[u] * BLOCK, x, p.upperColumn[u] * S, b, from, width);
            }
            product(p.pivotSlot[k] * BLOCK, b, from, x, p.pivotColumn[k] * S, width);
        }
    }

    private void subtractProduct(int block, double[][] source, int from, double[][] sink, int to, int width) {
        double[] s0 = source[from], s1 = source[from + 1], s2 = source[from + 2];
        for (int j = 0; j < S; j++) {
            double m0 = a[block + S * j], m1 = a[block + S * j + 1], m2 = a[block + S * j + 2];
            double[] d = sink[to + j];
            for (int c = 0; c < width; c++) d[c] -= m0 * s0[c] + m1 * s1[c] + m2 * s2[c];
        }
    }

    private void product(int block, double[][] source, int from, double[][] sink, int to, int width) {
        double[] s0 = source[from], s1 = source[from + 1], s2 = source[from + 2];
        for (int j = 0; j < S; j++) {
            double m0 = a[block + S * j], m1 = a[block + S * j + 1], m2 = a[block + S * j + 2];
            double[] d = sink[to + j];
            for (int c = 0; c < width; c++) d[c] = m0 * s0[c] + m1 * s1[c] + m2 * s2[c];
        }
    }

    /**
     * Solves with the transposed matrix for one right-hand side.
     *
     * @param b read and overwritten; stage j of column c at 3c + j
     * @param x written; stage j of row r at 3r + j
     */
    public void solveTransposed(double[] b, double[] x) {
        BlockPlan p = plan;
        double[] m = a;
        System.arraycopy(b, 0, single, 0, single.length);
        double[] y = single;
        for (int k = 0; k < p.size; k++) {
            int at = p.pivotSlot[k] * BLOCK, column = p.pivotColumn[k] * S, row = p.pivotRow[k] * S;
            double b0 = y[column], b1 = y[column + 1], b2 = y[column + 2];
            double z0 = m[at] * b0 + m[at + 3] * b1 + m[at + 6] * b2;
            double z1 = m[at + 1] * b0 + m[at + 4] * b1 + m[at + 7] * b2;
            double z2 = m[at + 2] * b0 + m[at + 5] * b1 + m[at + 8] * b2;
            x[row] = z0;
            x[row + 1] = z1;
            x[row + 2] = z2;
            for (int u = p.upperStart[k]; u < p.upperStart[k + 1]; u++) {
                int block = p.upperSlot[u] * BLOCK, to = p.upperColumn[u] * S;
                y[to] -= m[block] * z0 + m[block + 3] * z1 + m[block + 6] * z2;
                y[to + 1] -= m[block + 1] * z0 + m[block + 4] * z1 + m[block + 7] * z2;
                y[to + 2] -= m[block + 2] * z0 + m[block + 5] * z1 + m[block + 8] * z2;
            }
        }
        for (int k = p.size - 1; k >= 0; k--) {
            int row = p.pivotRow[k] * S;
            double z0 = x[row], z1 = x[row + 1], z2 = x[row + 2];
            for (int l = p.lowerStart[k]; l < p.lowerStart[k + 1]; l++) {
                int block = p.lowerSlot[l] * BLOCK, from = p.lowerRow[l] * S;
                double w0 = x[from], w1 = x[from + 1], w2 = x[from + 2];
                z0 -= m[block] * w0 + m[block + 3] * w1 + m[block + 6] * w2;
                z1 -= m[block + 1] * w0 + m[block + 4] * w1 + m[block + 7] * w2;
                z2 -= m[block + 2] * w0 + m[block + 5] * w1 + m[block + 8] * w2;
            }
            x[row] = z0;
            x[row + 1] = z1;
            x[row + 2] = z2;
        }
    }
}
