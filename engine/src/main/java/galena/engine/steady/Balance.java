package galena.engine.steady;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;

/**
 * A matrix with the same eigenvalues whose rows and columns are alike in size: D⁻¹ M D with powers of two in D, so that nothing is
 * rounded. Charges on a microfarad and in a junction differ by nine orders, and the QR iteration fails on such a matrix as it
 * stands. B. N. Parlett and C. Reinsch, Numer. Math. 13 (1969) 293.
 *
 * @param matrix balanced
 * @param scale the diagonal of D
 */
record Balance(DMatrixRMaj matrix, double[] scale) {
    private static final int MOST_PASSES = 60;

    /** A change that gains less than this is not made. */
    private static final double WORTH_IT = 0.95;

    static Balance of(DMatrixRMaj unbalanced) {
        DMatrixRMaj m = unbalanced.copy();
        double[] scale = new double[m.numRows];
        Arrays.fill(scale, 1);
        boolean changed = true;
        for (int pass = 0; pass < MOST_PASSES && changed; pass++) {
            changed = false;
            for (int k = 0; k < m.numRows; k++) {
                double column = 0, row = 0;
                for (int j = 0; j < m.numRows; j++) {
                    if (j == k) continue;
                    column += Math.abs(m.get(j, k));
                    row += Math.abs(m.get(k, j));
                }
                if (!(column > 0) || !(row > 0)) continue;
                double factor = Math.scalb(1.0, (int) Math.rint(Math.log(row / column) / (2 * Math.log(2))));
                if (column * factor + row / factor >= WORTH_IT * (column + row)) continue;
                scale[k] *= factor;
                for (int j = 0; j < m.numRows; j++) m.set(j, k, m.get(j, k) * factor);
                for (int j = 0; j < m.numRows; j++) m.set(k, j, m.get(k, j) / factor);
                changed = true;
            }
        }
        return new Balance(m, scale);
    }

    /** An eigenvector of the balanced matrix as one of the matrix itself. */
    DMatrixRMaj restored(DMatrixRMaj vector) {
        DMatrixRMaj v = vector.copy();
        for (int k = 0; k < scale.length; k++) v.set(k, 0, v.get(k, 0) * scale[k]);
        return v;
    }
}
