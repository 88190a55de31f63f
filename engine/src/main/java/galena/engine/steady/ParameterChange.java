package galena.engine.steady;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;
import galena.engine.part.Part;

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

    /** The same where only one part changes, evaluated alone. */
    static Change ofPart(Orbit orbit, Equations whole, Part below, Part above, double delta) {
        double[] current = new double[orbit.x.length], charge = new double[orbit.x.length];
        double celsius = whole.circuit().temperature();
        addPart(orbit, whole, Circuit.of(below).atTemperature(celsius), -0.5 / delta, current, charge);
        addPart(orbit, whole, Circuit.of(above).atTemperature(celsius), 0.5 / delta, current, charge);
        return new Change(current, charge);
    }

    private static void addPart(
            Orbit orbit, Equations whole, Circuit part, double weight, double[] current, double[] charge) {
        Equations alone = Equations.of(part);
        int[] place = new int[alone.stride()];
        for (int j = 1; j < place.length; j++)
            place[j] = whole.unknown(alone.name(j)).orElseThrow();
        double[] x = new double[alone.stride()];
        Evaluation work = alone.newEvaluation();
        for (int p = 0; p < orbit.x.length; p += orbit.stride) {
            for (int j = 1; j < x.length; j++) x[j] = orbit.x[p + place[j]];
            alone.evaluate(x, 0, work);
            for (int r = 1; r < x.length; r++) {
                current[p + place[r]] += weight * work.i[r];
                charge[p + place[r]] += weight * work.q[r];
            }
        }
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
