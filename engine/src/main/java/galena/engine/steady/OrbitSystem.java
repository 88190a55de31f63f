package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.linear.BlockLu;
import galena.engine.startup.Site;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The linearised collocation equations of an orbit, and their solution.
 *
 * <p>In interval k of width h, with start charge q₀ and stages X₁..X₃, the equations are f/h Σⱼ Aⁱⁿᵛᵢⱼ (q(Xⱼ) − q₀) + i(Xᵢ) = 0. The
 * start enters through its charge alone. So a change δq₀ of m charges (m the rows that hold any) is carried through the
 * intervals one by one: each solves its own sparse block system for m + 1 + e right-hand sides (e extra unknowns: the frequency,
 * a load) and hands on δq of its last stage. After the last interval the period is closed by (1 − Φ) δq₀ = …, bordered by one
 * condition for each extra unknown ({@link Closing}). Then one more pass with a single right-hand side gives all stages.
 * Carrying charges instead of unknowns keeps the closing system small, and its Φ is the monodromy matrix on the consistent
 * subspace: algebraic unknowns never enter it.
 *
 * <p>Cost of one interval with n unknowns of some five entries a row: about 60 n multiply-adds to factor and 45 n a right-hand
 * side. One per thread; arrays are kept from solve to solve while the mesh keeps its length.
 */
final class OrbitSystem {
    private static final int S = Radau.STAGES;

    private Equations equations;
    private final Site site;
    private double drive;
    private final Intervals intervals;
    private final int n;
    private final int stride;
    private final int[] charged;
    private final int[] chargeIndex;
    private final Evaluation[] stage = new Evaluation[S];
    private final int[] entryRow;
    private final int[] entryColumn;
    private final int[] siteEntries;
    private final Closing closing;
    private final double[][] rhs;
    private final double[][] solution;
    private double[][] carried;
    private double[][] handedOn;
    private final double[] startCharge;
    private final double[] one;
    private final Evaluation other;
    private @Nullable Equations blended;
    private double share;
    /** The mesh of the orbit last linearised. */
    private double[] factoredMesh = {};

    /** Voltages at which junctions are linearised, point by point of the orbit; empty: where the orbit puts them. */
    private double[] tangents = {};

    private double load;
    private double loadRest;
    private Change parameter = new Change(new double[0], new double[0]);
    private Condition imposed = Condition.figure(OrbitFigure.frequency(), 0);

    /**
     * @param site where the phase is pinned and an extra load would sit
     */
    OrbitSystem(Equations equations, Site site) {
        this.equations = equations;
        this.site = site;
        intervals = new Intervals(equations);
        other = equations.newEvaluation();
        n = intervals.n;
        stride = intervals.stride;
        charged = intervals.charged;
        chargeIndex = intervals.chargeIndex;
        entryRow = intervals.entryRow;
        entryColumn = intervals.entryColumn;
        for (int j = 0; j < S; j++) stage[j] = equations.newEvaluation();
        int a = site.a(), b = site.b();
        siteEntries =
                new int[] {equations.entry(a, a), equations.entry(a, b), equations.entry(b, a), equations.entry(b, b)};
        closing = new Closing(charged.length);
        int width = charged.length + 1 + Closing.MOST_FREE;
        rhs = new double[n * S][width];
        solution = new double[n * S][width];
        carried = new double[charged.length][width];
        handedOn = new double[charged.length][width];
        startCharge = new double[stride];
        one = intervals.one;
    }

    Equations equations() {
        return equations;
    }

    /** Goes on with other values of the same circuit: plan and arrays are kept. @throws IllegalArgumentException for another structure */
    void setEquations(Equations changed) {
        if (!equations.pattern().sameAs(changed.pattern())) {
            throw new IllegalArgumentException("the circuits differ in structure, not only in values");
        }
        equations = changed;
    }

    /**
     * Puts a circuit in between in this one's place, until it is taken back.
     *
     * @param from another circuit of the same structure
     * @param part of the way from it to this one, 0 to 1
     */
    void setBetween(Equations from, double part) {
        blended = from;
        share = part;
    }

