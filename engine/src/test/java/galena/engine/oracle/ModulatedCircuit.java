package galena.engine.oracle;

import galena.engine.circuit.Circuit;

/**
 * A modulated circuit beside its differential equations of index 0, worked out by hand: the states are net voltages and coil
 * currents, and the slow source enters with its value.
 *
 * @param name in words
 * @param circuit what the engine is given, its slow source {@code A} at rest
 * @param states names of nets, or "current of" a coil
 * @param coil the state whose modulation is read
 * @param part the coil's name
 * @param level of the slow source, peak, V
 * @param cycles of the carrier in one slow period
 * @param settling slow periods after which nothing is remembered
 * @param slopes the equations
 */
record ModulatedCircuit(
        String name,
        Circuit circuit,
        String[] states,
        int coil,
        String part,
        double level,
        int cycles,
        int settling,
        Slopes slopes) {
    /** dy/dt, 1/s, at a time (s) with the slow source at a value. */
    interface Slopes {
        void at(double t, double[] y, double slow, double[] dy);
    }

    ModulatedCircuit at(double otherLevel, int otherCycles, int otherSettling) {
        return new ModulatedCircuit(name, circuit, states, coil, part, otherLevel, otherCycles, otherSettling, slopes);
    }

    @Override
    public String toString() {
        return name + " at " + level + " V, " + cycles + " cycles";
    }
}
