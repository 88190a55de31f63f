package galena.engine.timerun;

import galena.engine.equations.Equations;
import galena.engine.steady.Watch;

/**
 * Integrates a circuit in time. The start is given by a point and a kick to its charges, so that it is consistent whatever the kick:
 * algebraic unknowns follow within the first step. One per thread.
 */
public final class TimeRun {
    private static final double LARGEST_GROWTH = 2;
    private static final double SMALLEST_SHRINK = 0.2;
    private static final double SAFETY = 0.9;
    /** Share of the first step in which all that holds no charge follows the kicked charges. */
    private static final double SETTLING = 1e-3;

    private static final double SMALLEST_STEP = 1e-16;

    private final Equations equations;
    private final double tolerance;
    private final double longest;
    private final Watch watch;

    /**
     * @param tolerance largest difference of a step's end from what the step before foretold, as a share of the swing so far; 1e-3
     *     keeps amplitudes to about 1e-4 over hundreds of cycles
     */
    public TimeRun(Equations equations, double tolerance, Watch watch) {
        this(equations, tolerance, Double.POSITIVE_INFINITY, watch);
    }

    /**
     * @param longest step, s. The method damps what is faster than its steps: where something quiet is to grow, a step must be
     *     a small part of its cycle
     */
    public TimeRun(Equations equations, double tolerance, double longest, Watch watch) {
        if (!(tolerance > 0 && tolerance < 0.1)) {
            throw new IllegalArgumentException("a tolerance lies between 0 and 0.1, not " + tolerance);
        }
        this.equations = equations;
        this.tolerance = tolerance;
        if (!(longest > 0)) throw new IllegalArgumentException("the longest step is above zero, not " + longest + " s");
        this.longest = longest;
        this.watch = watch;
    }

    /** Sees every step. */
    public interface Listener {
        /** @return false to stop */
        boolean step(Passage passage);
    }

    /** How a run ended. */
    public enum End {
        /** The time asked for is reached. */
        REACHED,
        /** The listener has seen enough. */
        STOPPED,
        /** The equations could not be solved at any step however small. */
        STUCK
    }

    /**
     * Runs from rest or any other point.
     *
     * @param x where to start; unknowns by number, ground first; not changed
     * @param kick added to the charges and fluxes there, by row; what makes an oscillator leave its operating point
     * @param from time of the start, s
     * @param to time of the end, s
     * @param firstStep s; what comes first is a thousandth of it, and the steps then grow up to what the tolerance allows
     */
    public End run(double[] x, double[] kick, double from, double to, double firstStep, Listener listener) {
        Step step = new Step(equations, x, kick);
        double settling = SETTLING * firstStep;
        if (!step.settle(from, settling)) return End.STUCK;
        double time = from + 2 * settling, width = LARGEST_GROWTH * settling;
        long count = 0;
        while (time < to) {
            if (++count % 64 == 0) watch.check();
            double trial = Math.min(Math.min(width, longest), to - time);
            boolean solved = step.solve(time, trial);
            double error = solved ? step.surprise() / tolerance : Double.POSITIVE_INFINITY;
            if (error > 1 && trial > SMALLEST_STEP) {
                double shrink = solved ? Math.max(SMALLEST_SHRINK, SAFETY * Math.pow(error, -0.25)) : SMALLEST_SHRINK;
                width = trial * shrink;
                continue;
            }
            if (!solved) return End.STUCK;
            step.accept(trial);
            if (!listener.step(step.passage().over(time, trial))) return End.STOPPED;
            time += trial;
            double growth = Math.min(LARGEST_GROWTH, SAFETY * Math.pow(Math.max(error, 1e-8), -0.25));
            width = trial * Math.max(growth, SMALLEST_SHRINK);
        }
        return End.REACHED;
    }
}
