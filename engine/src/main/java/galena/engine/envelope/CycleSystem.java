package galena.engine.envelope;

import static galena.engine.envelope.Layout.INVERSE;
import static galena.engine.envelope.Layout.ROW_SUMS;
import static galena.engine.envelope.Layout.S;

import galena.engine.equations.Evaluation;
import galena.engine.linear.BlockLu;
import java.util.Arrays;

/**
 * The collocation equations of one carrier cycle with open ends, linearised, and their factors. From a change of the start's
 * charges and of the frequency follows the change of the end's: δq(end) = Φ δq(start) + c + d δf, and what the phase condition
 * takes of each. As in an orbit ({@code engine.steady}) a change of the charges is carried through the intervals one by one; but
 * here start and end are not the same. Factors are kept, one set a cycle.
 */
final class CycleSystem {
    /** Arrays that all cycles use in turn. */
    static final class Work {
        final Evaluation[] stage = new Evaluation[S];
        final double[][] rhs;
        final double[][] solution;
        double[][] carried;
        double[][] handedOn;
        final double[] one;
        final double[] oneSolution;
        final double[] startCharge;

        Work(Layout layout) {
            for (int j = 0; j < S; j++) stage[j] = layout.equations.newEvaluation();
            int width = layout.charges() + 2;
            rhs = new double[layout.n * S][width];
            solution = new double[layout.n * S][width];
            carried = new double[layout.charges()][width];
            handedOn = new double[layout.charges()][width];
            one = new double[layout.n * S];
            oneSolution = new double[layout.n * S];
            startCharge = new double[layout.stride];
        }
    }

    private final Layout layout;
    private final Work work;
    private final double[] departure;
    private SlowSource source;
    private final BlockLu[] factors;
    private final double[][] residual;
    private final double[][] byFrequency;
    private final double[][] lastC;

    /** Columns [start charges | constant | frequency] of the end's charges; row r for charge r. */
    final double[][] end;
    /** The same columns of the phase condition. */
    final double[] condition;
    /** What the phase condition lacks: its value on the cycle. */
    double phase;
    /** Charges at the cycle's end as it stands. */
    final double[] endCharge;

    /** @param departure what the source's departure by one unit takes from every row */
    CycleSystem(Layout layout, Work work, SlowSource source, double[] departure) {
        this.layout = layout;
        this.work = work;
        this.source = source;
        this.departure = departure;
        int intervals = layout.intervals(), m = layout.charges();
        factors = new BlockLu[intervals];
        for (int k = 0; k < intervals; k++) factors[k] = new BlockLu(layout.plan);
        residual = new double[intervals][layout.n * S];
        byFrequency = new double[intervals][layout.n * S];
        lastC = new double[intervals][layout.entryRow.length];
        end = new double[m][m + 2];
        condition = new double[m + 2];
        endCharge = new double[m];
    }

    /** Goes on with another level of the source; arrays are kept. */
    CycleSystem with(SlowSource other) {
        source = other;
        return this;
    }

    /** Linearises at a cycle: fills {@link #end}, {@link #condition}, {@link #phase} and {@link #endCharge}. */
    void linearise(Cycle cycle) {
        int m = layout.charges(), width = m + 2;
        begin(cycle);
        for (int r = 0; r < m; r++) {
            Arrays.fill(work.carried[r], 0);
            work.carried[r][r] = 1;
        }
        Arrays.fill(condition, 0);
        for (int k = 0; k < layout.intervals(); k++) {
            for (int j = 0; j < S; j++) evaluate(cycle, k, j);
            factor(cycle, k);
            fillResidual(cycle, k, true);
            fillColumns(cycle, k, width);
            factors[k].solve(work.rhs, work.solution, width);
            countCondition(cycle, k, width);
            handOn(k, width);
            System.arraycopy(work.stage[S - 1].q, 0, work.startCharge, 0, layout.stride);
        }
        for (int r = 0; r < m; r++) {
            System.arraycopy(work.carried[r], 0, end[r], 0, width);
            endCharge[r] = work.startCharge[layout.charged[r]];
        }
    }

