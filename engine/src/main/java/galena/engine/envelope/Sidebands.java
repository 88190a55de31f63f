package galena.engine.envelope;

import galena.engine.equations.Equations;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import org.ejml.data.ZMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_ZDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * What a small slow departure of any source does to a steady oscillation: amplitude and frequency modulation of every net and
 * branch, at any slow frequency. A disturbance that turns with e^(jωτ) from cycle to cycle ends each cycle e^(jωT) further on, so
 * that (e^(jωT) − Φ) y = c closes it, with the monodromy matrix Φ of the orbit and its frequency's disturbance as a bordering
 * unknown: exact for the discrete equations at every ω, from the factors that the orbit has anyway. One frequency costs four
 * sweeps with one right-hand side and a complex system as large as the circuit has charges. One per thread.
 */
public final class Sidebands {
    private final Layout layout;
    private final Cycle cycle;
    private final double[] departure;
    private final CycleSystem system;
    private final double[] noStep = {};

    /**
     * @param carrier the unmodulated steady state
     * @param source the voltage or current source that departs
     * @throws IllegalArgumentException when the circuit has no such source
     */
    public Sidebands(SteadyState.Found carrier, String source) {
        Waveforms waveforms = carrier.coarser();
        layout = new Layout(carrier, waveforms.mesh());
        departure = layout.equations.unitDeparture(source);
        cycle = start(layout, waveforms);
        system = new CycleSystem(layout, new CycleSystem.Work(layout), new SlowSource(source, 0, 1), departure);
        system.linearise(cycle);
    }

    /** The unmodulated cycle. */
    static Cycle start(Layout layout, Waveforms waveforms) {
        double[] x = new double[layout.intervals() * Layout.S * layout.stride];
        for (int k = 0; k < layout.intervals(); k++) {
            for (int j = 0; j < Layout.S; j++) {
                System.arraycopy(waveforms.at(layout.phase(k, j)), 0, x, layout.at(k, j), layout.stride);
            }
        }
        var evaluation = layout.equations.newEvaluation();
        layout.equations.evaluate(waveforms.at(0), 0, evaluation);
        double[] charges = new double[layout.charges()];
        for (int m = 0; m < charges.length; m++) charges[m] = evaluation.q[layout.charged[m]];
        return new Cycle(0, charges, x, waveforms.frequency());
    }

    Layout layout() {
        return layout;
    }

    Cycle cycle() {
        return cycle;
    }

    /** Complex peak amplitude of harmonic h of x_a − x_b in the unmodulated oscillation, {real, imaginary}. */
    double[] harmonic(int a, int b, int h) {
        int last = layout.at(layout.intervals() - 1, Layout.S - 1);
        double first = cycle.x[last + a] - cycle.x[last + b], re = 0, im = 0;
        for (int k = 0; k < layout.intervals(); k++) {
            for (int g = 0; g < Cubic.NODES; g++) {
                double angle = 2 * Math.PI * h * Cubic.phase(layout, k, g);
                double value = 2 * Cubic.weight(layout, k, g) * Cubic.at(layout, cycle.x, first, a, b, k, g);
                re += value * Math.cos(angle);
                im -= value * Math.sin(angle);
            }
        }
        return new double[] {re, im};
    }

    /** The equations of the oscillation. */
    public Equations equations() {
        return layout.equations;
    }

    /**
     * The response to a departure of one unit, Re e^(jωτ).
     *
     * @param frequency Hz, zero or above
     */
    public Response at(double frequency) {
        double angular = 2 * Math.PI * frequency, period = 1 / cycle.frequency;
        int stages = layout.intervals() * Layout.S, m = layout.charges();
        double[][] forcing = new double[2][stages], start = new double[2][m];
        for (int k = 0; k < layout.intervals(); k++) {
            for (int j = 0; j < Layout.S; j++) {
                double angle = angular * layout.phase(k, j) * period;
                forcing[0][k * Layout.S + j] = Math.cos(angle);
                forcing[1][k * Layout.S + j] = Math.sin(angle);
            }
        }
        double[] taken = new double[2], f = new double[2];
        for (int part = 0; part < 2; part++) taken[part] = system.carry(cycle, forcing[part], start[part], 0, noStep);
        double[][] closed = close(angular * period, start, taken, f);
        double[][] x = new double[2][cycle.x.length];
        double[][] charges = {closed[0].clone(), closed[1].clone()};
        for (int part = 0; part < 2; part++) system.carry(cycle, forcing[part], closed[part], f[part], x[part]);
        return new Response(this, frequency, f, charges, x);
    }

    /** Solves for the start's charges; the frequency's disturbance is written. */
    private double[][] close(double turn, double[][] end, double[] taken, double[] f) {
        int m = layout.charges(), size = m + (layout.free ? 1 : 0);
        double scale = cycle.frequency;
        ZMatrixRMaj a = new ZMatrixRMaj(size, size), b = new ZMatrixRMaj(size, 1), x = new ZMatrixRMaj(size, 1);
        for (int r = 0; r < m; r++) {
            for (int c = 0; c < m; c++) {
                a.set(r, c, (r == c ? Math.cos(turn) : 0) - system.end[r][c], r == c ? Math.sin(turn) : 0);
            }
            if (layout.free) a.set(r, m, -system.end[r][m + 1] * scale, 0);
            b.set(r, 0, end[0][r], end[1][r]);
        }
        if (layout.free) {
            for (int c = 0; c < m; c++) a.set(m, c, system.condition[c], 0);
            a.set(m, m, system.condition[m + 1] * scale, 0);
            b.set(m, 0, -taken[0], -taken[1]);
        }
        LinearSolverDense<ZMatrixRMaj> lu = LinearSolverFactory_ZDRM.lu(size);
        if (!lu.setA(a)) throw new ArithmeticException("an undamped resonance lies exactly at the slow frequency");
        lu.solve(b, x);
        double[][] start = new double[2][m];
        for (int r = 0; r < m; r++) {
            start[0][r] = x.getReal(r, 0);
            start[1][r] = x.getImag(r, 0);
        }
        if (layout.free) {
            f[0] = x.getReal(m, 0) * scale;
            f[1] = x.getImag(m, 0) * scale;
        }
        return start;
    }
}
