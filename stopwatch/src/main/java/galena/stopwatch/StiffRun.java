package galena.stopwatch;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;

/**
 * A general stiff integrator with variable steps, as circuits are commonly run in time: TR-BDF2 in charges (R. E. Bank and others, IEEE
 * Trans. Electron Devices 32 (1985) 1992; error estimate after M. E. Hosea and L. F. Shampine, Appl. Numer. Math. 20 (1996) 21; both
 * from memory), analytic derivatives, a factorisation in fixed order that is kept while Newton converges fast, Newton started from the
 * quadratic through the last step. Tuned to be a fair rival, allocates nothing while it runs.
 */
final class StiffRun {
    private static final double GAMMA = 2 - Math.sqrt(2);
    private static final double D = GAMMA / 2;
    private static final double BDF_1 = 1 / (GAMMA * (2 - GAMMA));
    private static final double BDF_0 = (1 - GAMMA) * (1 - GAMMA) / (GAMMA * (2 - GAMMA));
    private static final double ERROR = (-3 * GAMMA * GAMMA + 4 * GAMMA - 2) / (12 * (2 - GAMMA));
    private static final int NEWTON_STEPS = 8;
    private static final double NEWTON = 0.05;
    private static final double VOLTS = 1e-6;
    private static final double AMPERES = 1e-9;

    private final Equations equations;
    private final int n;
    private final double tolerance;
    private final ScalarLu lu;
    private final Evaluation at0;
    private final Evaluation at1;
    private final Evaluation at2;
    private final double[] x;
    private final double[] x1;
    private final double[] x2;
    private final double[] before;
    private final double[] rhs;
    private final double[] change;
    private final double[] largest;
    private double widthBefore;
    private double factored;
    private long steps;
    private long factorisations;
    private double time;
    private double width;

    /**
     * @param tolerance local error of a step, relative to the largest value so far
     * @param cycle about as long as what is to be seen, s
     */
    StiffRun(Equations equations, double tolerance, double cycle) {
        this.equations = equations;
        this.tolerance = tolerance;
        n = equations.size();
        at0 = equations.newEvaluation();
        at1 = equations.newEvaluation();
        at2 = equations.newEvaluation();
        x = new double[equations.stride()];
        x1 = new double[x.length];
        x2 = new double[x.length];
        before = new double[x.length];
        rhs = new double[x.length];
        change = new double[x.length];
        largest = new double[x.length];
        equations.evaluate(x, 0, at0);
        double[] typical = new double[at0.g.length];
        for (int e = 1; e < typical.length; e++) {
            typical[e] = Math.abs(at0.g[e]) + 100 / cycle * Math.abs(at0.c[e]) + 1e-9;
            if (at0.g[e] == 0 && at0.c[e] == 0) typical[e] = 0;
        }
        lu = new ScalarLu(equations.pattern(), typical);
        width = 1e-6 * cycle;
        switchOn();
    }

    /** The supply comes on with every charge at zero: two tiny steps of backward Euler find the currents that go with that. */
    private void switchOn() {
        double h = 1e-6 * width;
        System.arraycopy(x, 0, x1, 0, x.length);
        for (int k = 0; k < 200; k++) {
            equations.evaluate(x1, 0, at1);
            lu.factor(1 / h, at1.c, at1.g);
            for (int r = 1; r <= n; r++) rhs[r] = -((at1.q[r] - at0.q[r]) / h + at1.i[r]);
            lu.solve(rhs, change);
            double size = 0;
            for (int u = 1; u <= n; u++) {
                x1[u] += Math.max(-0.5, Math.min(0.5, change[u]));
                size = Math.max(size, Math.abs(change[u]));
            }
            if (size < 1e-9) break;
        }
        System.arraycopy(x1, 0, x, 0, x.length);
        equations.evaluate(x, 0, at0);
        System.arraycopy(x, 0, before, 0, x.length);
        widthBefore = 0;
    }

