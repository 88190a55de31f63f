package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.startup.Site;
import java.util.Optional;

/**
 * Solves one free-running circuit again and again with other values, each time from a period nearby, and keeps plan and arrays
 * between. For samples and curves by the thousand; what a single question costs elsewhere in laying out arrays is spent once
 * here. One per thread.
 */
public final class Follower {
    private final OrbitSystem system;
    private final Accuracy accuracy;
    private final Watch watch;

    /**
     * @param like gives the structure
     * @param site where the phase is pinned
     */
    public Follower(Equations like, Site site, Accuracy accuracy, Watch watch) {
        system = new OrbitSystem(like, site);
        this.accuracy = accuracy;
        this.watch = watch;
    }

    /**
     * The period of a changed circuit on the start's own mesh; by circuits in between, on meshes that follow, where the change is too
     * large for one step.
     *
     * @return empty when it was lost
     * @throws IllegalArgumentException for another structure
     */
    public Optional<Followed> follow(Equations changed, Followed start) {
        watch.check();
        system.setEquations(changed);
        return Optional.ofNullable(
                        refinement().led(start.orbit(), start.waveforms().equations()))
                .map(orbit -> new Followed(changed, orbit, system.site()));
    }

    /** A followed period in full: its mesh error measured, and the mesh made denser until the accuracy is met. */
    public SteadyState settle(Followed followed) {
        system.setEquations(followed.waveforms().equations());
        return refinement().fromFollowed(followed.orbit());
    }

    /** As {@link Retrim#toFrequency}, from a followed period. */
    public Retrim.Outcome toFrequency(
            Family family, double low, double high, double start, Followed known, double frequency) {
        return new Retrim(accuracy, watch)
                .to(system, OrbitFigure.frequency(), family, low, high, start, known, frequency);
    }

    /**
     * How a followed period changes with a parameter, as in {@link OrbitDerivatives#between}.
     *
     * @param below the equations at p − delta
     * @param above at p + delta
     */
    public Followed.Slope slope(Followed at, Equations below, Equations above, double delta) {
        Orbit orbit = at.orbit();
        double[] derivative = new double[orbit.x.length], extra = new double[Closing.MOST_FREE];
        system.setEquations(at.waveforms().equations());
        system.newtonStep(orbit, Closing.Free.FREQUENCY, 0, derivative, extra);
        Change explicit = ParameterChange.between(orbit, below, above, delta);
        system.differentiate(orbit, explicit, Closing.Free.FREQUENCY, derivative, extra);
        Orbit change = new Orbit(orbit.mesh, orbit.stride, extra[0]);
        System.arraycopy(derivative, 0, change.x, 0, derivative.length);
        return new Followed.Slope(at.waveforms(), new Waveforms(system.equations(), change, 0), change);
    }

    /**
     * Follows a circuit to a distance along a parameter, from a period at distance zero whose slope is known.
     *
     * @param changed the circuit there
     * @param from at distance zero
     * @param slope of it by the parameter
     * @param known another period already found that way, if any
     * @param way its distance
     * @param distance of the changed circuit
     */
    public Optional<Followed> along(
            Equations changed,
            Followed from,
            Followed.Slope slope,
            Optional<Followed> known,
            double way,
            double distance) {
        return follow(changed, from.ahead(slope, known, way, distance));
    }

    private Refinement refinement() {
        return new Refinement(system, Closing.Free.FREQUENCY, accuracy, watch);
    }
}
