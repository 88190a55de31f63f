package galena.engine.steady;

import galena.engine.linear.SingularMatrix;
import java.util.Locale;
import java.util.Optional;

/**
 * Turns an adjustment until a wanted frequency is met: one Newton iteration on the orbit and the adjustment together, the
 * frequency imposed and the adjustment in its place among the unknowns. Out of range is an outcome, with how far the range goes.
 * Immutable.
 */
public final class Retrim {
    private static final int MOST_STEPS = 40;
    private static final double LONGEST_STEP = 0.2;
    private static final double DIFFERENCE = 1e-4;

    /** A last step of this share of the range leaves about its square. */
    private static final double SETTLED = 1e-4;

    /** The frequency is imposed on the coarser mesh and read from the finer. */
    private static final double MESHES = 2;

    private static final double REACH = 0.02;

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
        OrbitSystem system = new OrbitSystem(known.waveforms().equations(), known.site());
        return toFrequency(system, family, low, high, start, Followed.of(known), frequency);
    }

    Outcome toFrequency(
            OrbitSystem system,
            Family family,
            double low,
            double high,
            double start,
            Followed known,
            double frequency) {
        double difference = DIFFERENCE * (high - low), longest = LONGEST_STEP * (high - low);
        Orbit orbit = known.orbit().copy();
        double position = start, before = orbit.frequency;
        Optional<Trimmed> atStop = Optional.empty();
        double[] change = new double[orbit.x.length], extra = new double[Closing.MOST_FREE];
        for (int k = 0; k < MOST_STEPS; k++) {
            watch.check();
            // the imposed frequency is approached in steps of a few tank widths, so that each is near the last
            double reach = REACH * before;
            orbit.frequency = before + Math.max(-reach, Math.min(reach, frequency - before));
            system.setEquations(family.at(position));
            double below = Math.max(low, position - difference), above = Math.min(high, position + difference);
            system.setParameter(
                    ParameterChange.between(orbit, family.at(below), family.at(above), (above - below) / 2));
            try {
                system.newtonStep(orbit, Closing.Free.PARAMETER, 0, change, extra);
            } catch (SingularMatrix | ArithmeticException singular) {
                return new Lost(SteadyState.Reason.LOST);
            }
            double wanted = extra[0];
            if (!Double.isFinite(wanted)) return new Lost(SteadyState.Reason.LOST);
            double longestShare = Math.abs(wanted) > longest ? longest / Math.abs(wanted) : 1;
            double aim = position + longestShare * wanted, next = Math.max(low, Math.min(high, aim));
            if (next == position && next != aim) {
                // outward from a stop: only from the orbit there does that mean that the frequency lies beyond
                if (atStop.isPresent() && atStop.get().parameter() == position) {
                    return new OutOfRange(position, atStop.get().state());
                }
                Outcome outcome = finish(system, family, position, orbit);
                if (!(outcome instanceof Trimmed stop) || meets(stop.state(), frequency)) return outcome;
                atStop = Optional.of(stop);
                orbit = stop.state().coarse().copy();
                change = new double[orbit.x.length];
                before = orbit.frequency;
                continue;
            }
            double share = next == aim ? longestShare : (next - position) / wanted;
            for (int p = 0; p < change.length; p++) orbit.x[p] += share * change[p];
            position = next;
            boolean there = orbit.frequency == frequency;
            before = orbit.frequency;
            if (there && share == 1 && Math.abs(wanted) < SETTLED * (high - low)) {
                Outcome outcome = finish(system, family, position, orbit);
                if (!(outcome instanceof Trimmed met) || meets(met.state(), frequency)) return outcome;
                orbit = met.state().coarse().copy(); // of a denser mesh, on which the frequency is another
                change = new double[orbit.x.length];
                before = orbit.frequency;
            }
        }
        return new Lost(SteadyState.Reason.LOST);
    }

    private boolean meets(SteadyState.Found state, double frequency) {
        return Math.abs(state.waveforms().frequency() / frequency - 1) <= MESHES * accuracy.frequency();
    }

    private Outcome finish(OrbitSystem system, Family family, double position, Orbit orbit) {
        system.setEquations(family.at(position));
        SteadyState state = new Refinement(system, Closing.Free.FREQUENCY, accuracy, watch).fromNear(orbit);
        return state instanceof SteadyState.Found found
                ? new Trimmed(position, found)
                : new Lost(((SteadyState.NotFound) state).reason());
    }
}
