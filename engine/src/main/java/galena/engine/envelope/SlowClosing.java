package galena.engine.envelope;

import galena.engine.linear.Gmres;
import java.util.Arrays;
import org.ejml.data.DMatrixRMaj;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * The linear system that ties the cycles of one slow period together: where a cycle ends, the polynomial through all starts must
 * pass, Σⱼ Sᵢⱼ δyⱼ − Φᵢ δyᵢ − dᵢ δfᵢ = …, and each cycle's phase is pinned. Products are cheap; the preconditioner is the same
 * system with every cycle replaced by their mean, which falls apart into one small complex system for each slow harmonic, so
 * that memory of any length costs nothing. Where the cycles differ so much that it does not serve, the system is factored whole.
 */
final class SlowClosing {
    private static final int MOST_ITERATIONS = 160;
    private static final double TOLERANCE = 1e-9;

    private final Layout layout;
    private final SlowGrid grid;
    private final int m;
    private final int block;
    private final double[] scale;
    private final double frequencyScale;
    private final double phaseScale;
    private final double[][] shift;
    private final double[][] byFrequency;
    private final Gmres gmres;
    private CycleSystem[] systems = {};
    private LinearSolverDense<ZMatrixRMaj>[] harmonics;
    private int iterations;

    /**
     * @param scale typical size of each start charge
     * @param frequency of the carrier, Hz
     * @param amplitude of the site's voltage
     */
    @SuppressWarnings({"unchecked", "rawtypes"})
    SlowClosing(Layout layout, SlowGrid grid, double[] scale, double frequency, double amplitude) {
        this.layout = layout;
        this.grid = grid;
        this.scale = scale;
        m = layout.charges();
        block = m + (layout.free ? 1 : 0);
        frequencyScale = frequency;
        phaseScale = amplitude;
        shift = new double[grid.points][grid.points];
        byFrequency = new double[grid.points][m];
        gmres = new Gmres(grid.points * block, MOST_ITERATIONS);
        harmonics = new LinearSolverDense[grid.highest + 1];
    }

    /** Iterations of the last solve; 0 where it was factored whole. */
    int iterations() {
        return iterations;
    }

    /**
     * The steps of all starts and frequencies.
     *
     * @param fresh whether the cycles were linearised anew since the last call
     * @param starts written, by cycle
     * @param frequencies written
     */
    void solve(Cycle[] cycles, CycleSystem[] linearised, boolean fresh, double[][] starts, double[] frequencies) {
        systems = linearised;
        double[] b = new double[grid.points * block], x = new double[b.length];
        lay(cycles, b);
        if (fresh) factorMean(cycles);
        boolean settled = gmres.solve(this::product, this::precondition, b, x, TOLERANCE);
        iterations = settled ? gmres.iterations() : 0;
        if (!settled) factorWhole(b, x);
        for (int i = 0; i < grid.points; i++) {
            for (int r = 0; r < m; r++) starts[i][r] = x[i * block + r] * scale[r];
            frequencies[i] = layout.free ? x[i * block + m] * frequencyScale : 0;
        }
    }

    /** Shifts and right-hand sides: what the ends lack from the polynomial, and the phases. */
    private void lay(Cycle[] cycles, double[] b) {
        double[] rate = new double[grid.points];
        for (int i = 0; i < grid.points; i++) {
            double f = cycles[i].frequency;
            grid.weights(cycles[i].time + 1 / f, shift[i], rate);
            CycleSystem system = systems[i];
            for (int r = 0; r < m; r++) {
                double there = 0, slope = 0;
                for (int j = 0; j < grid.points; j++) {
                    there += shift[i][j] * cycles[j].start[r];
                    slope += rate[j] * cycles[j].start[r];
                }
                byFrequency[i][r] = -slope / (f * f) - system.end[r][m + 1];
                b[i * block + r] = (system.endCharge[r] + system.end[r][m] - there) / scale[r];
            }
            if (layout.free) b[i * block + m] = -(system.phase + system.condition[m]) / phaseScale;
        }
    }

    private void product(double[] x, double[] y) {
        Arrays.fill(y, 0);
        for (int i = 0; i < grid.points; i++) {
            int to = i * block;
            for (int j = 0; j < grid.points; j++) {
                double weight = shift[i][j];
                int from = j * block;
                for (int r = 0; r < m; r++) y[to + r] += weight * x[from + r];
            }
            own(systems[i], byFrequency[i], x, y, to);
        }
    }

