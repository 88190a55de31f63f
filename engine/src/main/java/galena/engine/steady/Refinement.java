package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.startup.Site;
import org.jspecify.annotations.Nullable;

/**
 * From an orbit on a coarse mesh to one that is exact enough: the mesh is laid anew to follow the solution, every interval is
 * halved, the two answers are compared, and the mesh is made denser until they agree to the accuracy asked for.
 */
final class Refinement {
    static final int NEWTON_STEPS = 25;
    private static final int MOST_REFINEMENTS = 8;

    /** The method's order less one: sharp waveforms reach it late. */
    private static final double ORDER = 4;

    private static final double ROOM = 1.1;
    private static final double LEAST_GROWTH = 1.2;
    private static final double MOST_GROWTH = 3;
    private static final int MOST_INTERVALS = 2000;
    private static final int MOST_FIRST_INTERVALS = 400;
    private static final double AT_REST = 1e-7;

    /** Parts of the way between two circuits. */
    private static final double FIRST_STRIDE = 0.25;

    private static final double SHORTEST_STRIDE = 1 / 128.0;

    private final OrbitSystem system;
    private final OrbitNewton newton;
    private final Closing.Free free;
    private final Accuracy accuracy;
    private final Watch watch;

    Refinement(OrbitSystem system, Closing.Free free, Accuracy accuracy, Watch watch) {
        this.system = system;
        this.newton = new OrbitNewton(system, OrbitNewton.Manner.to(accuracy.settled()));
        this.free = free;
        this.accuracy = accuracy;
        this.watch = watch;
    }

    /** From a mesh that does not follow the solution yet; sharp waveforms need more intervals before they settle. */
    SteadyState fromRough(Orbit rough) {
        Equations equations = system.equations();
        for (int intervals = accuracy.firstIntervals(); intervals <= MOST_FIRST_INTERVALS; intervals *= 2) {
            watch.check();
            Orbit orbit = rough.onMesh(Remesh.follow(rough, equations, intervals));
            system.plan(orbit);
            if (!improve(orbit)) continue;
            Orbit followed = orbit.onMesh(Remesh.follow(orbit, equations, intervals));
            if (improve(followed)) return fromFollowed(followed);
        }
        return new SteadyState.NotFound(SteadyState.Reason.MESH_TOO_COARSE, 0, 0);
    }

    /** From a solved orbit of a circuit much like this one, on a mesh that followed it. */
    SteadyState fromNear(Orbit near) {
        Orbit orbit = near.copy();
        if (!improve(orbit)) return new SteadyState.NotFound(SteadyState.Reason.LOST, 0, 0);
        return fromFollowed(orbit);
    }

    /** The same, by circuits in between where one step is too long. */
    SteadyState fromNear(Orbit near, Equations from) {
        Orbit orbit = led(near, from);
        if (orbit == null) return new SteadyState.NotFound(SteadyState.Reason.LOST, 0, 0);
        return fromFollowed(orbit);
    }

    /**
     * A solved orbit of another circuit led to this one. In one step where Newton allows; else by circuits in between, on meshes that
     * follow. Null when it is lost all the same.
     */
    @Nullable
    Orbit led(Orbit near, Equations from) {
        Orbit orbit = near.copy();
        if (improve(orbit)) return orbit;
        if (from == system.equations()) return null;
        try {
            return ledBetween(near, from);
        } finally {
            system.setBetweenNothing();
        }
    }

    private @Nullable Orbit ledBetween(Orbit near, Equations from) {
        Orbit orbit = near;
        double gone = 0, stride = FIRST_STRIDE;
        while (gone < 1) {
            watch.check();
            double to = Math.min(1, gone + stride);
            system.setBetween(from, to);
            Orbit trial = orbit.copy();
            if (improve(trial)) {
                gone = to;
                orbit = gone < 1 ? trial.onMesh(Remesh.follow(trial, system.equations(), trial.intervals())) : trial;
                stride *= 2;
            } else {
                stride /= 2;
                if (stride < SHORTEST_STRIDE) return null;
            }
        }
        return orbit;
    }

    /** From an orbit solved on a mesh that follows it. */
    SteadyState fromFollowed(Orbit start) {
        Equations equations = system.equations();
        Orbit coarse = start;
        for (int k = 0; k < MOST_REFINEMENTS; k++) {
            watch.check();
            Orbit fine = coarse.onMesh(coarse.halvedMesh());
            if (!improve(fine)) break;
            AchievedError error = Comparison.of(equations, coarse, fine, accuracy, system.drive());
            if (error.meets(accuracy)) return found(coarse, fine, error);
            int denser = (int) Math.ceil(growth(error.excess(accuracy)) * coarse.intervals());
            if (denser > MOST_INTERVALS) break;
            coarse = fine.onMesh(Remesh.follow(fine, equations, denser));
            if (!improve(coarse)) break;
        }
        return new SteadyState.NotFound(SteadyState.Reason.MESH_TOO_COARSE, 0, 0);
    }

    /** How many times as many intervals are needed where the error is too large by a ratio. */
    private static double growth(double excess) {
        double needed = ROOM * Math.pow(excess, 1 / ORDER);
        return Math.min(MOST_GROWTH, Math.max(LEAST_GROWTH, needed));
    }

    /** The operating point satisfies a free-running circuit's equations too; an orbit without amplitude is refused. */
    boolean improve(Orbit orbit) {
        if (!newton.improve(orbit, free, 0, NEWTON_STEPS)) return false;
        return !free.frequency() || swings(orbit, system.site());
    }

    /** Whether an orbit has an amplitude at a site. */
    static boolean swings(Orbit orbit, Site site) {
        return Math.abs(Closing.condition(orbit, orbit.x, site, 1)) > AT_REST;
    }

    private SteadyState.Found found(Orbit coarse, Orbit fine, AchievedError error) {
        return new SteadyState.Found(
                accuracy,
                new Waveforms(system.equations(), fine, system.drive()),
                error,
                system.site(),
                newton.iterations(),
                newton.lastStep(),
                new SteadyState.Inner(coarse));
    }
}
