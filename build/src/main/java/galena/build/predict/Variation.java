package galena.build.predict;

import galena.engine.circuit.Circuit;
import galena.engine.part.Part;

/**
 * One tolerance, as two circuits a little to either side of the typical one.
 *
 * @param what "Lt inductance ±5 %"
 * @param below the circuit with the value lowered by {@code step}
 * @param above with it raised
 * @param step relative
 * @param limit the tolerance, relative
 */
record Variation(String what, Circuit below, Circuit above, double step, double limit) {
    static Variation of(String what, Circuit circuit, Part below, Part above, double step, double limit) {
        return new Variation(what, circuit.with(below), circuit.with(above), step, limit);
    }
}