    /** The constants anew at a changed cycle, everything else left as it was linearised last. */
    void reconsider(Cycle cycle) {
        int m = layout.charges();
        begin(cycle);
        double[] dq = new double[m];
        condition[m] = 0;
        for (int k = 0; k < layout.intervals(); k++) {
            for (int j = 0; j < S; j++) evaluate(cycle, k, j);
            fillResidual(cycle, k, false);
            fillOne(cycle, k, dq, 0);
            factors[k].solve(work.one, work.oneSolution);
            for (int j = 0; j < S; j++) {
                double weight = layout.phaseWeight(k, j);
                condition[m] += weight * acrossSite(work.oneSolution, j);
                phase += weight * acrossSite(cycle, k, j);
            }
            carryOne(k, dq);
            System.arraycopy(work.stage[S - 1].q, 0, work.startCharge, 0, layout.stride);
        }
        for (int r = 0; r < m; r++) {
            end[r][m] = dq[r];
            endCharge[r] = work.startCharge[layout.charged[r]];
        }
    }

    /**
     * The steps of all stages, once those of the start and the frequency are known.
     *
     * @param start δq of the start; overwritten
     * @param step written, laid out like {@link Cycle#x}
     */
    void finish(Cycle cycle, double[] start, double frequency, double[] step) {
        for (int k = 0; k < layout.intervals(); k++) {
            fillOne(cycle, k, start, frequency);
            factors[k].solve(work.one, work.oneSolution);
            for (int j = 0; j < S; j++) {
                int to = layout.at(k, j);
                step[to] = 0;
                for (int r = 1; r <= layout.n; r++) step[to + r] = work.oneSolution[(r - 1) * S + j];
            }
            carryOne(k, start);
        }
    }

    /**
     * Carries a small forcing through the cycle as it was linearised, from a change of its start.
     *
     * @param forcing what enters each stage's rows besides, as a factor on the source's departure; by interval and stage
     * @param start δq of the start; the end's δq is left in it
     * @param step written, laid out like {@link Cycle#x}; empty when not wanted
     * @return what the phase condition takes of it
     */
    double carry(Cycle cycle, double[] forcing, double[] start, double frequency, double[] step) {
        double taken = 0;
        for (int k = 0; k < layout.intervals(); k++) {
            double rate = cycle.frequency / layout.width(k);
            for (int r = 1; r <= layout.n; r++) {
                double q = layout.chargeIndex[r] >= 0 ? start[layout.chargeIndex[r]] : 0;
                for (int i = 0; i < S; i++) {
                    int at = (r - 1) * S + i;
                    work.one[at] =
                            rate * ROW_SUMS[i] * q + departure[r] * forcing[k * S + i] - byFrequency[k][at] * frequency;
                }
            }
            factors[k].solve(work.one, work.oneSolution);
            for (int j = 0; j < S; j++) taken += layout.phaseWeight(k, j) * acrossSite(work.oneSolution, j);
            if (step.length > 0) {
                for (int j = 0; j < S; j++) {
                    int to = layout.at(k, j);
                    for (int r = 1; r <= layout.n; r++) step[to + r] = work.oneSolution[(r - 1) * S + j];
                }
            }
            carryOne(k, start);
        }
        return taken;
    }

    private void begin(Cycle cycle) {
        phase = 0;
        Arrays.fill(work.startCharge, 0);
        for (int m = 0; m < layout.charges(); m++) work.startCharge[layout.charged[m]] = cycle.start[m];
    }

    private void evaluate(Cycle cycle, int k, int j) {
        Evaluation e = work.stage[j];
        layout.equations.evaluate(cycle.x, layout.at(k, j), e);
        double within = layout.phase(k, j) / cycle.frequency;
        if (layout.drive != 0) layout.equations.addSources(within, layout.drive, e);
        double departs = source.at(cycle.time + within);
        if (departs != 0) for (int r = 1; r <= layout.n; r++) e.i[r] -= departure[r] * departs;
    }

    private void factor(Cycle cycle, int k) {
        double rate = cycle.frequency / layout.width(k);
        BlockLu lu = factors[k];
        lu.clear();
        double[] a = lu.values();
        for (int j = 0; j < S; j++) {
            double[] c = work.stage[j].c, g = work.stage[j].g;
            double w0 = rate * INVERSE[j], w1 = rate * INVERSE[S + j], w2 = rate * INVERSE[2 * S + j];
            for (int e = 1; e < layout.entryRow.length; e++) {
                int at = lu.at(e - 1) + j;
                a[at] += w0 * c[e];
                a[at + S] += w1 * c[e];
                a[at + 2 * S] += w2 * c[e];
                a[at + S * j] += g[e];
            }
        }
        lu.factor();
        System.arraycopy(work.stage[S - 1].c, 0, lastC[k], 0, lastC[k].length);
    }

