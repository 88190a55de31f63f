package galena.engine.equations;

/** The nonlinear part of a device, bound to its unknowns and entries. Immutable. */
interface Element {
    /**
     * Adds the element's currents, charges and derivatives at x.
     *
     * @param x read; unknowns from {@code offset} on, ground first
     */
    void add(double[] x, int offset, Evaluation e);

    /** Watts that the element takes up in conduction at x; charges store and return theirs. */
    double power(double[] x, int offset, Evaluation e);
}