    void setBetweenNothing() {
        blended = null;
    }

    Site site() {
        return site;
    }

    /** Siemens across the site, beside what the circuit has. */
    double load() {
        return load;
    }

    void setLoad(double siemens) {
        load = siemens;
    }

    /** The standing voltage across the site against which the load works, so that it takes no direct current at rest, V. */
    void setLoadRest(double volts) {
        loadRest = volts;
    }

    /** The share of the sources' alternating parts that is heard; zero, as at first, leaves them at rest. */
    void setDrive(double share) {
        drive = share;
    }

    double drive() {
        return drive;
    }

    /**
     * Lets a parameter be an unknown beside the frequency.
     *
     * @param change ∂i/∂p and ∂q/∂p along the orbit about to be solved
     * @param condition imposed for it
     */
    void setParameter(Change change, Condition condition) {
        parameter = change;
        imposed = condition;
    }

    /** Lays the tangent of every junction where an orbit puts it; from now on steps are taken with these in the junctions' place. */
    void layTangents(Orbit orbit) {
        tangents = new double[orbit.points() * equations.junctions()];
        Arrays.fill(tangents, Double.POSITIVE_INFINITY);
        leadTangents(orbit);
    }

    /**
     * Moves the tangents towards an orbit on the same mesh, as far as each can be believed.
     *
     * @return how far the farthest still is from where the orbit puts it, in volts by which its junction's current grows by e
     */
    double leadTangents(Orbit orbit) {
        if (tangents.length == 0) return 0;
        double farthest = 0;
        for (int p = 0; p < orbit.points(); p++) {
            farthest = Math.max(farthest, equations.lead(orbit.x, p * stride, tangents, p * equations.junctions()));
        }
        return farthest;
    }

    /** Junctions are themselves again. */
    void dropTangents() {
        tangents = new double[0];
    }

    Intervals intervals() {
        return intervals;
    }

    /** The closing system of the last {@link #newtonStep}, with the monodromy matrix. */
    Closing closing() {
        return closing;
    }

    /** Plans the elimination from the sizes met along an orbit. Once per circuit topology and rough mesh width. */
    void plan(Orbit orbit) {
        intervals.plan(equations, orbit, stage[0]);
    }

    /** Whether {@link #repeatedStep} has factors for an orbit's mesh. */
    boolean factored(Orbit orbit) {
        return factoredMesh == orbit.mesh;
    }

    private void makeRoom(Orbit orbit) {
        if (!intervals.planned()) plan(orbit);
        intervals.makeRoom(orbit.intervals());
    }

    /**
     * One Newton step.
     *
     * @param orbit where; not changed
     * @param free the unknowns beside the orbit
     * @param amplitude imposed on the site's first cosine coefficient, or on its sum with the load, when a load is free
     * @param step written; the step of all stage values, laid out as {@link Orbit#x}
     * @param extra written; the steps of the extra unknowns
     */
    void newtonStep(Orbit orbit, Closing.Free free, double amplitude, double[] step, double[] extra) {
        makeRoom(orbit);
        factoredMesh = orbit.mesh;
        closing.begin(free);
        if (free.parameter()) closing.setCondition(imposed, orbit, equations);
        forward(orbit, free);
        closing.impose(orbit, site, amplitude, load);
        closing.solve(carried, extra);
        backward(orbit, free, closing.startCharges(), extra, step);
    }

