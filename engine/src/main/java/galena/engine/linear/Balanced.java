package galena.engine.linear;

import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.hipparchus.complex.Complex;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.jspecify.annotations.Nullable;

/**
 * Eigenvalues of a real matrix whose rows are in units of their own, such as charges beside fluxes. The matrix is balanced first:
 * rows and columns are scaled by powers of two until they weigh alike, which moves no eigenvalue (B. N. Parlett and C. Reinsch,
 * Numer. Math. 13 (1969) 293). Without that the QR iteration may not end, and small eigenvalues drown in the rounding of large
 * entries. The iteration is Hipparchus's: EJML's lost eigenvalues of one transmitter's monodromy matrix in ten, balanced or not,
 * and returned others in their place. Hipparchus's stalls on one in a hundred, where rows hold nothing but rounding, and now and then
 * ends with two wrong values and no complaint; the same matrix mirrored in a plane has the same eigenvalues and other rounding, and a
 * few planes are tried. What is handed out has been held to the traces of the matrix's first three powers.
 */
public final class Balanced {
    private static final int PASSES = 50;
    private static final double WORTHWHILE = 0.95;
    private static final int PLANES = 8;
    private static final int TRACES = 3;
    private static final double TRACE_ROUNDING = 1e-9;

    private final int n;
    private final double[] scale;
    private final Complex[] values;
    private final double[] @Nullable [] vectors;

    /**
     * For a matrix whose small eigenvalues matter.
     *
     * @param matrix square; read
     * @throws ArithmeticException when the QR iteration does not end
     */
    public Balanced(DMatrixRMaj matrix) {
        this(matrix, 0);
    }

    /**
     * For a matrix of which only eigenvalues count that are not small beside the largest, and which may have dependent rows: it is
     * mirrored at once, because left as it is the iteration now and then ends with wrong values and no complaint.
     *
     * @param matrix square; read
     * @throws ArithmeticException when the QR iteration does not end
     */
    public static Balanced ofDependent(DMatrixRMaj matrix) {
        return new Balanced(matrix, 1);
    }

    private Balanced(DMatrixRMaj matrix, int firstPlane) {
        n = matrix.numRows;
        scale = new double[n];
        Arrays.fill(scale, 1);
        vectors = new double[n][];
        DMatrixRMaj balanced = matrix.copy();
        balance(balanced);
        values = decompose(balanced, firstPlane);
    }

    private Complex[] decompose(DMatrixRMaj a, int firstPlane) {
        Complex[] found = new Complex[n];
        Arrays.fill(found, Complex.ZERO);
        double largest = 0;
        for (double entry : a.data) largest = Math.max(largest, Math.abs(entry));
        if (largest == 0) return found; // no norm to measure against: all zero
        for (int plane = firstPlane; ; plane++) {
            RealMatrix rows = MatrixUtils.createRealMatrix(n, n);
            for (int r = 0; r < n; r++) for (int c = 0; c < n; c++) rows.setEntry(r, c, a.get(r, c));
            RealMatrix mirror = mirror(plane);
            try {
                read(new EigenDecompositionNonSymmetric(mirror.multiply(rows).multiply(mirror)), mirror, found);
                if (haveTraces(found, rows)) return found;
            } catch (MathRuntimeException endless) {
                // the next plane's rounding may let it end
            }
            if (plane == PLANES) throw new ArithmeticException("the eigenvalues of " + n + " unknowns were not found");
        }
    }

    /** Whether the sums of the values, of their squares and cubes are the traces of the matrix, its square and cube. */
    private static boolean haveTraces(Complex[] values, RealMatrix a) {
        double norm = a.getFrobeniusNorm(), allowed = 1;
        RealMatrix power = MatrixUtils.createRealIdentityMatrix(values.length);
        for (int k = 1; k <= TRACES; k++) {
            power = power.multiply(a);
            allowed *= norm;
            double sum = 0;
            for (Complex value : values) sum += value.pow(k).getReal();
            if (Math.abs(sum - power.getTrace()) > TRACE_ROUNDING * allowed) return false;
        }
        return true;
    }

    private void read(EigenDecompositionNonSymmetric eigen, RealMatrix mirror, Complex[] found) {
        for (int k = 0; k < n; k++) {
            found[k] = eigen.getEigenvalues()[k];
            vectors[k] = null;
            if (found[k].getImaginary() != 0) continue;
            double[] vector = new double[n];
            for (int j = 0; j < n; j++)
                vector[j] = eigen.getEigenvector(k).getEntry(j).getReal();
            vector = mirror.operate(vector);
            for (int j = 0; j < n; j++) vector[j] *= scale[j];
            vectors[k] = vector;
        }
    }

    /** 1 − 2uuᵀ, its own inverse, with the same u in every run; of plane 0 the identity. */
    private RealMatrix mirror(int plane) {
        RealMatrix mirror = MatrixUtils.createRealIdentityMatrix(n);
        if (plane == 0) return mirror;
        double square = 0;
        double[] u = new double[n];
        for (int k = 0; k < n; k++) {
            u[k] = Math.sin(plane * (1 + 1.7 * k));
            square += u[k] * u[k];
        }
        for (int r = 0; r < n; r++) for (int c = 0; c < n; c++) mirror.addToEntry(r, c, -2 * u[r] * u[c] / square);
        return mirror;
    }

    private void balance(DMatrixRMaj a) {
        boolean changed = true;
        for (int pass = 0; changed && pass < PASSES; pass++) {
            changed = false;
            for (int k = 0; k < n; k++) {
                double column = 0, row = 0;
                for (int j = 0; j < n; j++) {
                    if (j == k) continue;
                    column += Math.abs(a.data[j * n + k]);
                    row += Math.abs(a.data[k * n + j]);
                }
                if (column == 0 || row == 0) continue;
                double factor = Math.scalb(1.0, Math.getExponent(Math.sqrt(row / column)));
                if (column * factor + row / factor >= WORTHWHILE * (column + row)) continue;
                changed = true;
                scale[k] *= factor;
                for (int j = 0; j < n; j++) {
                    a.data[j * n + k] *= factor;
                    a.data[k * n + j] /= factor;
                }
            }
        }
    }

    /** The eigenvalues. */
    public Complex[] values() {
        return values.clone();
    }

    /** The eigenvector of the k-th eigenvalue in the matrix's own units; of length zero unless the eigenvalue is real. */
    public double[] vector(int k) {
        return vectors[k] == null ? new double[0] : vectors[k].clone();
    }
}