    double time() {
        return time;
    }

    double value(int a, int b) {
        return x[a] - x[b];
    }

    long steps() {
        return steps;
    }

    long factorisations() {
        return factorisations;
    }

    /** One accepted step. */
    void step() {
        while (true) {
            if (!(width > 1e-18)) throw new IllegalStateException("no step is short enough at " + time + " s");
            double error = attempt(width);
            if (error <= 1) {
                accept(error);
                return;
            }
            width *= Double.isFinite(error) ? Math.max(0.2, 0.9 * Math.pow(error, -1.0 / 3)) : 0.25;
        }
    }

    private void accept(double error) {
        time += width;
        steps++;
        System.arraycopy(x, 0, before, 0, x.length);
        System.arraycopy(x2, 0, x, 0, x.length);
        System.arraycopy(at2.q, 0, at0.q, 0, x.length);
        System.arraycopy(at2.i, 0, at0.i, 0, x.length);
        for (int u = 1; u <= n; u++) largest[u] = Math.max(largest[u], Math.abs(x[u]));
        widthBefore = width;
        width *= Math.min(2, 0.9 * Math.pow(Math.max(error, 1e-6), -1.0 / 3));
    }

    /** The error of a step against the tolerance; infinite when Newton fails. */
    private double attempt(double h) {
        double stretch = widthBefore > 0 ? h / widthBefore : 0;
        for (int u = 1; u <= n; u++) x1[u] = x[u] + GAMMA * stretch * (x[u] - before[u]);
        if (Math.abs(1 / (D * h) / factored - 1) > 0.2) factored = 0;
        if (!newton(x1, at1, h, 1)) return Double.POSITIVE_INFINITY;
        for (int u = 1; u <= n; u++) x2[u] = x1[u] + (1 - GAMMA) / GAMMA * (x1[u] - x[u]);
        if (!newton(x2, at2, h, 2)) return Double.POSITIVE_INFINITY;
        for (int r = 1; r <= n; r++) {
            double slope = at0.i[r] / GAMMA - at1.i[r] / (GAMMA * (1 - GAMMA)) + at2.i[r] / (1 - GAMMA);
            rhs[r] = at2.q[r] == 0 && at1.q[r] == 0 ? 0 : 2 * ERROR / D * slope;
        }
        lu.solve(rhs, change);
        double worst = 0;
        for (int u = 1; u <= n; u++) worst = Math.max(worst, Math.abs(change[u]) / scale(u));
        return worst;
    }

    private double scale(int u) {
        return tolerance * largest[u] + (equations.isCurrent(u) ? AMPERES : VOLTS);
    }

    /** Newton on a stage; the factors are kept until it converges slowly. */
    private boolean newton(double[] z, Evaluation at, double h, int stage) {
        double weight = 1 / (D * h), last = Double.POSITIVE_INFINITY;
        for (int k = 0; k < NEWTON_STEPS; k++) {
            equations.evaluate(z, 0, at);
            if (factored == 0 || k >= 2) {
                lu.factor(weight, at.c, at.g);
                factored = weight;
                factorisations++;
            }
            for (int r = 1; r <= n; r++) {
                double q = stage == 1
                        ? (at.q[r] - at0.q[r]) * weight + at0.i[r]
                        : (at.q[r] - BDF_1 * at1.q[r] + BDF_0 * at0.q[r]) * weight;
                rhs[r] = -(q + at.i[r]);
            }
            lu.solve(rhs, change);
            double size = 0;
            for (int u = 1; u <= n; u++) {
                z[u] += change[u];
                size = Math.max(size, Math.abs(change[u]) / scale(u));
            }
            if (!Double.isFinite(size)) {
                factored = 0;
                return false;
            }
            if (size < NEWTON || (k > 0 && size < 1 && size * size / last < NEWTON)) {
                equations.evaluate(z, 0, at);
                return true;
            }
            last = size;
        }
        factored = 0;
        return false;
    }
}
