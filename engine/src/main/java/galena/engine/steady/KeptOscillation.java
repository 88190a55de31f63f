package galena.engine.steady;

import galena.engine.equations.Equations;
import org.jspecify.annotations.Nullable;

/**
 * A carrier kept solved while values of its circuit move, for a page that follows a trimmer. Both meshes and the factors on them stay
 * from one answer to the next, so that most answers cost a few steps with matrices that are already factored; where those shrink too
 * slowly whole Newton steps are taken. Every answer is solved and its error measured like any other. One per thread.
 */
public final class KeptOscillation {
    private final Accuracy accuracy;
    private final Watch watch;
    private final Refinement refinement;
    private final OrbitSystem coarse;
    private final OrbitNewton onCoarse;
    private final OrbitSystem fine;
    private final OrbitNewton onFine;
    private SteadyState.Found last;

    /**
     * @param start what later answers start from
     * @param accuracy of every answer
     */
    public KeptOscillation(SteadyState.Found start, Accuracy accuracy, Watch watch) {
        this.accuracy = accuracy;
        this.watch = watch;
        Equations equations = start.waveforms().equations();
        coarse = new OrbitSystem(equations, start.site());
        fine = new OrbitSystem(equations, start.site());
        OrbitNewton.Manner manner = OrbitNewton.Manner.to(accuracy.settled());
        onCoarse = new OrbitNewton(coarse, manner);
        onFine = new OrbitNewton(fine, manner);
        refinement = new Refinement(coarse, Closing.Free.FREQUENCY, accuracy, watch);
        last = start;
    }

    /** The last answer that was found, at first the start. */
    public SteadyState.Found last() {
        return last;
    }

    /**
     * The same oscillation with other values.
     *
     * @throws IllegalArgumentException for another structure
     */
    public SteadyState move(Equations changed) {
        watch.check();
        SteadyState state = quickly(changed);
        if (state == null) {
            coarse.setEquations(changed);
            state = refinement.fromNear(last.coarse(), last.waveforms().equations());
        }
        if (state instanceof SteadyState.Found found) last = found;
        return state;
    }

    /** On the meshes of the last answer; null where they don't do. */
    private SteadyState.@Nullable Found quickly(Equations changed) {
        coarse.setEquations(changed);
        fine.setEquations(changed);
        Orbit below = last.coarse().copy();
        if (!improve(onCoarse, coarse, below)) return null;
        Orbit above = last.waveforms().orbit().copy();
        if (above.intervals() != 2 * below.intervals()) return null;
        // what the coarser mesh moved by, the finer will too
        Orbit moved = below.copy();
        moved.add(-1, last.coarse());
        above.add(1, moved.onMesh(above.mesh));
        if (!improve(onFine, fine, above)) return null;
        AchievedError error = Comparison.of(changed, below, above, accuracy, 0);
        if (!error.meets(accuracy)) return null;
        return new SteadyState.Found(
                accuracy,
                new Waveforms(changed, above, 0),
                error,
                coarse.site(),
                onCoarse.iterations() + onFine.iterations(),
                onFine.lastStep(),
                new SteadyState.Inner(below));
    }

    private static boolean improve(OrbitNewton newton, OrbitSystem system, Orbit orbit) {
        return newton.improveKept(orbit, Closing.Free.FREQUENCY, Refinement.NEWTON_STEPS)
                && Refinement.swings(orbit, system.site());
    }
}
