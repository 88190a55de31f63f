package galena.engine.linear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class GmresTest {
    private static final int N = 40;

    private static double[][] matrix(long seed) {
        Random random = new Random(seed);
        double[][] a = new double[N][N];
        for (int r = 0; r < N; r++) {
            for (int c = 0; c < N; c++) a[r][c] = random.nextGaussian();
            a[r][r] += 10 * (1 + r % 3);
        }
        return a;
    }

    private static void multiply(double[][] a, double[] x, double[] y) {
        for (int r = 0; r < N; r++) {
            y[r] = 0;
            for (int c = 0; c < N; c++) y[r] += a[r][c] * x[c];
        }
    }

    @Test
    void solves_an_unsymmetric_system_with_a_diagonal_preconditioner() {
        double[][] a = matrix(7);
        double[] wanted = new double[N], b = new double[N], x = new double[N];
        for (int k = 0; k < N; k++) wanted[k] = Math.sin(k);
        multiply(a, wanted, b);
        Gmres gmres = new Gmres(N, N);
        boolean settled = gmres.solve(
                (p, q) -> multiply(a, p, q),
                (p, q) -> {
                    for (int k = 0; k < N; k++) q[k] = p[k] / a[k][k];
                },
                b,
                x,
                1e-12);
        assertThat(settled).isTrue();
        assertThat(gmres.iterations()).isLessThan(N);
        for (int k = 0; k < N; k++) assertThat(x[k]).isCloseTo(wanted[k], within(1e-9));
    }

    @Test
    void says_when_its_iterations_do_not_suffice() {
        double[][] a = matrix(8);
        double[] b = new double[N], x = new double[N];
        b[0] = 1;
        boolean settled = new Gmres(N, 2)
                .solve((p, q) -> multiply(a, p, q), (p, q) -> System.arraycopy(p, 0, q, 0, N), b, x, 1e-12);
        assertThat(settled).isFalse();
    }
}
