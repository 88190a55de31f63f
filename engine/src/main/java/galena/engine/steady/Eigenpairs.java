package galena.engine.steady;

import java.util.ArrayList;
import java.util.List;
import org.ejml.data.Complex_F64;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * Eigenvalues of a monodromy matrix, and the vectors of the real ones. The QR iteration of the library stalls on about one such
 * matrix in ten, even balanced ({@link Balance}): charges that depend on each other leave rows of nothing but rounding. The
 * same matrix mirrored in a plane has the same eigenvalues and no such rows; a few planes are tried.
 *
 * @param values in no order
 * @param vectors of the real values, an empty matrix beside a complex one
 */
record Eigenpairs(List<Complex_F64> values, List<DMatrixRMaj> vectors) {
    private static final int PLANES = 12;

    static Eigenpairs of(DMatrixRMaj matrix) {
        int n = matrix.numRows;
        Balance balance = Balance.of(matrix);
        for (int plane = 0; plane <= PLANES; plane++) {
            double[] normal = normal(n, plane);
            DMatrixRMaj mirrored = balance.matrix().copy();
            mirrorRows(mirrored, normal);
            mirrorColumns(mirrored, normal);
            EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(n, true);
            if (eigen.decompose(mirrored)) return read(eigen, balance, normal);
        }
        throw new ArithmeticException("the monodromy matrix has no eigenvalues");
    }

    private static Eigenpairs read(EigenDecomposition_F64<DMatrixRMaj> eigen, Balance balance, double[] normal) {
        List<Complex_F64> values = new ArrayList<>();
        List<DMatrixRMaj> vectors = new ArrayList<>();
        for (int k = 0; k < eigen.getNumberOfEigenvalues(); k++) {
            values.add(eigen.getEigenvalue(k));
            DMatrixRMaj vector = eigen.getEigenVector(k);
            if (vector == null) {
                vectors.add(new DMatrixRMaj(0, 1));
                continue;
            }
            DMatrixRMaj mirrored = vector.copy();
            mirrorRows(mirrored, normal);
            vectors.add(balance.restored(mirrored));
        }
        return new Eigenpairs(values, vectors);
    }

    /** Of a plane through the origin, unit length, the same in every run; of plane 0: none, zero. */
    private static double[] normal(int n, int plane) {
        double[] u = new double[n];
        if (plane == 0) return u;
        double square = 0;
        for (int k = 0; k < n; k++) {
            u[k] = Math.sin(plane * (1 + 1.7 * k));
            square += u[k] * u[k];
        }
        for (int k = 0; k < n; k++) u[k] /= Math.sqrt(square);
        return u;
    }

    /** m ← (1 − 2uuᵀ) m. */
    private static void mirrorRows(DMatrixRMaj m, double[] u) {
        for (int c = 0; c < m.numCols; c++) {
            double dot = 0;
            for (int r = 0; r < m.numRows; r++) dot += u[r] * m.get(r, c);
            for (int r = 0; r < m.numRows; r++) m.set(r, c, m.get(r, c) - 2 * dot * u[r]);
        }
    }

    /** m ← m (1 − 2uuᵀ). */
    private static void mirrorColumns(DMatrixRMaj m, double[] u) {
        for (int r = 0; r < m.numRows; r++) {
            double dot = 0;
            for (int c = 0; c < m.numCols; c++) dot += u[c] * m.get(r, c);
            for (int c = 0; c < m.numCols; c++) m.set(r, c, m.get(r, c) - 2 * dot * u[c]);
        }
    }
}
