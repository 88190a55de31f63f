package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;

/** Every number of the method, from the polynomial whose zeros are its nodes. */
class RadauTest {
    private static final int S = Radau.STAGES;
    private static final double ROUNDING = 1e-14;

    /** d²/dt² of t²(t − 1)³, the polynomial of the right-hand Radau rule of three points: 20t³ − 36t² + 18t − 2. */
    private static double radauPolynomial(double t) {
        return ((20 * t - 36) * t + 18) * t - 2;
    }

    @Test
    void nodes_are_the_zeros_of_radaus_polynomial() {
        Published source = Published.source(
                "engine",
                Kind.CLOSED_FORM,
                "Radau IIA nodes: zeros of d²/dt² [t²(t−1)³] (Hairer and Wanner, Solving ODEs II, IV.5)");
        double[] expected = {bisect(0.05, 0.4), bisect(0.4, 0.9), 1};
        for (int j = 0; j < S; j++) source.matches("node " + (j + 1), expected[j], Radau.NODES[j], ROUNDING);
    }

    private static double bisect(double low, double high) {
        double a = low, b = high;
        for (int k = 0; k < 60; k++) {
            double middle = (a + b) / 2;
            if (radauPolynomial(a) * radauPolynomial(middle) <= 0) b = middle;
            else a = middle;
        }
        return (a + b) / 2;
    }

    @Test
    void weights_integrate_polynomials_of_degree_four_exactly_and_no_further() {
        for (int degree = 0; degree <= 4; degree++)
            assertThat(quadrature(degree)).isCloseTo(1.0 / (degree + 1), within(ROUNDING));
        assertThat(Math.abs(quadrature(5) - 1.0 / 6)).isGreaterThan(1e-4);
    }

    private static double quadrature(int degree) {
        double sum = 0;
        for (int j = 0; j < S; j++) sum += Radau.WEIGHTS[j] * Math.pow(Radau.NODES[j], degree);
        return sum;
    }

    /** Aᵢⱼ from Σⱼ Aᵢⱼ cⱼᵏ⁻¹ = cᵢᵏ/k for k = 1..3; the engine keeps its inverse. */
    @Test
    void the_kept_matrix_inverts_that_of_the_collocation_conditions() {
        DMatrixRMaj powers = new DMatrixRMaj(S, S), integrals = new DMatrixRMaj(S, S);
        for (int i = 0; i < S; i++) {
            for (int k = 0; k < S; k++) {
                powers.set(i, k, Math.pow(Radau.NODES[i], k));
                integrals.set(i, k, Math.pow(Radau.NODES[i], k + 1) / (k + 1));
            }
        }
        CommonOps_DDRM.invert(powers);
        DMatrixRMaj a = new DMatrixRMaj(S, S);
        CommonOps_DDRM.mult(integrals, powers, a);
        for (int j = 0; j < S; j++)
            assertThat(a.get(S - 1, j)).as("stiffly accurate").isCloseTo(Radau.WEIGHTS[j], within(ROUNDING));
        CommonOps_DDRM.invert(a);
        Published source = Published.source(
                "engine",
                Kind.CLOSED_FORM,
                "Radau IIA matrix from its collocation conditions Σ A c^(k−1) = c^k/k, inverted");
        for (int i = 0; i < S; i++) {
            double sum = 0;
            for (int j = 0; j < S; j++) {
                source.matches("inverse, " + (i + 1) + " " + (j + 1), a.get(i, j), Radau.INVERSE[S * i + j], 1e-12);
                sum += a.get(i, j);
            }
            assertThat(Radau.ROW_SUMS[i]).isCloseTo(sum, within(1e-12));
        }
    }
}
