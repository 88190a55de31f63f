package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.equations.Places;
import galena.engine.linear.BlockLu;
import galena.engine.linear.BlockPlan;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a sweep leaves behind of every interval, for the sweeps that come after it with one right-hand side: the factors of its
 * block system, what its stages lacked, how they depend on the frequency, and C at its end, by which a change of unknowns there
 * becomes one of charges. Arrays are kept while the mesh keeps its length.
 */
final class Intervals {
    private static final int S = Radau.STAGES;

    /** Points of an orbit at which sizes are looked at: a junction may conduct in a hundredth of the period. */
    private static final int LOOKS = 200;

    private final Places places;
    final int n;
    final int stride;
    /** Rows that hold charge, and each row's place among them, −1 without. */
    final int[] charged;

    final int[] chargeIndex;
    final int[] entryRow;
    final int[] entryColumn;
    BlockLu[] factors = {};
    double[][] residual = {};
    double[][] byFrequency = {};
    double[][] lastC = {};
    /** One right-hand side, to be filled by the sweep that wants it solved. */
    final double[] one;

    private final double[] solved;
    private @Nullable BlockPlan plan;

    Intervals(Equations equations) {
        n = equations.size();
        stride = equations.stride();
        places = new Places(equations);
        charged = places.charged;
        chargeIndex = places.chargeIndex;
        entryRow = places.entryRow;
        entryColumn = places.entryColumn;
        one = new double[n * S];
        solved = new double[n * S];
    }

    /** Plans the elimination from the sizes met along an orbit. Once per circuit topology and rough mesh width. */
    void plan(Equations equations, Orbit orbit, Evaluation work) {
        double[] sizes = places.sizes();
        int every = Math.max(1, orbit.points() / LOOKS);
        for (int p = 0; p < orbit.points(); p += every) {
            equations.evaluate(orbit.x, p * stride, work);
            places.raise(sizes, work, orbit.frequency * orbit.intervals());
        }
        plan = places.plan(sizes);
        factors = new BlockLu[0];
    }

    boolean planned() {
        return plan != null;
    }

    void makeRoom(int need) {
        int have = factors.length;
        if (have >= need) return;
        factors = Arrays.copyOf(factors, need);
        residual = Arrays.copyOf(residual, need);
        byFrequency = Arrays.copyOf(byFrequency, need);
        lastC = Arrays.copyOf(lastC, need);
        for (int k = have; k < need; k++) {
            factors[k] = new BlockLu(Objects.requireNonNull(plan));
            residual[k] = new double[n * S];
            byFrequency[k] = new double[n * S];
            lastC[k] = new double[entryRow.length];
        }
    }

    /** Solves the interval for {@link #one}, stores its stages and hands on δq. */
    void finish(Orbit orbit, int k, double[] step, double[] dq) {
        factors[k].solve(one, solved);
        for (int j = 0; j < S; j++) {
            int to = orbit.at(k, j);
            step[to] = 0;
            for (int r = 1; r <= n; r++) step[to + r] = solved[(r - 1) * S + j];
        }
        Arrays.fill(dq, 0);
        double[] c = lastC[k];
        for (int e = 1; e < entryRow.length; e++) {
            if (c[e] != 0) dq[chargeIndex[entryRow[e]]] += c[e] * solved[(entryColumn[e] - 1) * S + S - 1];
        }
    }

    /** Solves the interval's transposed system for {@link #one}. @return stage j of row r at 3(r − 1) + j; the caller's until the next */
    double[] finishTransposed(int k) {
        factors[k].solveTransposed(one, solved);
        return solved;
    }
}
