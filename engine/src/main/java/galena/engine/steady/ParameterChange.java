package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;

/** How the equations change with a parameter at fixed x along an orbit, as a central difference of two circuits. */
final class ParameterChange {
    private ParameterChange() {}

    /** @throws IllegalArgumentException when the circuits differ in structure */
    static Change between(Orbit orbit, Equations below, Equations above, double delta) {
        if (below.stride() != orbit.stride || !below.pattern().sameAs(above.pattern())) {
            throw new IllegalArgumentException("the circuits differ in structure, not only in a value");
        }
        double[] current = new double[orbit.x.length], charge = new double[orbit.x.length];
        add(orbit, below, -0.5 / delta, current, charge);
        add(orbit, above, 0.5 / delta, current, charge);
        return new Change(current, charge);
    }

    private static void add(Orbit orbit, Equations equations, double weight, double[] current, double[] charge) {
        Evaluation work = equations.newEvaluation();
        for (int p = 0; p < orbit.x.length; p += orbit.stride) {
            equations.evaluate(orbit.x, p, work);
            for (int r = 1; r < orbit.stride; r++) {
                current[p + r] += weight * work.i[r];
                charge[p + r] += weight * work.q[r];
            }
        }
    }
}
