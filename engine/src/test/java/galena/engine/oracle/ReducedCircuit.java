package galena.engine.oracle;

import galena.engine.circuit.Circuit;

/**
 * A circuit beside its differential equations of index 0, worked out by hand: the states are net voltages and coil currents,
 * everything else is solved for inside {@link Slopes}.
 *
 * @param name in words
 * @param circuit what the engine is given
 * @param states names of nets, or "current of" a coil
 * @param tank the state whose harmonics are the tank voltage's
 * @param coil the state whose harmonics are the coil current's
 * @param slopes the equations
 */
record ReducedCircuit(String name, Circuit circuit, String[] states, int tank, int coil, Slopes slopes) {
    /** dy/dt, 1/s. */
    interface Slopes {
        void at(double[] y, double[] dy);
    }

    @Override
    public String toString() {
        return name;
    }
}
