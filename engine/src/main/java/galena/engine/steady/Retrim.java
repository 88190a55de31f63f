package galena.engine.steady;

import galena.engine.linear.SingularMatrix;
import galena.engine.startup.Site;
import java.util.Locale;

/**
 * Turns an adjustment until a wanted frequency is met: one Newton iteration on the orbit and the adjustment together, the
 * frequency imposed and the adjustment in its place among the unknowns. Out of range is an outcome, with how far the range goes.
 * Immutable.
 */
public final class Retrim {
    private static final int MOST_STEPS = 40;
    private static final double LONGEST_STEP = 0.2;
    private static final double DIFFERENCE = 1e-4;
    private static final double SETTLED = 1e-6;

    private final Accuracy accuracy;
    private final Watch watch;

    public Retrim(Accuracy accuracy, Watch watch) {
        this.accuracy = accuracy;
        this.watch = watch;
    }

    /** What came of it. */
    public sealed interface Outcome {}

    /**
     * The frequency is met.
     *
     * @param parameter at which
     * @param state there
     */
    public record Trimmed(double parameter, SteadyState.Found state) implements Outcome {}

    /**
     * The range ends before the frequency is met.
     *
     * @param stop the end of the range that lies nearest
     * @param state there
     */
    public record OutOfRange(double stop, SteadyState.Found state) implements Outcome {
        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "out of range: at the stop the frequency is %.6g Hz",
                    state.waveforms().frequency());
        }
    }

    /** The orbit was lost on the way; the reason is that of the steady state. */
    public record Lost(SteadyState.Reason reason) implements Outcome {}

    /**
     * @param family the circuit by position
     * @param low lower end of the range
     * @param high upper end
     * @param start a position in the range
     * @param known the steady state there, or of a circuit much like it
     * @param frequency wanted, Hz
     */
    public Outcome toFrequency(
            Family family, double low, double high, double start, SteadyState.Found known, double frequency) {
        Site site = known.site();
        double step = DIFFERENCE * (high - low);
        Orbit orbit = known.coarse().copy();
        double position = start, before = orbit.frequency;
        double[] change = new double[orbit.x.length], extra = new double[Closing.MOST_FREE];
        for (int k = 0; k < MOST_STEPS; k++) {
            watch.check();
            // the imposed frequency is approached in steps a tank's width apart at most, so that each is near the last
            double reach = 0.02 * before;
            orbit.frequency = before + Math.max(-reach, Math.min(reach, frequency - before));
            OrbitSystem system = new OrbitSystem(family.at(position), site);
            double below = Math.max(low, position - step), above = Math.min(high, position + step);
            system.setParameter(
                    ParameterChange.between(orbit, family.at(below), family.at(above), (above - below) / 2));
            try {
                system.newtonStep(orbit, Closing.Free.PARAMETER, 0, change, extra);
            } catch (SingularMatrix | ArithmeticException singular) {
                return new Lost(SteadyState.Reason.LOST);
            }
            double wanted = extra[0], longest = LONGEST_STEP * (high - low);
            double share = Math.abs(wanted) > longest ? longest / Math.abs(wanted) : 1;
            if (position + share * wanted < low) return atStop(family, low, known, frequency);
            if (position + share * wanted > high) return atStop(family, high, known, frequency);
            for (int p = 0; p < change.length; p++) orbit.x[p] += share * change[p];
            position += share * wanted;
            if (!Double.isFinite(position)) return new Lost(SteadyState.Reason.LOST);
            boolean there = orbit.frequency == frequency;
            before = orbit.frequency;
            if (there && share == 1 && Math.abs(wanted) < SETTLED * (high - low)) {
                return finish(family, position, orbit, site);
            }
        }
        return new Lost(SteadyState.Reason.LOST);
    }

    private Outcome finish(Family family, double position, Orbit orbit, Site site) {
        OrbitSystem system = new OrbitSystem(family.at(position), site);
        SteadyState state = new Refinement(system, Closing.Free.FREQUENCY, accuracy, watch).fromNear(orbit);
        return state instanceof SteadyState.Found found
                ? new Trimmed(position, found)
                : new Lost(((SteadyState.NotFound) state).reason());
    }

    /** The stop is reached; whether the frequency lies beyond it is settled by the steady state there. */
    private Outcome atStop(Family family, double stop, SteadyState.Found known, double frequency) {
        SteadyState state = new SteadyOscillation(accuracy, watch).solveNear(family.at(stop), known);
        if (!(state instanceof SteadyState.Found found)) return new Lost(((SteadyState.NotFound) state).reason());
        if (Math.abs(found.waveforms().frequency() / frequency - 1) <= accuracy.frequency()) {
            return new Trimmed(stop, found);
        }
        return new OutOfRange(stop, found);
    }
}
