package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.RandomMatrices_DDRM;
import org.junit.jupiter.api.Test;

/** A similarity of powers of two: nothing of the matrix changes but how even its rows and columns are. */
final class BalancingTest {
    /** Charges beside flux linkages: scales spread over eighteen powers of ten. */
    private static DMatrixRMaj uneven(long seed) {
        Random random = new Random(seed);
        DMatrixRMaj a = RandomMatrices_DDRM.rectangle(9, 9, -1, 1, random);
        for (int i = 0; i < 9; i++) {
            double scale = Math.pow(10, 18 * random.nextDouble() - 9);
            for (int k = 0; k < 9; k++) {
                a.set(i, k, a.get(i, k) * scale);
                a.set(k, i, a.get(k, i) / scale);
            }
        }
        return a;
    }

    @Test
    void what_is_even_is_the_same_matrix_in_other_units() {
        for (long seed = 1; seed <= 20; seed++) {
            DMatrixRMaj a = uneven(seed), even = a.copy();
            double[] scales = Floquet.balance(even);
            for (int i = 0; i < 9; i++) {
                assertThat(Math.log(scales[i]) / Math.log(2))
                        .as("seed %d", seed)
                        .isEqualTo(Math.rint(Math.log(scales[i]) / Math.log(2)), within(1e-9));
                for (int k = 0; k < 9; k++)
                    assertThat(even.get(i, k) * scales[i] / scales[k])
                            .as("seed %d", seed)
                            .isEqualTo(a.get(i, k));
            }
            assertThat(CommonOps_DDRM.trace(even)).isEqualTo(CommonOps_DDRM.trace(a));
            double spread = CommonOps_DDRM.elementMaxAbs(even) / CommonOps_DDRM.elementMaxAbs(a);
            assertThat(spread).as("seed %d", seed).isLessThan(1e-3);
        }
    }

    @Test
    void an_even_or_empty_matrix_is_left_alone() {
        DMatrixRMaj zero = new DMatrixRMaj(3, 3);
        assertThat(Floquet.balance(zero)).containsOnly(1.0);
        DMatrixRMaj one = CommonOps_DDRM.identity(3);
        assertThat(Floquet.balance(one)).containsOnly(1.0);
    }
}
