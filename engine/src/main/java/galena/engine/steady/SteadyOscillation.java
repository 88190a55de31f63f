package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.startup.Startup;

/**
 * The periodic solution of a free-running circuit, its frequency among the unknowns.
 *
 * <p>From cold: the growing mode gives shape and frequency at small amplitude, with just the extra load across its site that
 * holds it there ({@link AmplitudeMarch}). The amplitude is then raised and the load that holds it followed until no load is
 * left: that is the orbit, and the way to it passes no folds, because amplitude is imposed and load is free. The orbit is
 * then put on a mesh that follows it, refined until halving the mesh changes no figure by more than the accuracy allows.
 *
 * <p>Immutable. Cancelling: between two Newton steps.
 */
public final class SteadyOscillation {
    private final Accuracy accuracy;
    private final Watch watch;

    public SteadyOscillation(Accuracy accuracy, Watch watch) {
        this.accuracy = accuracy;
        this.watch = watch;
    }

    public SteadyOscillation(Accuracy accuracy) {
        this(accuracy, Watch.NONE);
    }

    /** The orbit that grows from an operating point by the mode of a startup. */
    public SteadyState solve(OperatingPoint.Found point, Startup startup) {
        OrbitSystem system = new OrbitSystem(point.equations(), startup.site());
        AmplitudeMarch.Arrival arrival = new AmplitudeMarch(point, startup, system, watch).run();
        if (arrival.orbit() == null) {
            return new SteadyState.NotFound(arrival.reason(), arrival.amplitude(), arrival.load());
        }
        return new Refinement(system, Closing.Free.FREQUENCY, accuracy, watch).fromRough(arrival.orbit());
    }

    /**
     * The orbit of a changed circuit of the same structure, from one already found: in one step where the change is small, else by
     * circuits in between, so that it is the same oscillation that is followed.
     *
     * @throws IllegalArgumentException when the structures differ
     */
    public SteadyState solveNear(Equations changed, SteadyState.Found known) {
        Equations before = known.waveforms().equations();
        if (!before.pattern().sameAs(changed.pattern())) {
            throw new IllegalArgumentException("the circuits differ in structure; start from cold");
        }
        OrbitSystem system = new OrbitSystem(changed, known.site());
        return new Refinement(system, Closing.Free.FREQUENCY, accuracy, watch).fromNear(known.coarse(), before);
    }
}