    /**
     * A step from what an orbit lacks now with the matrix of the last {@link #newtonStep} on the same mesh: one evaluation and two
     * right-hand sides in place of a factorisation and one for every charge.
     *
     * @param orbit where; not changed
     * @param free as in the last step, without a load or parameter
     * @param step written
     * @param extra written
     */
    void repeatedStep(Orbit orbit, Closing.Free free, double[] step, double[] extra) {
        evaluate(orbit, orbit.intervals() - 1, S - 1, stage[0]);
        System.arraycopy(stage[0].q, 0, startCharge, 0, stride);
        for (int k = 0; k < orbit.intervals(); k++) {
            for (int j = 0; j < S; j++) evaluate(orbit, k, j, stage[j]);
            fillResidual(orbit, k, false);
            System.arraycopy(stage[S - 1].q, 0, startCharge, 0, stride);
        }
        Arrays.fill(extra, 0);
        double[] dq = closing.beginParticular(new double[charged.length]);
        backward(orbit, free, dq, extra, step);
        closing.impose(orbit, site, 0, load);
        closing.finishParticular(orbit, site, step, dq, true, extra);
        backward(orbit, free, closing.startCharges(), extra, step);
    }

    /** Factors every interval and carries all columns through the period. */
    private void forward(Orbit orbit, Closing.Free free) {
        int m = charged.length, width = m + 1 + free.count();
        for (int r = 0; r < m; r++) {
            Arrays.fill(carried[r], 0);
            carried[r][r] = 1;
        }
        evaluate(orbit, orbit.intervals() - 1, S - 1, stage[0]);
        System.arraycopy(stage[0].q, 0, startCharge, 0, stride);
        for (int k = 0; k < orbit.intervals(); k++) {
            for (int j = 0; j < S; j++) evaluate(orbit, k, j, stage[j]);
            factor(orbit, k);
            fillResidual(orbit, k, true);
            fillColumns(orbit, k, free, width);
            intervals.factors[k].solve(rhs, solution, width);
            handOn(k, width);
            if (free.parameter()) {
                int last = orbit.at(k, S - 1);
                for (int r = 0; r < m; r++) carried[r][m + 2] += parameter.charge()[last + charged[r]];
            }
            closing.count(orbit, k, site, solution, width);
            System.arraycopy(stage[S - 1].q, 0, startCharge, 0, stride);
        }
    }

    private void evaluate(Orbit orbit, int interval, int j, Evaluation e) {
        int at = orbit.at(interval, j);
        if (tangents.length == 0) equations.evaluate(orbit.x, at, e);
        else equations.evaluate(orbit.x, at, tangents, at / stride * equations.junctions(), e);
        if (blended != null) blend(blended, orbit.x, at, e);
        if (drive != 0) equations.addSources(orbit.phase(interval, j) / orbit.frequency, drive, e);
        if (load != 0) {
            double current = load * (orbit.x[at + site.a()] - orbit.x[at + site.b()] - loadRest);
            e.i[site.a()] += current;
            e.i[site.b()] -= current;
            e.g[siteEntries[0]] += load;
            e.g[siteEntries[1]] -= load;
            e.g[siteEntries[2]] -= load;
            e.g[siteEntries[3]] += load;
        }
    }

    /** A part of the way from another circuit of the same structure to this one. */
    private void blend(Equations from, double[] x, int at, Evaluation e) {
        from.evaluate(x, at, other);
        double rest = 1 - share;
        for (int r = 0; r < e.i.length; r++) {
            e.i[r] = share * e.i[r] + rest * other.i[r];
            e.q[r] = share * e.q[r] + rest * other.q[r];
        }
        for (int k = 0; k < e.g.length; k++) {
            e.g[k] = share * e.g[k] + rest * other.g[k];
            e.c[k] = share * e.c[k] + rest * other.c[k];
        }
    }

