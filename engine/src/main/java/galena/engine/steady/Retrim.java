package galena.engine.steady;

import galena.engine.linear.SingularMatrix;
import java.util.List;
import java.util.Optional;

/**
 * Turns an adjustment until a figure has a wanted value: one Newton iteration on the orbit and the adjustment together, the figure
 * imposed and the adjustment among the unknowns ({@link BorderedTurning}; {@link ChainTurning} for a figure of several orbits). Out of
 * range is an outcome, with how far the range goes, and so is a figure that turns back before it gets there. Immutable.
 */
public final class Retrim {
    private static final int MOST_STEPS = 60;
    private static final double LONGEST_STEP = 0.2;
    private static final double DIFFERENCE = 1e-4;

    /** A last step of this share of the range leaves about its square. */
    private static final double SETTLED = 1e-4;

    private final Accuracy accuracy;
    private final Watch watch;

    public Retrim(Accuracy accuracy, Watch watch) {
        this.accuracy = accuracy;
        this.watch = watch;
    }

    /** What came of it. */
    public sealed interface Outcome {}

    /**
     * The wanted value is met.
     *
     * @param parameter at which
     * @param states there: one, or a chain's
     */
    public record Trimmed(double parameter, List<SteadyState.Found> states) implements Outcome {
        public Trimmed {
            states = List.copyOf(states);
        }

        /** The first. */
        public SteadyState.Found state() {
            return states.get(0);
        }
    }

    /**
     * The range ends before the value is met.
     *
     * @param stop the end of the range that lies nearest
     * @param states there
     * @param value of the figure there
     * @param words the same in words
     */
    public record OutOfRange(double stop, List<SteadyState.Found> states, double value, String words)
            implements Outcome {
        public OutOfRange {
            states = List.copyOf(states);
        }

        public SteadyState.Found state() {
            return states.get(0);
        }

        @Override
        public String toString() {
            return "out of range: at the stop " + words;
        }
    }

