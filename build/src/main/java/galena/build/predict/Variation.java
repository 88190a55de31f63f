package galena.build.predict;

import galena.engine.circuit.Circuit;
import java.util.function.DoubleFunction;

/**
 * One tolerance, as the circuit with a value times a factor.
 *
 * @param what "Lt inductance ±5 %"
 * @param circuit by the factor, 1 for the typical one
 * @param limit the tolerance, relative
 * @param end where its 95 % end, relative
 */
record Variation(String what, DoubleFunction<Circuit> circuit, double limit, double end) {
    /** Of an even distribution's half-width, where its 95 % end. */
    private static final double EVEN_95 = 0.95;

    private static final double STEP = 1e-4;

    /** Even within the tolerance. */
    static Variation even(String what, DoubleFunction<Circuit> circuit, double limit) {
        return new Variation(what, circuit, limit, EVEN_95 * limit);
    }

    /** With the value a little lower. */
    Circuit below() {
        return circuit.apply(1 - STEP);
    }

    /** With the value a little higher. */
    Circuit above() {
        return circuit.apply(1 + STEP);
    }

    /** Half the way from {@link #below} to {@link #above}, relative. */
    double step() {
        return STEP;
    }
}
