package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.startup.Site;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * The small dense system that closes the period: (1 − Φ) δq₀ = what the sweep left over, bordered by one condition for each extra
 * unknown. Conditions are integrals over the period of the site's voltage v: its first sine coefficient 2∫v sin is zero, which
 * pins the phase; its first cosine coefficient 2∫v cos has an imposed value, the amplitude. In place of the amplitude any figure of
 * the orbit may be imposed, by its gradient.
 */
final class Closing {
    static final int MOST_FREE = 2;

    /** The unknowns beyond the orbit itself, each with its condition. */
    enum Free {
        /** None: the period is imposed by sources. */
        NOTHING(0),
        /** The frequency; the phase is pinned. */
        FREQUENCY(1),
        /** The frequency and a conductance across the site; phase pinned, amplitude imposed. */
        FREQUENCY_AND_LOAD(2),
        /** The frequency and a parameter of the circuit; phase pinned, a figure imposed. */
        FREQUENCY_AND_PARAMETER(2);

        private final int count;

        Free(int count) {
            this.count = count;
        }

        int count() {
            return count;
        }

        boolean frequency() {
            return this != NOTHING;
        }

        boolean parameter() {
            return this == FREQUENCY_AND_PARAMETER;
        }

        boolean load() {
            return this == FREQUENCY_AND_LOAD;
        }
    }

    private final int m;
    private final double[][] rows;
    private final double[] values = new double[MOST_FREE];
    private final double[] start;
    private final double[] startCharge;
    private final DMatrixRMaj monodromy;
    private Free free = Free.NOTHING;
    private Slant slant = Slant.AMPLITUDE;
    private double[] figure = {};
    private double figureByFrequency;
    private double figureByParameter;
    private double figureLacks;
    private int[] figureUnknowns = {};
    private LinearSolverDense<DMatrixRMaj> solver;
    private DMatrixRMaj matrix;
    private double phase;
    private DMatrixRMaj solution;
    private DMatrixRMaj right;

    /** @param charges rows that hold charge */
    Closing(int charges) {
        m = charges;
        rows = new double[MOST_FREE][m + 1 + MOST_FREE];
        start = new double[m];
        startCharge = new double[m];
        monodromy = new DMatrixRMaj(m, m);
        solver = LinearSolverFactory_DDRM.lu(m);
        solution = new DMatrixRMaj(m, 1);
        matrix = new DMatrixRMaj(m, m);
        right = new DMatrixRMaj(m, 1);
    }

    void begin(Free unknowns) {
        free = unknowns;
        for (double[] row : rows) Arrays.fill(row, 0);
    }

    /** Imposes a condition beside the phase, linearised where the orbit stands. */
    void setCondition(Condition condition, Orbit orbit, Equations equations) {
        OrbitFigure.Gradient gradient = condition.figure().gradient(equations, orbit);
        figure = gradient.weights();
        for (int p = 0; p < figure.length; p++) figure[p] *= condition.weight();
        figureByFrequency = condition.weight() * gradient.byFrequency();
        figureByParameter = condition.byParameter();
        figureLacks = condition.lacks();
        figureUnknowns = IntStream.range(1, orbit.stride)
                .filter(u -> IntStream.range(0, orbit.points()).anyMatch(p -> figure[p * orbit.stride + u] != 0))
                .toArray();
    }

    /** Adds one interval's share of the conditions, column by column. */
    void count(Orbit orbit, int interval, Site site, double[][] stages, int width) {
        int bySite = free.parameter() ? 1 : free.count();
        for (int c = 0; c < bySite; c++) {
            for (int j = 0; j < Radau.STAGES; j++) {
                double weight = weight(orbit, interval, j, c) * (c == 1 ? slant.byAmplitude : 1);
                add(weight, stages, site.a(), j, rows[c], width);
                add(-weight, stages, site.b(), j, rows[c], width);
            }
        }
        if (!free.parameter()) return;
        for (int u : figureUnknowns) {
            for (int j = 0; j < Radau.STAGES; j++) {
                add(figure[orbit.at(interval, j) + u], stages, u, j, rows[1], width);
            }
        }
    }

    private static void add(double weight, double[][] stages, int unknown, int j, double[] to, int width) {
        if (unknown == 0) return;
        double[] from = stages[(unknown - 1) * Radau.STAGES + j];
        for (int col = 0; col < width; col++) to[col] += weight * from[col];
    }

    /** The weight of a stage in condition c: 0 the phase, 1 the amplitude. */
    private static double weight(Orbit orbit, int interval, int j, int c) {
        double angle = 2 * Math.PI * orbit.phase(interval, j);
        return 2 * Radau.WEIGHTS[j] * orbit.width(interval) * (c == 0 ? Math.sin(angle) : Math.cos(angle));
    }

    /** Condition c of values laid out like an orbit's. */
    static double condition(Orbit orbit, double[] x, Site site, int c) {
        double sum = 0;
        for (int k = 0; k < orbit.intervals(); k++) {
            for (int j = 0; j < Radau.STAGES; j++) {
                int at = orbit.at(k, j);
                sum += weight(orbit, k, j, c) * (x[at + site.a()] - x[at + site.b()]);
            }
        }
        return sum;
    }

    /** Imposes a sum of amplitude and load in place of the amplitude alone. */
    void setSlant(Slant slant) {
        this.slant = slant;
    }

    /**
     * What is imposed beside the phase where a load is free.
     *
     * @param byAmplitude weight of the amplitude
     * @param byLoad weight of the load
     */
    record Slant(double byAmplitude, double byLoad) {
        static final Slant AMPLITUDE = new Slant(1, 0);
    }