    /**
     * The figure is largest or smallest within the range and does not get to the value: turning on leads away from it.
     *
     * @param parameter where it comes nearest
     * @param states there
     * @param value of the figure there
     * @param words the same in words
     */
    public record TurnsBack(double parameter, List<SteadyState.Found> states, double value, String words)
            implements Outcome {
        public TurnsBack {
            states = List.copyOf(states);
        }

        @Override
        public String toString() {
            return "not reached: where it comes nearest, " + words;
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
        return to(OrbitFigure.frequency(), family, low, high, start, known, frequency);
    }

    /**
     * @param figure imposed
     * @param family the circuit by position
     * @param low lower end of the range
     * @param high upper end
     * @param start a position in the range
     * @param known the steady state there, or of a circuit much like it
     * @param wanted value of the figure
     */
    public Outcome to(
            OrbitFigure figure,
            Family family,
            double low,
            double high,
            double start,
            SteadyState.Found known,
            double wanted) {
        OrbitSystem system = new OrbitSystem(known.waveforms().equations(), known.site());
        return to(system, figure, family, low, high, start, Followed.of(known), wanted);
    }

    Outcome to(
            OrbitSystem system,
            OrbitFigure figure,
            Family family,
            double low,
            double high,
            double start,
            Followed known,
            double wanted) {
        double difference = DIFFERENCE * (high - low);
        Turning turning = new BorderedTurning(
                system, family, low, high, difference, known.orbit(), figure, wanted, accuracy, watch);
        return new Walk(turning, low, high).from(start);
    }

    /**
     * The same for a figure of several orbits.
     *
     * @param chain the circuits and their figure
     * @param low lower end of the range
     * @param high upper end
     * @param start a position in the range
     * @param known the steady states there, in the chain's order
     * @param wanted value of the figure
     */
    public Outcome to(
            Chain chain, double low, double high, double start, List<SteadyState.Found> known, double wanted) {
        if (known.size() != chain.links().size()) {
            throw new IllegalArgumentException(
                    known.size() + " orbits for " + chain.links().size() + " links");
        }
        double difference = DIFFERENCE * (high - low);
        return new Walk(new ChainTurning(chain, low, high, difference, known, wanted, accuracy, watch), low, high)
                .from(start);
    }

    /** The way of one adjustment. */
    private final class Walk {
        private final Turning turning;
        private final double low;
        private final double high;
        private double position;

        Walk(Turning turning, double low, double high) {
            this.turning = turning;
            this.low = low;
            this.high = high;
        }

        Outcome from(double start) {
            try {
                return walk(start);
            } catch (SingularMatrix | ArithmeticException noStep) {
                return new Lost(SteadyState.Reason.LOST);
            }
        }

        private Outcome walk(double start) {
            position = start;
            double longest = LONGEST_STEP * (high - low);
            Optional<OutOfRange> atStop = Optional.empty();
            double lastPlace = start, lastStep = 0, lastMiss = 0;
            for (int k = 0; k < MOST_STEPS; k++) {
                watch.check();
                // approached in steps, so that each orbit is near the last
                double miss = turning.wanted() - turning.value(), reach = turning.reach();
                boolean there = Math.abs(miss) <= reach;
                double step =
                        turning.step(position, there ? turning.wanted() : turning.value() + Math.copySign(reach, miss));
                if (!Double.isFinite(step)) return new Lost(SteadyState.Reason.LOST);
                boolean settled = there && Math.abs(step) < SETTLED * (high - low);
                if (!settled && step * lastStep < 0 && miss * lastMiss > 0 && lastPlace != position) {
                    return nearest(lastPlace, position, lastStep > 0);
                }
                lastPlace = position;
                lastStep = step;
                lastMiss = miss;
                double share = Math.min(turning.trusted(), longest / Math.max(longest, Math.abs(step)));
                double aim = position + share * step, next = Math.max(low, Math.min(high, aim));
                if (next == position && next != aim) {
                    // outward from a stop: only from the orbit there does that mean that the value lies beyond
                    if (atStop.isPresent() && atStop.get().stop() == position) return atStop.get();
                    Turning.Settled stop = turning.settle(position);
                    if (stop.states().isEmpty()) return new Lost(stop.reason());
                    List<SteadyState.Found> states = stop.states().get();
                    if (turning.meets(stop.value())) return new Trimmed(position, states);
                    atStop = Optional.of(new OutOfRange(position, states, stop.value(), turning.words(stop.value())));
                    turning.adopt(states);
                    continue;
                }
                if (next != aim) share = (next - position) / step;
                turning.take(share);
                position = next;
                if (settled && share == 1) {
                    Turning.Settled end = turning.settle(position);
                    if (end.states().isEmpty()) return new Lost(end.reason());
                    if (turning.meets(end.value()))
                        return new Trimmed(position, end.states().get());
                    turning.adopt(end.states().get()); // of a denser mesh, on which the figure is another
                }
            }
            return new Lost(SteadyState.Reason.LOST);
        }

        /**
         * Between two positions from which the steps lead towards each other though the value lies on one side of both: where it comes
         * nearest, by halving.
         *
         * @param rising whether the step at {@code a} leads towards higher positions
         */
        private Outcome nearest(double a, double b, boolean rising) {
            double from = rising ? Math.min(a, b) : Math.max(a, b), to = a + b - from;
            // the orbits stand at `position`; steps that short carry them along
            while (Math.abs(to - from) > SETTLED * (high - low)) {
                watch.check();
                double middle = (from + to) / 2;
                moveTo(middle);
                double step = turning.step(position, turning.wanted());
                if (!Double.isFinite(step)) return new Lost(SteadyState.Reason.LOST);
                if (step > 0 == to > from) from = middle;
                else to = middle;
            }
            moveTo((from + to) / 2);
            Turning.Settled end = turning.settle(position);
            if (end.states().isEmpty()) return new Lost(end.reason());
            if (turning.meets(end.value()))
                return new Trimmed(position, end.states().get());
            return new TurnsBack(position, end.states().get(), end.value(), turning.words(end.value()));
        }

        private void moveTo(double middle) {
            Turning.Settled there = turning.settle(middle);
            there.states().ifPresent(turning::adopt);
            position = middle;
        }
    }
}
