package galena.engine.steady;

import galena.engine.equations.Equations;
import java.util.Arrays;

/**
 * Phases at which a device's law bends along an orbit, because a channel is cut off or pinches off. Between mesh points such a kink
 * costs the method its order; on one it costs nothing.
 */
final class Kinks {
    private static final int HALVINGS = 20;

    private final Orbit orbit;
    private final Equations equations;
    private final double[] weights = new double[Radau.STAGES + 1];
    private final double[] x;
    private final double[] values;
    private double[] phases = {};

    private Kinks(Orbit orbit, Equations equations) {
        this.orbit = orbit;
        this.equations = equations;
        x = new double[orbit.stride];
        values = new double[equations.bends()];
    }

    /** Ascending, each within (0, 1). */
    static double[] of(Orbit orbit, Equations equations) {
        Kinks kinks = new Kinks(orbit, equations);
        if (kinks.values.length > 0) kinks.find();
        Arrays.sort(kinks.phases);
        return kinks.phases;
    }

    private void find() {
        double[] last = new double[values.length];
        equations.bends(orbit.x, orbit.start(0), last);
        for (int k = 0; k < orbit.intervals(); k++) {
            double from = 0;
            for (int j = 0; j < Radau.STAGES; j++) {
                equations.bends(orbit.x, orbit.at(k, j), values);
                double to = Radau.NODES[j];
                double[] here = values.clone();
                for (int b = 0; b < here.length; b++) {
                    if (last[b] > 0 != here[b] > 0) add(orbit.mesh[k] + orbit.width(k) * root(k, b, from, to, last[b]));
                }
                last = here;
                from = to;
            }
        }
    }

    /** The place in an interval where a quantity passes zero, between two that it has either sign at. */
    private double root(int interval, int bend, double from, double to, double atFrom) {
        double a = from, b = to;
        for (int k = 0; k < HALVINGS; k++) {
            double middle = 0.5 * (a + b);
            Orbit.basis(middle, weights);
            for (int u = 1; u < orbit.stride; u++) x[u] = orbit.interpolate(interval, weights, u);
            equations.bends(x, 0, values);
            if (values[bend] > 0 == atFrom > 0) a = middle;
            else b = middle;
        }
        return 0.5 * (a + b);
    }

    private void add(double phase) {
        phases = Arrays.copyOf(phases, phases.length + 1);
        phases[phases.length - 1] = phase;
    }
}
