package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.equations.Pattern;
import galena.engine.linear.BlockLu;
import galena.engine.linear.BlockPlan;
import galena.engine.startup.Site;
import java.util.Arrays;
import java.util.Objects;
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

    /** Weight of q's rate against i when the sizes of a typical matrix are guessed: the method's largest coefficient. */
    private static final double RATE_WEIGHT = 4;

    private Equations equations;
    private final Site site;
    private double drive;
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
    private final double[] oneSolution;
    private BlockLu[] factors = {};
    private double[][] residual = {};
    private double[][] byFrequency = {};
    private double[][] lastC = {};
    private double load;
    private double loadRest;
    private Change parameter = new Change(new double[0], new double[0]);

    /**
     * @param site where the phase is pinned and an extra load would sit
     */
    OrbitSystem(Equations equations, Site site) {
        this.equations = equations;
        this.site = site;
        n = equations.size();
        stride = equations.stride();
        charged = equations.chargedRows();
        chargeIndex = new int[stride];
        Arrays.fill(chargeIndex, -1);
        for (int m = 0; m < charged.length; m++) chargeIndex[charged[m]] = m;
        for (int j = 0; j < S; j++) stage[j] = equations.newEvaluation();
        Pattern pattern = equations.pattern();
        entryRow = new int[pattern.entries()];
        entryColumn = new int[pattern.entries()];
        for (int e = 1; e < entryRow.length; e++) {
            entryRow[e] = pattern.row(e);
            entryColumn[e] = pattern.column(e);
        }
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
        one = new double[n * S];
        oneSolution = new double[n * S];
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

    /** Lets a parameter take the frequency's place among the unknowns: its ∂i/∂p and ∂q/∂p along the orbit about to be solved. */
    void setParameter(Change change) {
        parameter = change;
    }

    /** The closing system of the last {@link #newtonStep}, with the monodromy matrix. */
    Closing closing() {
        return closing;
    }

    /** Plans the elimination from the sizes met along an orbit. Once per circuit topology and rough mesh width. */
    void plan(Orbit orbit) {
        double[] typical = new double[entryRow.length - 1];
        double rate = RATE_WEIGHT * orbit.frequency * orbit.intervals();
        int every = Math.max(1, orbit.points() / 12);
        for (int p = 0; p < orbit.points(); p += every) {
            equations.evaluate(orbit.x, p * stride, stage[0]);
            for (int e = 1; e < entryRow.length; e++) {
                double size = Math.abs(stage[0].g[e]) + rate * Math.abs(stage[0].c[e]);
                typical[e - 1] = Math.max(typical[e - 1], size);
            }
        }
        int[] rows = new int[typical.length], columns = new int[typical.length];
        for (int e = 0; e < typical.length; e++) {
            rows[e] = entryRow[e + 1] - 1;
            columns[e] = entryColumn[e + 1] - 1;
        }
        plan = BlockPlan.of(n, rows, columns, typical);
        factors = new BlockLu[0];
    }

    private @Nullable BlockPlan plan;

    private void makeRoom(Orbit orbit) {
        if (plan == null) plan(orbit);
        int have = factors.length, need = orbit.intervals();
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

    /**
     * One Newton step.
     *
     * @param orbit where; not changed
     * @param free the unknowns beside the orbit
     * @param amplitude imposed on the site's first cosine coefficient, when a load is free
     * @param step written; the step of all stage values, laid out as {@link Orbit#x}
     * @param extra written; the steps of the extra unknowns
     */
    void newtonStep(Orbit orbit, Closing.Free free, double amplitude, double[] step, double[] extra) {
        makeRoom(orbit);
        closing.begin(free);
        forward(orbit, free);
        closing.impose(orbit, site, amplitude);
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
        closing.impose(orbit, site, 0);
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
            factors[k].solve(rhs, solution, width);
            handOn(k, width);
            if (free.parameter()) {
                int last = orbit.at(k, S - 1);
                for (int r = 0; r < m; r++) carried[r][m + 1] += parameter.charge[last + charged[r]];
            }
            closing.count(orbit, k, site, solution, width);
            System.arraycopy(stage[S - 1].q, 0, startCharge, 0, stride);
        }
    }

    private void evaluate(Orbit orbit, int interval, int j, Evaluation e) {
        int at = orbit.at(interval, j);
        equations.evaluate(orbit.x, at, e);
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

    private void factor(Orbit orbit, int k) {
        double rate = orbit.frequency / orbit.width(k);
        double[] w = Radau.INVERSE;
        double r00 = rate * w[0], r01 = rate * w[1], r02 = rate * w[2];
        double r10 = rate * w[3], r11 = rate * w[4], r12 = rate * w[5];
        double r20 = rate * w[6], r21 = rate * w[7], r22 = rate * w[8];
        BlockLu lu = factors[k];
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
        System.arraycopy(c2, 0, lastC[k], 0, c2.length);
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
                if (keepSlope) byFrequency[k][at] = slope;
                residual[k][at] = orbit.frequency * slope + stage[i].i[r];
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
                row[m] -= residual[k][at];
                if (free.frequency()) row[m + 1] -= byFrequency[k][at];
                if (free.load()) row[m + 2] -= loadCurrent(orbit, k, r, i);
                if (free.parameter()) row[m + 1] -= explicit(orbit, parameter, k, r, i, rate);
            }
        }
    }

    /**
     * What a parameter adds to row r at stage i by itself: rate Σⱼ Aⁱⁿᵛᵢⱼ ∂qⱼ/∂p + ∂i/∂p. Where the row already holds charge, that at the
     * interval's start is handed on with the rest; where the change alone brings charge to the row, it is taken off here.
     */
    private double explicit(Orbit orbit, Change change, int k, int r, int i, double rate) {
        double start = chargeIndex[r] >= 0 ? 0 : change.charge[orbit.start(k) + r], slope = 0;
        for (int j = 0; j < S; j++) slope += Radau.INVERSE[S * i + j] * (change.charge[orbit.at(k, j) + r] - start);
        return rate * slope + change.current[orbit.at(k, i) + r];
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
        double[] c = lastC[k];
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
                    double b = rate * Radau.ROW_SUMS[i] * start - residual[k][at];
                    if (free.frequency()) b -= byFrequency[k][at] * extra[0];
                    if (free.load()) b -= loadCurrent(orbit, k, r, i) * extra[1];
                    if (free.parameter()) b -= explicit(orbit, parameter, k, r, i, rate) * extra[0];
                    one[at] = b;
                }
            }
            finishInterval(orbit, k, step, dq);
            if (free.parameter()) {
                int last = orbit.at(k, S - 1);
                for (int r = 0; r < dq.length; r++) dq[r] += parameter.charge[last + charged[r]] * extra[0];
            }
        }
    }

    /** Solves the interval for the one right-hand side, stores its stages and hands on δq. */
    private void finishInterval(Orbit orbit, int k, double[] step, double[] dq) {
        factors[k].solve(one, oneSolution);
        for (int j = 0; j < S; j++) {
            int to = orbit.at(k, j);
            step[to] = 0;
            for (int r = 1; r <= n; r++) step[to + r] = oneSolution[(r - 1) * S + j];
        }
        carryOne(k, dq);
    }

    private void carryOne(int k, double[] dq) {
        Arrays.fill(dq, 0);
        double[] c = lastC[k];
        for (int e = 1; e < entryRow.length; e++) {
            if (c[e] != 0) dq[chargeIndex[entryRow[e]]] += c[e] * oneSolution[(entryColumn[e] - 1) * S + S - 1];
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
        for (int m = 0; m < dq.length; m++) dq[m] = change.charge[orbit.start(0) + charged[m]];
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
                    double b = rate * Radau.ROW_SUMS[s] * start - explicit(orbit, change, k, r, s, rate);
                    if (free.frequency()) b -= byFrequency[k][at] * extra[0];
                    if (free.load()) b -= loadCurrent(orbit, k, r, s) * extra[1];
                    one[at] = b;
                }
            }
            finishInterval(orbit, k, derivative, dq);
            int last = orbit.at(k, S - 1);
            for (int m = 0; m < dq.length; m++) dq[m] += change.charge[last + charged[m]];
        }
    }

    /**
     * The adjoint of a figure φ of the solved orbit, from the factors of the last {@link #newtonStep}: weights Λ of the stages' rows and η
     * of the charges handed on, so that dφ/dp = Σ ηᵀ ∂q/∂p − Σ Λᵀ(explicit change) for any parameter p at the cost of a product.
     *
     * @param gradient ∂φ/∂x along the orbit, laid out like {@link Orbit#x}
     * @param byExtra ∂φ by the extra unknown (the frequency); ignored when nothing is free
     * @param rows written; Λ, laid out like {@link Orbit#x} with rows in place of unknowns
     * @param handed written; η of each interval's end, charges by interval
     */
    void adjoint(Orbit orbit, Closing.Free free, double[] gradient, double byExtra, double[] rows, double[][] handed) {
        double[] eta = new double[charged.length];
        double extraSum = sweepAdjoint(orbit, free, gradient, eta, 0, rows, handed);
        double[] end = closing.solveTransposed(eta, byExtra - extraSum);
        double phase = free.frequency() ? closing.transposedPhase() : 0;
        sweepAdjoint(orbit, free, gradient, end, phase, rows, handed);
    }

    /** Backwards through the period from η at its end; η at its start is left in {@code eta}. Returns Σ Λᵀ ∂R/∂f. */
    private double sweepAdjoint(
            Orbit orbit,
            Closing.Free free,
            double[] gradient,
            double[] eta,
            double phase,
            double[] rows,
            double[][] handed) {
        double extraSum = 0;
        for (int k = orbit.intervals() - 1; k >= 0; k--) {
            System.arraycopy(eta, 0, handed[k], 0, eta.length);
            for (int j = 0; j < S; j++) {
                int at = orbit.at(k, j);
                for (int u = 1; u <= n; u++) one[(u - 1) * S + j] = gradient[at + u];
            }
            if (phase != 0) closing.addPhaseWeights(orbit, k, site, phase, one);
            double[] c = lastC[k];
            for (int e = 1; e < entryRow.length; e++) {
                if (c[e] != 0) one[(entryColumn[e] - 1) * S + S - 1] += c[e] * eta[chargeIndex[entryRow[e]]];
            }
            factors[k].solveTransposed(one, oneSolution);
            double rate = orbit.frequency / orbit.width(k);
            Arrays.fill(eta, 0);
            for (int r = 1; r <= n; r++) {
                for (int j = 0; j < S; j++) {
                    double lambda = oneSolution[(r - 1) * S + j];
                    rows[orbit.at(k, j) + r] = lambda;
                    if (free.frequency()) extraSum += lambda * byFrequency[k][(r - 1) * S + j];
                    if (chargeIndex[r] >= 0) eta[chargeIndex[r]] += rate * Radau.ROW_SUMS[j] * lambda;
                }
            }
        }
        return extraSum;
    }

    /** dφ/dp from an adjoint and a parameter's explicit change. */
    double gathered(Orbit orbit, Change change, double[] rows, double[][] handed) {
        double sum = 0;
        for (int k = 0; k < orbit.intervals(); k++) {
            double rate = orbit.frequency / orbit.width(k);
            for (int r = 1; r <= n; r++) {
                for (int i = 0; i < S; i++) {
                    double lambda = rows[orbit.at(k, i) + r];
                    if (lambda != 0) sum -= lambda * explicit(orbit, change, k, r, i, rate);
                }
            }
            int last = orbit.at(k, S - 1);
            for (int m = 0; m < charged.length; m++) sum += handed[k][m] * change.charge[last + charged[m]];
        }
        return sum;
    }

    /** Rows that hold charge. */
    int charges() {
        return charged.length;
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

    /**
     * How the equations change with a parameter along an orbit: ∂i/∂p and ∂q/∂p, laid out like {@link Orbit#x} with rows in place
     * of unknowns.
     */
    record Change(double[] current, double[] charge) {}
}
