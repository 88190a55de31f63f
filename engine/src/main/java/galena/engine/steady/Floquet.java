package galena.engine.steady;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ejml.data.Complex_F64;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;

/**
 * The Floquet multipliers of an orbit: how small disturbances have changed after one period, on the consistent subspace. Of a
 * free-running orbit one is 1, a shift in time.
 *
 * @param multipliers as {re, im}, largest magnitude first
 * @param frequency of the orbit, Hz
 */
public record Floquet(List<double[]> multipliers, double frequency) {
    static Floquet of(DMatrixRMaj monodromy, double frequency) {
        EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(monodromy.numRows, false, false);
        if (!eigen.decompose(monodromy)) throw new ArithmeticException("the monodromy matrix has no eigenvalues");
        List<double[]> all = new ArrayList<>();
        for (int k = 0; k < eigen.getNumberOfEigenvalues(); k++) {
            Complex_F64 value = eigen.getEigenvalue(k);
            all.add(new double[] {value.real, value.imaginary});
        }
        all.sort(Comparator.comparingDouble(m -> -Math.hypot(m[0], m[1])));
        return new Floquet(List.copyOf(all), frequency);
    }
}
