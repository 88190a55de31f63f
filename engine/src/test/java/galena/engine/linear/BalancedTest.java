package galena.engine.linear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

/** Sums of powers of eigenvalues are traces of powers, whatever the units of the rows. */
class BalancedTest {
    private static void tracesAgree(DMatrixRMaj matrix, double allowed) {
        tracesAgree(new Balanced(matrix).values(), matrix, allowed);
    }

    private static void tracesAgree(Complex[] values, DMatrixRMaj matrix, double allowed) {
        DMatrixRMaj power = CommonOps_DDRM.identity(matrix.numRows);
        for (int k = 1; k <= 4; k++) {
            DMatrixRMaj next = new DMatrixRMaj(matrix.numRows, matrix.numRows);
            CommonOps_DDRM.mult(power, matrix, next);
            power = next;
            Complex sum = Complex.ZERO;
            for (Complex value : values) sum = sum.add(value.pow(k));
            assertThat(sum.getReal()).as("power %d", k).isCloseTo(CommonOps_DDRM.trace(power), within(allowed));
            assertThat(sum.getImaginary()).isCloseTo(0, within(allowed));
        }
    }

    @Test
    void rows_in_units_of_their_own_do_not_disturb() {
        Random random = new Random(17);
        for (int n = 1; n <= 14; n++) {
            DMatrixRMaj plain = new DMatrixRMaj(n, n), skewed = new DMatrixRMaj(n, n);
            double[] unit = new double[n];
            for (int k = 0; k < n; k++) unit[k] = Math.pow(10, 12 * random.nextDouble() - 6);
            for (int r = 0; r < n; r++) {
                for (int c = 0; c < n; c++) {
                    plain.set(r, c, random.nextGaussian());
                    skewed.set(r, c, plain.get(r, c) * unit[r] / unit[c]);
                }
            }
            tracesAgree(plain, 1e-8);
            double[] a = sizes(plain), b = sizes(skewed);
            for (int k = 0; k < n; k++) assertThat(b[k]).isCloseTo(a[k], within(1e-8));
        }
    }

    private static double[] sizes(DMatrixRMaj matrix) {
        return Arrays.stream(new Balanced(matrix).values())
                .mapToDouble(Complex::norm)
                .sorted()
                .toArray();
    }

    @Test
    void monodromy_matrices_of_a_transmitter_give_all_their_eigenvalues() throws IOException {
        List<DMatrixRMaj> matrices = kept("monodromy-of-a-transmitter.csv");
        assertThat(matrices).hasSize(2);
        for (DMatrixRMaj matrix : matrices) tracesAgree(matrix, 1e-9);
    }

    /** One plane's iteration gave 0.943 ± 0.056i in place of 0.99925 and 0.88754: their sum, not their squares'. */
    @Test
    void an_iteration_that_ends_with_wrong_values_is_not_believed() throws IOException {
        DMatrixRMaj matrix = kept("monodromy-that-ended-wrong.csv").get(0);
        Complex[] values = Balanced.ofDependent(matrix).values();
        tracesAgree(values, matrix, 1e-9);
        assertThat(Arrays.stream(values).mapToDouble(Complex::getReal).max()).hasValueCloseTo(0.99925, within(1e-5));
    }

    private static List<DMatrixRMaj> kept(String name) throws IOException {
        List<DMatrixRMaj> matrices = new ArrayList<>();
        try (var in = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(BalancedTest.class.getResourceAsStream("/failures/" + name)),
                StandardCharsets.UTF_8))) {
            for (String line : in.lines().filter(l -> !l.startsWith("#")).toList()) {
                double[] entries = Arrays.stream(line.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray();
                int n = (int) Math.rint(Math.sqrt(entries.length));
                DMatrixRMaj matrix = new DMatrixRMaj(n, n);
                System.arraycopy(entries, 0, matrix.data, 0, entries.length);
                matrices.add(matrix);
            }
        }
        return matrices;
    }

    @Test
    void a_real_eigenvalue_has_its_vector_in_the_units_of_the_rows() {
        DMatrixRMaj matrix = new DMatrixRMaj(new double[][] {{2, 1e9, 0}, {1e-9, 2, 0}, {0, 0, 7}});
        Balanced eigen = new Balanced(matrix);
        Complex[] values = eigen.values();
        for (int k = 0; k < 3; k++) {
            double[] v = eigen.vector(k);
            assertThat(v).hasSize(3);
            for (int r = 0; r < 3; r++) {
                double sum = 0, largest = 0;
                for (int c = 0; c < 3; c++) {
                    sum += matrix.get(r, c) * v[c];
                    largest = Math.max(largest, Math.abs(matrix.get(r, c) * v[c]));
                }
                assertThat(sum).isCloseTo(values[k].getReal() * v[r], within(1e-10 * largest + 1e-300));
            }
        }
    }

    @Test
    void nothing_at_all_has_zeros() {
        assertThat(new Balanced(new DMatrixRMaj(3, 3)).values()).containsOnly(Complex.ZERO);
        assertThat(new Balanced(new DMatrixRMaj(0, 0)).values()).isEmpty();
    }
}