    private void fillResidual(Cycle cycle, int k, boolean keepSlope) {
        double inverseWidth = 1 / layout.width(k);
        double[] q0 = work.stage[0].q, q1 = work.stage[1].q, q2 = work.stage[2].q;
        for (int r = 1; r <= layout.n; r++) {
            double a = (q0[r] - work.startCharge[r]) * inverseWidth;
            double b = (q1[r] - work.startCharge[r]) * inverseWidth;
            double c = (q2[r] - work.startCharge[r]) * inverseWidth;
            for (int i = 0; i < S; i++) {
                double slope = INVERSE[S * i] * a + INVERSE[S * i + 1] * b + INVERSE[S * i + 2] * c;
                int at = (r - 1) * S + i;
                residual[k][at] = cycle.frequency * slope + work.stage[i].i[r];
                if (keepSlope) byFrequency[k][at] = slope + departure[r] * sooner(cycle, k, i);
            }
        }
    }

    /** How the source's departure at a stage changes with the frequency, which moves the stage in time: less the departure's own. */
    private double sooner(Cycle cycle, int k, int i) {
        double within = layout.phase(k, i) / cycle.frequency;
        return source.rate(cycle.time + within) * within / cycle.frequency;
    }

    private void fillColumns(Cycle cycle, int k, int width) {
        double rate = cycle.frequency / layout.width(k);
        int m = layout.charges();
        for (int r = 1; r <= layout.n; r++) {
            double[] from = layout.chargeIndex[r] >= 0 ? work.carried[layout.chargeIndex[r]] : null;
            for (int i = 0; i < S; i++) {
                int at = (r - 1) * S + i;
                double[] row = work.rhs[at];
                if (from == null) {
                    Arrays.fill(row, 0, width, 0);
                } else {
                    double weight = rate * ROW_SUMS[i];
                    for (int c = 0; c < width; c++) row[c] = weight * from[c];
                }
                row[m] -= residual[k][at];
                row[m + 1] -= byFrequency[k][at];
            }
        }
    }

    private void fillOne(Cycle cycle, int k, double[] dq, double frequency) {
        double rate = cycle.frequency / layout.width(k);
        for (int r = 1; r <= layout.n; r++) {
            double q = layout.chargeIndex[r] >= 0 ? dq[layout.chargeIndex[r]] : 0;
            for (int i = 0; i < S; i++) {
                int at = (r - 1) * S + i;
                work.one[at] = rate * ROW_SUMS[i] * q - residual[k][at] - byFrequency[k][at] * frequency;
            }
        }
    }

    private void countCondition(Cycle cycle, int k, int width) {
        int a = layout.site.a(), b = layout.site.b();
        for (int j = 0; j < S; j++) {
            double weight = layout.phaseWeight(k, j);
            phase += weight * acrossSite(cycle, k, j);
            if (a > 0) addRow(weight, work.solution[(a - 1) * S + j], width);
            if (b > 0) addRow(-weight, work.solution[(b - 1) * S + j], width);
        }
    }

    private void addRow(double weight, double[] row, int width) {
        for (int c = 0; c < width; c++) condition[c] += weight * row[c];
    }

    private double acrossSite(Cycle cycle, int k, int j) {
        int at = layout.at(k, j);
        return cycle.x[at + layout.site.a()] - cycle.x[at + layout.site.b()];
    }

    private double acrossSite(double[] stages, int j) {
        int a = layout.site.a(), b = layout.site.b();
        return (a > 0 ? stages[(a - 1) * S + j] : 0) - (b > 0 ? stages[(b - 1) * S + j] : 0);
    }

    private void handOn(int k, int width) {
        for (double[] row : work.handedOn) Arrays.fill(row, 0, width, 0);
        double[] c = lastC[k];
        for (int e = 1; e < layout.entryRow.length; e++) {
            if (c[e] == 0) continue;
            double[] to = work.handedOn[layout.chargeIndex[layout.entryRow[e]]];
            double[] from = work.solution[(layout.entryColumn[e] - 1) * S + S - 1];
            for (int col = 0; col < width; col++) to[col] += c[e] * from[col];
        }
        double[][] swap = work.carried;
        work.carried = work.handedOn;
        work.handedOn = swap;
    }

    private void carryOne(int k, double[] dq) {
        Arrays.fill(dq, 0);
        double[] c = lastC[k];
        for (int e = 1; e < layout.entryRow.length; e++) {
            if (c[e] == 0) continue;
            dq[layout.chargeIndex[layout.entryRow[e]]] +=
                    c[e] * work.oneSolution[(layout.entryColumn[e] - 1) * S + S - 1];
        }
    }
}
