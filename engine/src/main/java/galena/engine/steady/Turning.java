package galena.engine.steady;

import java.util.List;
import java.util.Optional;

/** Orbits and an adjustment as one system of unknowns, a figure of the orbits imposed: what a re-trim linearises again and again. */
interface Turning {
    /** The figure where the orbits stand. */
    double value();

    /** How far the figure is led in one step. */
    double reach();

    boolean meets(double value);

    double wanted();

    /** What the figure is, in words. */
    String words(double value);

    /**
     * Linearises where the orbits stand.
     *
     * @param position of the adjustment
     * @param aim value of the figure
     * @return the adjustment's Newton step; not finite where the figure does not feel it
     * @throws galena.engine.linear.SingularMatrix as the next
     * @throws ArithmeticException when there is no step
     */
    double step(double position, double aim);

    /** The largest share of the last step to which the devices' laws are to be trusted, 0 to 1. */
    double trusted();

    /** Moves the orbits by a share of the last step. */
    void take(double share);

    /** Solves the orbits in full with the adjustment left where it is. */
    Settled settle(double position);

    /** Goes on from solved orbits. */
    void adopt(List<SteadyState.Found> states);

    /**
     * Solved orbits, or why one is lost.
     *
     * @param states empty when one is
     * @param value of the figure
     */
    record Settled(Optional<List<SteadyState.Found>> states, double value, SteadyState.Reason reason) {
        static Settled lost(SteadyState.Reason reason) {
            return new Settled(Optional.empty(), 0, reason);
        }

        static Settled at(List<SteadyState.Found> states, double value) {
            return new Settled(Optional.of(List.copyOf(states)), value, SteadyState.Reason.NONE);
        }
    }
}
