package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.startup.Site;
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
    private static final int MOST_REFINEMENTS = 7;
    private static final double GROWTH_OF_MESH = 1.6;
    private static final int NEWTON_STEPS = 25;
    private static final int MOST_INTERVALS = 2000;

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
        Equations equations = point.equations();
        OrbitSystem system = new OrbitSystem(equations, startup.site(), false);
        AmplitudeMarch march = new AmplitudeMarch(point, startup, system, watch);
        AmplitudeMarch.Arrival arrival = march.run();
        if (arrival.orbit() == null) {
            return new SteadyState.NotFound(arrival.reason(), arrival.amplitude(), arrival.load());
        }
        return refine(equations, system, arrival.orbit());
    }

    /** The orbit of a slightly changed circuit of the same structure, from one already found. */
    public SteadyState solveNear(Equations changed, SteadyState.Found known) {
        Equations before = known.waveforms().equations();
        if (!before.pattern().sameAs(changed.pattern())) {
            throw new IllegalArgumentException("the circuits differ in structure; start from cold");
        }
        OrbitSystem system = new OrbitSystem(changed, known.site(), false);
        Orbit orbit = known.coarse().copy();
        OrbitNewton newton = new OrbitNewton(system);
        if (!newton.improve(orbit, Closing.Free.FREQUENCY, 0, NEWTON_STEPS) || isAtRest(orbit, known.site())) {
            return new SteadyState.NotFound(SteadyState.Reason.LOST, 0, 0);
        }
        return refineFrom(changed, system, orbit, newton);
    }

    private SteadyState refine(Equations equations, OrbitSystem system, Orbit marched) {
        boolean[] isCurrent = currents(equations);
        Orbit orbit = marched.onMesh(Remesh.follow(marched, isCurrent, accuracy.firstIntervals()));
        system.plan(orbit);
        OrbitNewton newton = new OrbitNewton(system);
        if (!newton.improve(orbit, Closing.Free.FREQUENCY, 0, NEWTON_STEPS) || isAtRest(orbit, system.site())) {
            return new SteadyState.NotFound(SteadyState.Reason.MESH_TOO_COARSE, 0, 0);
        }
        orbit = orbit.onMesh(Remesh.follow(orbit, isCurrent, accuracy.firstIntervals()));
        if (!newton.improve(orbit, Closing.Free.FREQUENCY, 0, NEWTON_STEPS)) {
            return new SteadyState.NotFound(SteadyState.Reason.MESH_TOO_COARSE, 0, 0);
        }
        return refineFrom(equations, system, orbit, newton);
    }

    /** Halves the mesh and compares; lays a denser mesh until the comparison satisfies. */
    private SteadyState refineFrom(Equations equations, OrbitSystem system, Orbit start, OrbitNewton newton) {
        boolean[] isCurrent = currents(equations);
        Orbit coarse = start;
        for (int k = 0; k < MOST_REFINEMENTS; k++) {
            watch.check();
            Orbit fine = coarse.onMesh(coarse.halvedMesh());
            if (!newton.improve(fine, Closing.Free.FREQUENCY, 0, NEWTON_STEPS)) {
                return new SteadyState.NotFound(SteadyState.Reason.MESH_TOO_COARSE, 0, 0);
            }
            AchievedError error = Comparison.of(equations, coarse, fine, accuracy);
            if (error.meets(accuracy)) {
                return SteadyState.Found.of(equations, system, coarse, fine, error, newton);
            }
            int denser = (int) Math.ceil(GROWTH_OF_MESH * coarse.intervals());
            if (denser > MOST_INTERVALS) break;
            coarse = fine.onMesh(Remesh.follow(fine, isCurrent, denser));
            if (!newton.improve(coarse, Closing.Free.FREQUENCY, 0, NEWTON_STEPS)) {
                return new SteadyState.NotFound(SteadyState.Reason.MESH_TOO_COARSE, 0, 0);
            }
        }
        return new SteadyState.NotFound(SteadyState.Reason.MESH_TOO_COARSE, 0, 0);
    }

    static boolean[] currents(Equations equations) {
        boolean[] isCurrent = new boolean[equations.stride()];
        for (int j = 1; j < isCurrent.length; j++) isCurrent[j] = equations.isCurrent(j);
        return isCurrent;
    }

    /** The operating point satisfies the same equations; an orbit without amplitude is refused. */
    private static boolean isAtRest(Orbit orbit, Site site) {
        return Math.abs(Closing.condition(orbit, orbit.x, site, 1)) < 1e-7;
    }
}
