package galena.engine.linear;

import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Dense solves with G + λC for complex λ, and with its transpose. Vectors are pairs of arrays, real and imaginary, numbered
 * like the matrices from 0.
 */
public final class ComplexPencil {
    private final int size;
    private final double[] g;
    private final double[] c;
    private final LinearSolverDense<ZMatrixRMaj> solver;
    private final LinearSolverDense<ZMatrixRMaj> transposed;
    private final ZMatrixRMaj rhs;
    private final ZMatrixRMaj solution;

    /**
     * @param g row-major, size × size
     * @param c row-major, size × size
     */
    public ComplexPencil(int size, double[] g, double[] c) {
        this.size = size;
        this.g = g;
        this.c = c;
        solver = LinearSolverFactory_ZDRM.lu(size);
        transposed = LinearSolverFactory_ZDRM.lu(size);
        rhs = new ZMatrixRMaj(size, 1);
        solution = new ZMatrixRMaj(size, 1);
    }

    /** Factors G + λC; false when it is singular to the last digit. */
    public boolean factor(double re, double im) {
        ZMatrixRMaj a = new ZMatrixRMaj(size, size), t = new ZMatrixRMaj(size, size);
        for (int row = 0; row < size; row++) {
            for (int column = 0; column < size; column++) {
                int k = row * size + column;
                a.set(row, column, g[k] + re * c[k], im * c[k]);
                t.set(column, row, g[k] + re * c[k], im * c[k]);
            }
        }
        return solver.setA(a) && transposed.setA(t);
    }

    /** (G + λC) x = b; b is read, x written. */
    public void solve(double[] bRe, double[] bIm, double[] xRe, double[] xIm) {
        solve(solver, bRe, bIm, xRe, xIm);
    }

    /** (G + λC)ᵀ x = b; b is read, x written. */
    public void solveTransposed(double[] bRe, double[] bIm, double[] xRe, double[] xIm) {
        solve(transposed, bRe, bIm, xRe, xIm);
    }

    private void solve(LinearSolverDense<ZMatrixRMaj> lu, double[] bRe, double[] bIm, double[] xRe, double[] xIm) {
        for (int k = 0; k < size; k++) rhs.set(k, 0, bRe[k], bIm[k]);
        lu.solve(rhs, solution);
        for (int k = 0; k < size; k++) {
            xRe[k] = solution.getReal(k, 0);
            xIm[k] = solution.getImag(k, 0);
        }
    }
}