    /** What a cycle's own unknowns add: −Φ y + g f, and the phase. */
    private void own(CycleSystem system, double[] byF, double[] x, double[] y, int at) {
        double f = layout.free ? x[at + m] * frequencyScale : 0, phase = system.condition[m + 1] * f;
        for (int r = 0; r < m; r++) {
            double[] row = system.end[r];
            double sum = -byF[r] * f;
            for (int c = 0; c < m; c++) sum += row[c] * scale[c] * x[at + c];
            y[at + r] -= sum / scale[r];
        }
        if (!layout.free) return;
        for (int c = 0; c < m; c++) phase += system.condition[c] * scale[c] * x[at + c];
        y[at + m] = phase / phaseScale;
    }

    private void factorMean(Cycle[] cycles) {
        double[][] mean = new double[block][block];
        double period = 0, share = 1.0 / grid.points;
        for (int i = 0; i < grid.points; i++) {
            period += share / cycles[i].frequency;
            for (int r = 0; r < m; r++) {
                for (int c = 0; c < m; c++) mean[r][c] -= share * systems[i].end[r][c] * scale[c] / scale[r];
                if (layout.free) mean[r][m] += share * byFrequency[i][r] * frequencyScale / scale[r];
            }
            if (!layout.free) continue;
            for (int c = 0; c < m; c++) mean[m][c] += share * systems[i].condition[c] * scale[c] / phaseScale;
            mean[m][m] += share * systems[i].condition[m + 1] * frequencyScale / phaseScale;
        }
        for (int k = 0; k <= grid.highest; k++) {
            double angle = 2 * Math.PI * k * grid.frequency * period;
            ZMatrixRMaj a = new ZMatrixRMaj(block, block);
            for (int r = 0; r < block; r++) {
                for (int c = 0; c < block; c++) {
                    boolean diagonal = r == c && r < m;
                    a.set(r, c, mean[r][c] + (diagonal ? Math.cos(angle) : 0), diagonal ? Math.sin(angle) : 0);
                }
            }
            harmonics[k] = LinearSolverFactory_ZDRM.lu(block);
            if (!harmonics[k].setA(a)) throw new ArithmeticException("the mean cycle cannot be closed");
        }
    }

    private void precondition(double[] r, double[] z) {
        double[][][] transformed = new double[block][][];
        double[] v = new double[grid.points];
        for (int u = 0; u < block; u++) {
            for (int i = 0; i < grid.points; i++) v[i] = r[i * block + u];
            transformed[u] = grid.harmonics(v);
        }
        ZMatrixRMaj b = new ZMatrixRMaj(block, 1), x = new ZMatrixRMaj(block, 1);
        for (int k = 0; k <= grid.highest; k++) {
            for (int u = 0; u < block; u++) b.set(u, 0, transformed[u][0][k], transformed[u][1][k]);
            harmonics[k].solve(b, x);
            for (int u = 0; u < block; u++) {
                transformed[u][0][k] = x.getReal(u, 0);
                transformed[u][1][k] = x.getImag(u, 0);
            }
        }
        for (int u = 0; u < block; u++) {
            double[] values = grid.values(transformed[u]);
            for (int i = 0; i < grid.points; i++) z[i * block + u] = values[i];
        }
    }

    private void factorWhole(double[] b, double[] x) {
        int size = b.length;
        DMatrixRMaj a = new DMatrixRMaj(size, size);
        for (int i = 0; i < grid.points; i++) {
            for (int j = 0; j < grid.points; j++) {
                for (int r = 0; r < m; r++) a.set(i * block + r, j * block + r, shift[i][j]);
            }
            for (int r = 0; r < m; r++) {
                for (int c = 0; c < m; c++) {
                    a.add(i * block + r, i * block + c, -systems[i].end[r][c] * scale[c] / scale[r]);
                }
                if (layout.free) a.set(i * block + r, i * block + m, byFrequency[i][r] * frequencyScale / scale[r]);
            }
            if (!layout.free) continue;
            int row = i * block + m;
            for (int c = 0; c < m; c++) a.set(row, i * block + c, systems[i].condition[c] * scale[c] / phaseScale);
            a.set(row, row, systems[i].condition[m + 1] * frequencyScale / phaseScale);
        }
        LinearSolverDense<DMatrixRMaj> lu = LinearSolverFactory_DDRM.lu(size);
        DMatrixRMaj right = DMatrixRMaj.wrap(size, 1, b), solution = DMatrixRMaj.wrap(size, 1, x);
        if (!lu.setA(a)) throw new ArithmeticException("the slow period cannot be closed");
        lu.solve(right, solution);
    }
}