    private void factor(Orbit orbit, int k) {
        double rate = orbit.frequency / orbit.width(k);
        double[] w = Radau.INVERSE;
        double r00 = rate * w[0], r01 = rate * w[1], r02 = rate * w[2];
        double r10 = rate * w[3], r11 = rate * w[4], r12 = rate * w[5];
        double r20 = rate * w[6], r21 = rate * w[7], r22 = rate * w[8];
        BlockLu lu = intervals.factors[k];
        lu.clear();
        double[] a = lu.values(), c0 = stage[0].c, c1 = stage[1].c, c2 = stage[2].c;
        double[] g0 = stage[0].g, g1 = stage[1].g, g2 = stage[2].g;
        for (int e = 1; e < entryRow.length; e++) {
            int at = lu.at(e - 1);
            a[at] += r00 * c0[e] + g0[e];
            a[at + 1] += r01 * c1[e];
            a[at + 2] += r02 * c2[e];
            a[at + 3] += r10 * c0[e];
            a[at + 4] += r11 * c1[e] + g1[e];
            a[at + 5] += r12 * c2[e];
            a[at + 6] += r20 * c0[e];
            a[at + 7] += r21 * c1[e];
            a[at + 8] += r22 * c2[e] + g2[e];
        }
        lu.factor();
        System.arraycopy(c2, 0, intervals.lastC[k], 0, c2.length);
    }

    /** Σⱼ Aⁱⁿᵛᵢⱼ (qⱼ − q₀)/h, kept: the derivative by f; times f plus i: the residual. */
    private void fillResidual(Orbit orbit, int k, boolean keepSlope) {
        double inverseWidth = 1 / orbit.width(k);
        double[] w = Radau.INVERSE, q0 = stage[0].q, q1 = stage[1].q, q2 = stage[2].q;
        for (int r = 1; r <= n; r++) {
            double a = (q0[r] - startCharge[r]) * inverseWidth;
            double b = (q1[r] - startCharge[r]) * inverseWidth;
            double c = (q2[r] - startCharge[r]) * inverseWidth;
            for (int i = 0; i < S; i++) {
                double slope = w[S * i] * a + w[S * i + 1] * b + w[S * i + 2] * c;
                int at = (r - 1) * S + i;
                if (keepSlope) intervals.byFrequency[k][at] = slope;
                intervals.residual[k][at] = orbit.frequency * slope + stage[i].i[r];
            }
        }
    }

    private void fillColumns(Orbit orbit, int k, Closing.Free free, int width) {
        double rate = orbit.frequency / orbit.width(k);
        int m = charged.length;
        for (int r = 1; r <= n; r++) {
            double[] from = chargeIndex[r] >= 0 ? carried[chargeIndex[r]] : null;
            for (int i = 0; i < S; i++) {
                int at = (r - 1) * S + i;
                double[] row = rhs[at];
                if (from == null) {
                    Arrays.fill(row, 0, width, 0);
                } else {
                    double weight = rate * Radau.ROW_SUMS[i];
                    for (int c = 0; c < width; c++) row[c] = weight * from[c];
                }
                row[m] -= intervals.residual[k][at];
                if (free.frequency()) row[m + 1] -= intervals.byFrequency[k][at];
                if (free.load()) row[m + 2] -= loadCurrent(orbit, k, r, i);
                if (free.parameter()) row[m + 2] -= parameter.put(orbit, k, r, i, rate, chargeIndex[r] >= 0);
            }
        }
    }

    /** What one siemens across the site adds to a row. */
    private double loadCurrent(Orbit orbit, int k, int row, int i) {
        if (row != site.a() && row != site.b()) return 0;
        int at = orbit.at(k, i);
        double v = orbit.x[at + site.a()] - orbit.x[at + site.b()] - loadRest;
        return row == site.a() ? v : -v;
    }

    /** δq of the last stage, from all columns of the solution. */
    private void handOn(int k, int width) {
        for (double[] row : handedOn) Arrays.fill(row, 0, width, 0);
        double[] c = intervals.lastC[k];
        for (int e = 1; e < entryRow.length; e++) {
            if (c[e] == 0) continue;
            double[] to = handedOn[chargeIndex[entryRow[e]]], from = solution[(entryColumn[e] - 1) * S + S - 1];
            double value = c[e];
            for (int col = 0; col < width; col++) to[col] += value * from[col];
        }
        double[][] swap = carried;
        carried = handedOn;
        handedOn = swap;
    }

