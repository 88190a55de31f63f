package galena.engine.timerun;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.equations.Pattern;
import galena.engine.linear.BlockLu;
import galena.engine.linear.BlockPlan;
import galena.engine.linear.SingularMatrix;
import galena.engine.steady.RadauTable;

/** One step after the other: Newton on three stages from the cubic of the step before. */
final class Step {
    private static final int S = 3;
    private static final int MOST_ITERATIONS = 12;
    private static final double SETTLED = 1e-6;
    private static final double ROUNDING = 1e-4;
    private static final double VOLTS = 1e-3;
    private static final double AMPERES = 1e-6;

    private final Equations equations;
    private final int n;
    private final int stride;
    private final Evaluation[] at = new Evaluation[S];
    private final double[][] stages;
    private final double[] start;
    private final double[] startCharge;
    private final double[][] before;
    private final Passage passage;
    private final double[] foretold;
    private final double[] low;
    private final double[] high;
    private final double[] rhs;
    private final double[] change;
    private double widthBefore;
    private double planned;
    private BlockLu factors;

    Step(Equations equations, double[] x, double[] kick) {
        this.equations = equations;
        n = equations.size();
        stride = equations.stride();
        for (int j = 0; j < S; j++) at[j] = equations.newEvaluation();
        stages = new double[S][stride];
        before = new double[S + 1][stride];
        passage = new Passage(before);
        start = x.clone();
        foretold = new double[stride];
        low = x.clone();
        high = x.clone();
        rhs = new double[n * S];
        change = new double[n * S];
        equations.evaluate(start, 0, at[0]);
        startCharge = at[0].q.clone();
        for (int r = 1; r < stride; r++) startCharge[r] += kick[r];
        for (double[] row : before) System.arraycopy(x, 0, row, 0, stride);
        widthBefore = Double.POSITIVE_INFINITY;
        factors = plan(1e9);
    }

    /** A plan for the sizes that a step of 1/rate brings. */
    private BlockLu plan(double rate) {
        planned = rate;
        Pattern pattern = equations.pattern();
        int count = pattern.entries() - 1;
        int[] rows = new int[count], columns = new int[count];
        double[] typical = new double[count];
        equations.evaluate(start, 0, at[0]);
        for (int e = 0; e < count; e++) {
            rows[e] = pattern.row(e + 1) - 1;
            columns[e] = pattern.column(e + 1) - 1;
            typical[e] = Math.abs(at[0].g[e + 1]) + 4 * rate * Math.abs(at[0].c[e + 1]);
        }
        return new BlockLu(BlockPlan.of(n, rows, columns, typical));
    }

    /** The step accepted last. */
    Passage passage() {
        return passage;
    }

    /** Solves a step; true when Newton settled. */
    boolean solve(double time, double width) {
        double rate = 1 / width;
        if (rate > 100 * planned || rate < planned / 100) factors = plan(rate);
        foretell(width);
        double last = Double.POSITIVE_INFINITY;
        for (int k = 0; k < MOST_ITERATIONS; k++) {
            double size;
            try {
                size = iterate(time, width);
            } catch (SingularMatrix none) {
                return false;
            }
            if (!Double.isFinite(size)) return false;
            if (size < SETTLED) return true;
            if (size < ROUNDING && size >= last) return true; // the step is so short that currents round to no less
            last = size;
        }
        return false;
    }

    /** Extends the cubic of the step before. */
    private void foretell(double width) {
        double stretch = Double.isInfinite(widthBefore) ? 0 : width / widthBefore;
        for (int j = 0; j < S; j++) {
            double s = 1 + stretch * RadauTable.node(j);
            for (int u = 1; u < stride; u++) {
                double value = 0;
                for (int p = 0; p <= S; p++) value += RadauTable.basis(p, s) * before[p][u];
                stages[j][u] = stretch == 0 ? start[u] : value;
            }
        }
        System.arraycopy(stages[S - 1], 0, foretold, 0, stride);
    }

    private double iterate(double time, double width) {
        double rate = 1 / width;
        for (int j = 0; j < S; j++) {
            equations.evaluate(stages[j], 0, at[j]);
            equations.addSources(time + RadauTable.node(j) * width, 1, at[j]);
        }
        factors.clear();
        double[] a = factors.values();
        for (int e = 1; e < equations.pattern().entries(); e++) {
            int block = factors.at(e - 1);
            for (int i = 0; i < S; i++) {
                for (int j = 0; j < S; j++) a[block + S * i + j] += rate * RadauTable.inverse(i, j) * at[j].c[e];
                a[block + S * i + i] += at[i].g[e];
            }
        }
        factors.factor();
        for (int r = 1; r <= n; r++) {
            for (int i = 0; i < S; i++) {
                double slope = 0;
                for (int j = 0; j < S; j++) slope += RadauTable.inverse(i, j) * (at[j].q[r] - startCharge[r]);
                rhs[(r - 1) * S + i] = -(rate * slope + at[i].i[r]);
            }
        }
        factors.solve(rhs, change);
        double size = 0;
        for (int u = 1; u <= n; u++) {
            for (int j = 0; j < S; j++) {
                double step = change[(u - 1) * S + j];
                stages[j][u] += step;
                size = Math.max(size, Math.abs(step) / scale(u));
            }
        }
        return size;
    }

    private double scale(int u) {
        return Math.max(high[u] - low[u], 0) + (equations.isCurrent(u) ? AMPERES : VOLTS);
    }

    /**
     * Two short first steps: in the one everything follows the kicked charges, however far it jumps; the other is smooth, and the
     * next can be foretold from it.
     *
     * @return false when the equations could not be solved
     */
    boolean settle(double time, double width) {
        if (!solve(time, width)) return false;
        accept(width);
        widthBefore = Double.POSITIVE_INFINITY;
        System.arraycopy(start, 0, low, 0, stride);
        System.arraycopy(start, 0, high, 0, stride);
        if (!solve(time + width, width)) return false;
        accept(width);
        return true;
    }

    /** How far the step's end lies from what was foretold, as a share of swing. */
    double surprise() {
        double worst = 0;
        for (int u = 1; u < stride; u++) worst = Math.max(worst, Math.abs(stages[S - 1][u] - foretold[u]) / scale(u));
        return worst;
    }

    /** Makes the step's end the start of the next. */
    void accept(double width) {
        System.arraycopy(start, 0, before[0], 0, stride);
        for (int j = 0; j < S; j++) System.arraycopy(stages[j], 0, before[j + 1], 0, stride);
        widthBefore = width;
        System.arraycopy(stages[S - 1], 0, start, 0, stride);
        equations.evaluate(start, 0, at[0]);
        System.arraycopy(at[0].q, 0, startCharge, 0, stride);
        for (int u = 1; u < stride; u++) {
            low[u] = Math.min(low[u], start[u]);
            high[u] = Math.max(high[u], start[u]);
        }
    }
}
