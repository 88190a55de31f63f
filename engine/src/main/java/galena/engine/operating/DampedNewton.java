package galena.engine.operating;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.equations.Pattern;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Newton's method with a backtracking line search on i(x) − (1 − supply) · rest + (q(x) − q₀) · rate = 0: sources scaled, and
 * charges held back by a rate (1/s) when a switch-on is followed. A step is accepted when what it leaves, solved with the same
 * matrix, is a smaller step: P. Deuflhard, Newton Methods for Nonlinear Problems, Springer 2004, §3.3 (natural monotonicity).
 * The test does not depend on how rows are weighed, where a residual in volts and amperes would: an amplifier's microamperes
 * and a diode across a battery are then met with the same few steps.
 */
final class DampedNewton {
    private static final int MOST_ITERATIONS = 80;
    /** Where every device is off, a first step may be 10¹² V long: the conductances there are those of leakages. */
    private static final double SMALLEST_STEP = 0x1p-40;

    private static final double VOLT_ROUNDING = 1e-13;
    private static final double AMPERE_ROUNDING = 1e-17;
    private static final double SETTLED = 1e-9;
    /** Rows of volts and rows of amperes are compared at this resistance. */
    private static final double YARDSTICK = 1e3;

    private final Equations equations;
    private final Evaluation work;
    private final DMatrixRMaj matrix;
    private final DMatrixRMaj residual;
    private final DMatrixRMaj step;
    private final DMatrixRMaj remaining;
    private final LinearSolverDense<DMatrixRMaj> solver;
    private double[] heldCharge;
    private double rate;
    private double supply = 1;
    private int iterations;

    DampedNewton(Equations equations) {
        this.equations = equations;
        int n = equations.size();
        work = equations.newEvaluation();
        matrix = new DMatrixRMaj(n, n);
        residual = new DMatrixRMaj(n, 1);
        step = new DMatrixRMaj(n, 1);
        remaining = new DMatrixRMaj(n, 1);
        solver = LinearSolverFactory_DDRM.lu(n);
        heldCharge = new double[equations.stride()];
    }

    void scaleSupply(double share) {
        supply = share;
    }

    /** Holds charges back: the step of an implicit Euler method of length 1/rate from the given charges. */
    void holdCharges(double[] charge, double perSecond) {
        heldCharge = charge;
        rate = perSecond;
    }

    int iterations() {
        return iterations;
    }

    double[] charges(double[] x) {
        equations.evaluate(x, 0, work);
        return work.q.clone();
    }

    /** Improves x in place; true when it settled. */
    boolean improve(double[] x) {
        double[] trial = new double[x.length];
        measure(x);
        int polish = 0;
        for (int k = 0; k < MOST_ITERATIONS; k++) {
            iterations++;
            if (!direction()) return false;
            double size = size(step), length = 1;
            while (length >= SMALLEST_STEP) {
                for (int j = 1; j < x.length; j++) trial[j] = x[j] + length * step.data[j - 1];
                measure(trial);
                solver.solve(residual, remaining);
                if (size(remaining) <= (1 - 0.25 * length) * size || movesLittle(x, length)) break;
                length /= 2;
            }
            if (length < SMALLEST_STEP) return false;
            boolean little = movesLittle(x, 1);
            System.arraycopy(trial, 0, x, 0, x.length);
            if (little && length == 1 && ++polish == 2) return true;
        }
        return false;
    }

    /** The size of a step: volts, and milliamperes. */
    private double size(DMatrixRMaj change) {
        double sum = 0;
        for (int j = 1; j <= equations.size(); j++) {
            double d = change.data[j - 1] * (equations.isCurrent(j) ? YARDSTICK : 1);
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    private boolean movesLittle(double[] x, double length) {
        for (int j = 1; j < x.length; j++) {
            double floor = equations.isCurrent(j) ? AMPERE_ROUNDING : VOLT_ROUNDING;
            if (Math.abs(length * step.data[j - 1]) > SETTLED * Math.abs(x[j]) + 1e4 * floor) return false;
        }
        return true;
    }

    /** Evaluates residual and matrix at x; returns the residual's size. */
    private double measure(double[] x) {
        equations.evaluate(x, 0, work);
        double sum = 0;
        for (int row = 1; row <= equations.size(); row++) {
            double r = work.i[row] - (1 - supply) * equations.rest(row) + rate * (work.q[row] - heldCharge[row]);
            residual.data[row - 1] = -r;
            double scaled = equations.isCurrent(row) ? r : r * YARDSTICK;
            sum += scaled * scaled;
        }
        return Math.sqrt(sum);
    }

    private boolean direction() {
        matrix.zero();
        Pattern pattern = equations.pattern();
        int n = equations.size();
        for (int e = 1; e < pattern.entries(); e++) {
            matrix.data[(pattern.row(e) - 1) * n + pattern.column(e) - 1] += work.g[e] + rate * work.c[e];
        }
        if (!solver.setA(matrix)) return false;
        solver.solve(residual, step);
        for (double s : step.data) if (!Double.isFinite(s)) return false;
        return true;
    }

    /** The row that is out of balance by most, and by how much. */
    int worstRow(double[] x) {
        measure(x);
        int worst = 1;
        for (int row = 2; row <= equations.size(); row++) {
            if (scaled(row) > scaled(worst)) worst = row;
        }
        return worst;
    }

    private double scaled(int row) {
        double r = Math.abs(residual.data[row - 1]);
        return equations.isCurrent(row) ? r : r * YARDSTICK;
    }

    double imbalance(int row) {
        return Math.abs(residual.data[row - 1]);
    }

    double largestImbalance(double[] x) {
        return imbalance(worstRow(x));
    }
}
