package galena.engine.equations;

/** The nonlinear part of a device, bound to its unknowns and entries. Immutable. */
interface Element {
    /**
     * Adds the element's currents, charges and derivatives at x.
     *
     * @param x read; unknowns from {@code offset} on, ground first
     */
    void add(double[] x, int offset, Evaluation e);

    /**
     * Moves the tangents of the element's junctions towards x, as far as each can be believed.
     *
     * @param x read
     * @param tangents voltages at which junctions are linearised; the element's own are changed
     * @param at where the equations' first junction is in {@code tangents}
     * @return how far the farthest is from where x puts its junction, in volts by which a current grows by e
     */
    default double lead(double[] x, int offset, double[] tangents, int at) {
        return 0;
    }

    /** Quantities through whose zeros the element's law bends. */
    default int bends() {
        return 0;
    }

    /** Writes those at x to {@code out[at..]}. */
    default void bends(double[] x, int offset, double[] out, int at) {}

    /** Watts that the element takes up in conduction at x; charges store and return theirs. */
    double power(double[] x, int offset, Evaluation e);
}