    /** With start charges and extra unknowns known, the steps of all stages. */
    private void backward(Orbit orbit, Closing.Free free, double[] dq, double[] extra, double[] step) {
        for (int k = 0; k < orbit.intervals(); k++) {
            double rate = orbit.frequency / orbit.width(k);
            for (int r = 1; r <= n; r++) {
                double start = chargeIndex[r] >= 0 ? dq[chargeIndex[r]] : 0;
                for (int i = 0; i < S; i++) {
                    int at = (r - 1) * S + i;
                    double b = rate * Radau.ROW_SUMS[i] * start - intervals.residual[k][at];
                    if (free.frequency()) b -= intervals.byFrequency[k][at] * extra[0];
                    if (free.load()) b -= loadCurrent(orbit, k, r, i) * extra[1];
                    if (free.parameter()) b -= parameter.put(orbit, k, r, i, rate, chargeIndex[r] >= 0) * extra[1];
                    one[at] = b;
                }
            }
            intervals.finish(orbit, k, step, dq);
            if (free.parameter()) parameter.handOn(orbit, k, charged, extra[1], dq);
        }
    }

    /**
     * The derivative of the solved orbit by a parameter, from the factors of the last {@link #newtonStep}: exact for the
     * discrete equations.
     *
     * @param orbit the solved orbit
     * @param change ∂i/∂p and ∂q/∂p along it
     * @param free as in the last step
     * @param derivative written; of all stage values
     * @param extra written; of the extra unknowns
     */
    void differentiate(Orbit orbit, Change change, Closing.Free free, double[] derivative, double[] extra) {
        double[] dq = new double[charged.length];
        for (int m = 0; m < dq.length; m++) dq[m] = change.charge()[orbit.start(0) + charged[m]];
        double[] particular = closing.beginParticular(dq);
        sweepChange(orbit, change, particular, new double[Closing.MOST_FREE], free, derivative);
        closing.finishParticular(orbit, site, derivative, particular, false, extra);
        double[] start = closing.startCharges();
        sweepChange(orbit, change, start, extra, free, derivative);
    }

    private void sweepChange(
            Orbit orbit, Change change, double[] dq, double[] extra, Closing.Free free, double[] derivative) {
        for (int k = 0; k < orbit.intervals(); k++) {
            double rate = orbit.frequency / orbit.width(k);
            for (int r = 1; r <= n; r++) {
                double start = chargeIndex[r] >= 0 ? dq[chargeIndex[r]] : 0;
                for (int s = 0; s < S; s++) {
                    int at = (r - 1) * S + s;
                    double b = rate * Radau.ROW_SUMS[s] * start - change.put(orbit, k, r, s, rate, chargeIndex[r] >= 0);
                    if (free.frequency()) b -= intervals.byFrequency[k][at] * extra[0];
                    if (free.load()) b -= loadCurrent(orbit, k, r, s) * extra[1];
                    one[at] = b;
                }
            }
            intervals.finish(orbit, k, derivative, dq);
            change.handOn(orbit, k, charged, 1, dq);
        }
    }

    /** One over the root of each charged row's own capacitance or inductance at the period's start. */
    double[] energyScales(Orbit orbit) {
        equations.evaluate(orbit.x, orbit.start(0), stage[0]);
        double[] own = new double[stride];
        for (int e = 1; e < entryRow.length; e++) {
            if (entryRow[e] == entryColumn[e]) own[entryRow[e]] += Math.abs(stage[0].c[e]);
        }
        double[] scales = new double[charged.length];
        for (int m = 0; m < scales.length; m++) scales[m] = 1 / Math.sqrt(own[charged[m]] + Double.MIN_NORMAL);
        return scales;
    }

    /** dq/dt (per unit of phase) of the charged rows at the period's start: the direction in which a shift in time moves. */
    double[] startDrift(Orbit orbit) {
        int last = orbit.start(0);
        equations.evaluate(orbit.x, last, stage[0]);
        double[] drift = new double[charged.length];
        for (int m = 0; m < drift.length; m++) drift[m] = -stage[0].i[charged[m]] / orbit.frequency;
        return drift;
    }
}
