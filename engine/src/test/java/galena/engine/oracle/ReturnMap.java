package galena.engine.oracle;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * Poincaré returns of a {@link ReducedCircuit} through the section on which its coil current has a given value, integrated by
 * Hipparchus's DormandPrince853, and the fixed point of the returns by Newton's method with differenced derivatives. Time is
 * counted in periods of the expected frequency.
 */
final class ReturnMap {
    private static final double RELATIVE = 1e-12;
    private static final double DISPLACEMENT = 1e-5;
    private static final double SETTLED = 1e-10;
    static final int HARMONICS = 10;

    private final ReducedCircuit reduced;
    private final double frequency;
    private final double[] swing;
    private final int n;
    private final DormandPrince853Integrator integrator;
    private final OrdinaryDifferentialEquation equations;

    /**
     * @param frequency about what is expected, Hz
     * @param swing of each state: what tolerances and displacements are measured against
     */
    ReturnMap(ReducedCircuit reduced, double frequency, double[] swing) {
        this.reduced = reduced;
        this.frequency = frequency;
        this.swing = swing.clone();
        n = swing.length;
        double[] absolute = new double[n], relative = new double[n];
        for (int k = 0; k < n; k++) {
            absolute[k] = RELATIVE * swing[k];
            relative[k] = RELATIVE;
        }
        integrator = careful(absolute, relative);
        equations = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return n;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                return slopes(y);
            }
        };
    }

    /** Steps short enough that no trial stage runs up an exponential beyond all numbers. */
    private static DormandPrince853Integrator careful(double[] absolute, double[] relative) {
        var integrator = new DormandPrince853Integrator(1e-15, 0.01, absolute, relative);
        integrator.setInitialStepSize(1e-5);
        return integrator;
    }

    private double[] slopes(double[] y) {
        double[] dy = new double[y.length];
        reduced.slopes().at(y, dy);
        for (int k = 0; k < y.length; k++) dy[k] /= frequency;
        return dy;
    }

    double[] integrate(double[] y, double from, double to) {
        if (from == to) return y;
        return integrator.integrate(equations, new ODEState(from, y), to).getPrimaryState();
    }

    /** Where the section is crossed next, and after what time. */
    record Return(double[] state, double time) {}

    /** The return of a point of the section after about the given time: integrated there, then stepped onto the section. */
    Return next(double[] start, double about) {
        int section = reduced.coil();
        double level = start[section], time = about;
        double[] y = integrate(start, 0, time);
        for (int k = 0; k < 12; k++) {
            double step = (level - y[section]) / slopes(y)[section];
            time += step;
            if (Math.abs(step) < 1e-11) return new Return(extrapolated(y, step), time);
            y = integrate(y, time - step, time);
        }
        throw new AssertionError(
                "the section was not met again near " + about + " periods: off by " + (y[section] - level));
    }

    private double[] extrapolated(double[] y, double step) {
        double[] dy = slopes(y), there = y.clone();
        for (int k = 0; k < n; k++) there[k] += step * dy[k];
        return there;
    }

    /** The fixed point near a start, by Newton on the return minus the start. */
    Return fixedPoint(double[] near) {
        double[] y = near.clone();
        double about = 1;
        for (int pass = 0; pass < 15; pass++) {
            Return back = next(y, about);
            about = back.time();
            double size = distance(back.state(), y);
            if (size < SETTLED) return back;
            step(y, back);
        }
        throw new AssertionError("the returns have no fixed point near the start");
    }

    double distance(double[] a, double[] b) {
        double most = 0;
        for (int k = 0; k < n; k++) most = Math.max(most, Math.abs(a[k] - b[k]) / swing[k]);
        return most;
    }

    /** (P′ − 1) δ = y − P(y) within the section, in units of swing. */
    private void step(double[] y, Return back) {
        int[] free = new int[n - 1];
        for (int k = 0, f = 0; k < n; k++) if (k != reduced.coil()) free[f++] = k;
        double[][] a = new double[n - 1][n - 1];
        double[] b = new double[n - 1];
        for (int c = 0; c < free.length; c++) {
            double[] moved = y.clone();
            moved[free[c]] += DISPLACEMENT * swing[free[c]];
            double[] there = next(moved, back.time()).state();
            for (int r = 0; r < free.length; r++) {
                a[r][c] = (there[free[r]] - back.state()[free[r]]) / (DISPLACEMENT * swing[free[r]]) - (r == c ? 1 : 0);
            }
        }
        for (int r = 0; r < free.length; r++) b[r] = (y[free[r]] - back.state()[free[r]]) / swing[free[r]];
        HandLaws.solve(a, b);
        for (int r = 0; r < free.length; r++) y[free[r]] += b[r] * swing[free[r]];
    }

    /** Peak amplitudes of a state's harmonics over one return from the fixed point; index 0 is the mean. */
    double[] amplitudes(Return fixed, int state) {
        int count = 2 * HARMONICS + 1;
        double[] absolute = new double[n + count], relative = new double[n + count];
        for (int k = 0; k < n + count; k++) {
            absolute[k] = RELATIVE * (k < n ? swing[k] : 0.1 * swing[state]);
            relative[k] = RELATIVE;
        }
        var quadrature = careful(absolute, relative);
        double[] start = new double[n + count];
        System.arraycopy(fixed.state(), 0, start, 0, n);
        double[] sums = quadrature
                .integrate(withFourier(fixed.time(), state), new ODEState(0, start), fixed.time())
                .getPrimaryState();
        double[] amplitudes = new double[HARMONICS + 1];
        amplitudes[0] = sums[n];
        for (int h = 1; h <= HARMONICS; h++) amplitudes[h] = 2 * Math.hypot(sums[n + 2 * h - 1], sums[n + 2 * h]);
        return amplitudes;
    }

    private OrdinaryDifferentialEquation withFourier(double period, int state) {
        return new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return n + 2 * HARMONICS + 1;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double[] states = new double[n];
                System.arraycopy(y, 0, states, 0, n);
                double[] all = new double[y.length];
                System.arraycopy(slopes(states), 0, all, 0, n);
                all[n] = y[state] / period;
                for (int h = 1; h <= HARMONICS; h++) {
                    double angle = 2 * Math.PI * h * t / period;
                    all[n + 2 * h - 1] = y[state] * Math.cos(angle) / period;
                    all[n + 2 * h] = y[state] * Math.sin(angle) / period;
                }
                return all;
            }
        };
    }
}