    /** Notes what the conditions still lack on an orbit; the sum of amplitude and load is {@code wanted}. */
    void impose(Orbit orbit, Site site, double wanted, double load) {
        values[0] = free.count() > 0 ? -condition(orbit, orbit.x, site, 0) : 0;
        values[1] = 0;
        if (free.parameter()) values[1] = figureLacks;
        if (free.load()) {
            values[1] = wanted - slant.byLoad * load - slant.byAmplitude * condition(orbit, orbit.x, site, 1);
        }
    }

    /**
     * Solves for the start charges and the extra unknowns.
     *
     * @param end δq at the period's end as columns [start charges | constant | extra unknowns]; read
     * @param extra written
     */
    void solve(double[][] end, double[] extra) {
        int e = free.count(), size = m + e;
        DMatrixRMaj a = new DMatrixRMaj(size, size);
        right = new DMatrixRMaj(size, 1);
        solution = new DMatrixRMaj(size, 1);
        for (int r = 0; r < m; r++) {
            for (int c = 0; c < m; c++) {
                monodromy.set(r, c, end[r][c]);
                a.set(r, c, (r == c ? 1 : 0) - end[r][c]);
            }
            for (int c = 0; c < e; c++) a.set(r, m + c, -end[r][m + 1 + c]);
            right.set(r, 0, end[r][m]);
        }
        for (int c = 0; c < e; c++) {
            for (int k = 0; k < m; k++) a.set(m + c, k, rows[c][k]);
            for (int k = 0; k < e; k++) a.set(m + c, m + k, rows[c][m + 1 + k]);
            if (c == 1 && free.parameter()) {
                a.add(m + c, m, figureByFrequency);
                a.add(m + c, m + 1, figureByParameter);
            }
            if (c == 1 && free.load()) a.add(m + c, m + 1, slant.byLoad);
            right.set(m + c, 0, values[c] - rows[c][m]);
        }
        matrix = a.copy();
        solver = LinearSolverFactory_DDRM.lu(size);
        if (!solver.setA(a))
            throw new ArithmeticException("the period cannot be closed: the closing system is singular");
        finish(extra);
    }

    private void finish(double[] extra) {
        solver.solve(right, solution);
        System.arraycopy(solution.data, 0, start, 0, m);
        for (int c = 0; c < free.count(); c++) extra[c] = solution.data[m + c];
    }

    /** Adds a multiple of the phase condition's weights to one interval's stages, column by column. */
    void addPhaseWeights(Orbit orbit, int interval, Site site, double factor, double[] stages) {
        for (int j = 0; j < Radau.STAGES; j++) {
            double weight = factor * weight(orbit, interval, j, 0);
            if (site.a() > 0) stages[(site.a() - 1) * Radau.STAGES + j] += weight;
            if (site.b() > 0) stages[(site.b() - 1) * Radau.STAGES + j] -= weight;
        }
    }

    /**
     * Solves with the transposed matrix of the last solve, for the adjoint sweep.
     *
     * @param start η at the period's start that a sweep from zero left; read
     * @param extra what the extra unknown's row still lacks
     * @return η at the period's end
     */
    double[] solveTransposed(double[] start, double extra) {
        DMatrixRMaj transposed = new DMatrixRMaj(matrix.numCols, matrix.numRows);
        for (int r = 0; r < matrix.numRows; r++) {
            for (int c = 0; c < matrix.numCols; c++) transposed.set(c, r, matrix.get(r, c));
        }
        DMatrixRMaj b = new DMatrixRMaj(matrix.numRows, 1), x = new DMatrixRMaj(matrix.numRows, 1);
        System.arraycopy(start, 0, b.data, 0, m);
        if (free.count() > 0) b.set(m, 0, extra);
        LinearSolverDense<DMatrixRMaj> lu = LinearSolverFactory_DDRM.lu(matrix.numRows);
        if (!lu.setA(transposed)) throw new ArithmeticException("the closing system is singular");
        lu.solve(b, x);
        phase = free.count() > 0 ? -x.get(m, 0) : 0;
        double[] end = new double[m];
        System.arraycopy(x.data, 0, end, 0, m);
        return end;
    }

    /** The weight of the phase condition that goes with the last transposed solve. */
    double transposedPhase() {
        return phase;
    }

    /** δq₀ of the last solve; the caller may overwrite it. */
    double[] startCharges() {
        return start;
    }

    /** Φ of the last sweep: δq over one period. A copy. */
    DMatrixRMaj monodromy() {
        return monodromy.copy();
    }

    /** Starts a question with the same matrix and another right-hand side, from an explicit start charge. */
    double[] beginParticular(double[] explicitStart) {
        System.arraycopy(explicitStart, 0, startCharge, 0, m);
        return explicitStart.clone();
    }

    /**
     * Ends it.
     *
     * @param stages the particular solution from that start charge; read
     * @param end its charge at the period's end; read
     * @param imposed whether the conditions ask for what the last {@link #impose} noted, or for nothing
     * @param extra written
     */
    void finishParticular(Orbit orbit, Site site, double[] stages, double[] end, boolean imposed, double[] extra) {
        // with δq₀ = explicit + z: the end is `end` + Φ z + …, so (1 − Φ) z − … = end − explicit
        for (int r = 0; r < m; r++) right.set(r, 0, end[r] - startCharge[r]);
        for (int c = 0; c < free.count(); c++) {
            right.set(m + c, 0, (imposed ? values[c] : 0) - condition(orbit, stages, site, c));
        }
        finish(extra);
        for (int r = 0; r < m; r++) start[r] += startCharge[r];
    }
}
