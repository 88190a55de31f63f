package galena.engine.linear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** What comes out is put back into the equations. */
class ComplexPencilTest {
    private static final int N = 9;

    @Test
    void solutions_satisfy_the_equations_straight_and_transposed() {
        Random random = new Random(11);
        double[] g = new double[N * N], c = new double[N * N], b = new double[N], bi = new double[N];
        for (int k = 0; k < N * N; k++) {
            g[k] = random.nextGaussian();
            c[k] = random.nextGaussian();
        }
        for (int k = 0; k < N; k++) {
            b[k] = random.nextGaussian();
            bi[k] = random.nextGaussian();
        }
        ComplexPencil pencil = new ComplexPencil(N, g, c);
        double re = -0.3, im = 1.7;
        assertThat(pencil.factor(re, im)).isTrue();
        double[] x = new double[N], xi = new double[N];
        pencil.solve(b, bi, x, xi);
        check(g, c, re, im, x, xi, b, bi, false);
        pencil.solveTransposed(b, bi, x, xi);
        check(g, c, re, im, x, xi, b, bi, true);
    }

    private static void check(
            double[] g,
            double[] c,
            double re,
            double im,
            double[] x,
            double[] xi,
            double[] b,
            double[] bi,
            boolean flip) {
        for (int row = 0; row < N; row++) {
            double sum = -b[row], sumIm = -bi[row];
            for (int column = 0; column < N; column++) {
                int k = flip ? column * N + row : row * N + column;
                double a = g[k] + re * c[k], ai = im * c[k];
                sum += a * x[column] - ai * xi[column];
                sumIm += a * xi[column] + ai * x[column];
            }
            assertThat(sum).isCloseTo(0, within(1e-12));
            assertThat(sumIm).isCloseTo(0, within(1e-12));
        }
    }
}
