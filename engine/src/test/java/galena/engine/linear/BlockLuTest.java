package galena.engine.linear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import com.sun.management.ThreadMXBean;
import galena.proof.Kind;
import galena.proof.Published;
import java.lang.management.ManagementFactory;
import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sparse block elimination against EJML's dense one, on random matrices of the shape that nodal equations give. */
class BlockLuTest {
    private static final int S = 3;
    private static final int MANY = 7;

    /** Conditions here reach some 1e4 and both eliminations round. */
    private static final double ROUNDING = 1e-10;

    /** A random sparse pattern with a full transversal, and values of widely different sizes. */
    private static final class Problem {
        final int size;
        final int[] rows;
        final int[] columns;
        final double[][] blocks;

        Problem(long seed, int size) {
            Random random = new Random(seed);
            this.size = size;
            int extra = 3 * size;
            rows = new int[size + extra];
            columns = new int[size + extra];
            blocks = new double[size + extra][S * S];
            for (int e = 0; e < rows.length; e++) {
                rows[e] = e < size ? e : random.nextInt(size);
                columns[e] = e < size ? size - 1 - e : random.nextInt(size);
                double weight = (e < size ? 4 : 1) * Math.pow(10, random.nextInt(3) - 1);
                for (int k = 0; k < S * S; k++) blocks[e][k] = weight * random.nextGaussian();
                // the diagonal of a block is G plus C's weight: never small
                for (int k = 0; k < S; k++) blocks[e][4 * k] += 6 * weight;
            }
        }

        BlockLu factored() {
            double[] typical = new double[rows.length];
            for (int e = 0; e < typical.length; e++)
                for (double v : blocks[e]) typical[e] = Math.max(typical[e], Math.abs(v));
            BlockLu lu = new BlockLu(BlockPlan.of(size, rows, columns, typical));
            fill(lu);
            lu.factor();
            return lu;
        }

        void fill(BlockLu lu) {
            lu.clear();
            for (int e = 0; e < rows.length; e++) {
                for (int k = 0; k < S * S; k++) lu.values()[lu.at(e) + k] += blocks[e][k];
            }
        }

        DMatrixRMaj dense() {
            DMatrixRMaj a = new DMatrixRMaj(size * S, size * S);
            for (int e = 0; e < rows.length; e++) {
                for (int r = 0; r < S; r++) {
                    for (int c = 0; c < S; c++) a.add(S * rows[e] + r, S * columns[e] + c, blocks[e][S * r + c]);
                }
            }
            return a;
        }
    }

    private static DMatrixRMaj solveDense(DMatrixRMaj a, DMatrixRMaj b) {
        var solver = LinearSolverFactory_DDRM.lu(a.numRows);
        assertThat(solver.setA(a.copy())).isTrue();
        DMatrixRMaj x = new DMatrixRMaj(a.numRows, b.numCols);
        solver.solve(b.copy(), x);
        return x;
    }

    private static DMatrixRMaj random(long seed, int rows, int columns) {
        Random random = new Random(seed);
        DMatrixRMaj b = new DMatrixRMaj(rows, columns);
        for (int k = 0; k < b.data.length; k++) b.data[k] = random.nextGaussian();
        return b;
    }

    private static double worst(double[] found, DMatrixRMaj expected) {
        double error = 0, largest = 0;
        for (int k = 0; k < found.length; k++) {
            error = Math.max(error, Math.abs(found[k] - expected.data[k]));
            largest = Math.max(largest, Math.abs(expected.data[k]));
        }
        return error / largest;
    }

    private static Published ejml(String what) {
        return Published.source("engine", Kind.LIBRARY, "EJML, dense LU: " + what);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 5, 8, 13, 21, 34})
    void solves_as_a_dense_elimination_does(long seed) {
        int size = 4 + (int) seed;
        Problem problem = new Problem(seed, size);
        BlockLu lu = problem.factored();
        DMatrixRMaj a = problem.dense(), b = random(seed + 100, size * S, 1);
        double[] x = new double[size * S];
        lu.solve(b.data.clone(), x);
        ejml("random block matrices")
                .matches(
                        "one right-hand side, " + size + " blocks, seed " + seed,
                        0,
                        worst(x, solveDense(a, b)),
                        ROUNDING);
        lu.solveTransposed(b.data.clone(), x);
        DMatrixRMaj transposed = CommonOps_DDRM.transpose(a, null);
        ejml("random block matrices")
                .matches(
                        "transposed, " + size + " blocks, seed " + seed,
                        0,
                        worst(x, solveDense(transposed, b)),
                        ROUNDING);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 4, 9, 16, 25})
    void solves_many_right_hand_sides_side_by_side(long seed) {
        int size = 5 + (int) seed;
        Problem problem = new Problem(seed, size);
        BlockLu lu = problem.factored();
        DMatrixRMaj b = random(seed + 200, size * S, MANY);
        double[][] rhs = new double[size * S][MANY + 2], x = new double[size * S][MANY + 2];
        for (int r = 0; r < rhs.length; r++) for (int c = 0; c < MANY; c++) rhs[r][c] = b.get(r, c);
        lu.solve(rhs, x, MANY);
        DMatrixRMaj expected = solveDense(problem.dense(), b);
        double[] found = new double[size * S * MANY];
        for (int r = 0; r < rhs.length; r++) System.arraycopy(x[r], 0, found, r * MANY, MANY);
        ejml("random block matrices")
                .matches(MANY + " right-hand sides, seed " + seed, 0, worst(found, expected), ROUNDING);
    }

    @Test
    void a_plan_serves_other_values_of_like_sizes() {
        Problem problem = new Problem(7, 20);
        BlockLu lu = problem.factored();
        Random random = new Random(77);
        for (double[] block : problem.blocks)
            for (int k = 0; k < block.length; k++) block[k] *= 1 + 0.2 * random.nextGaussian();
        problem.fill(lu);
        lu.factor();
        DMatrixRMaj b = random(78, 60, 1);
        double[] x = new double[60];
        lu.solve(b.data.clone(), x);
        assertThat(worst(x, solveDense(problem.dense(), b))).isLessThan(ROUNDING);
    }

    @Test
    void a_row_of_nothing_is_refused_when_planned() {
        assertThatExceptionOfType(SingularMatrix.class)
                .isThrownBy(() -> BlockPlan.of(2, new int[] {0, 0}, new int[] {0, 1}, new double[] {1, 1}));
    }

    @Test
    void a_singular_block_is_refused_when_factored() {
        BlockPlan plan = BlockPlan.of(1, new int[] {0}, new int[] {0}, new double[] {1});
        BlockLu lu = new BlockLu(plan);
        assertThatExceptionOfType(SingularMatrix.class).isThrownBy(lu::factor);
    }

    @Test
    void factoring_and_solving_allocate_nothing() {
        Problem problem = new Problem(3, 30);
        BlockLu lu = problem.factored();
        double[] b = new double[90], x = new double[90];
        double[][] many = new double[90][MANY], out = new double[90][MANY];
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long self = Thread.currentThread().getId(), least = Long.MAX_VALUE;
        for (int round = 0; round < 5; round++) {
            long before = threads.getThreadAllocatedBytes(self);
            for (int k = 0; k < 50; k++) {
                problem.fill(lu);
                lu.factor();
                lu.solve(b, x);
                lu.solve(many, out, MANY);
                lu.solveTransposed(b, x);
            }
            least = Math.min(least, threads.getThreadAllocatedBytes(self) - before);
        }
        assertThat(least).isZero();
    }
}
