package galena.build.predict;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.Overlay;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.engine.equations.Equations;
import galena.engine.part.Coil;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitFigure;
import galena.engine.steady.Retrim;
import galena.engine.steady.SteadyState;
import java.util.List;
import java.util.Optional;

/** Where an adjustment has to stand for a wanted figure. Typical parts; the position is found together with the oscillation there. */
public final class Trim {
    private static final String BASIS = "predicted, typical parts, the solution's own error";

    private final Running running;
    private final String part;
    private final Wanted wanted;
    private final Accuracy accuracy;
    private final Progress progress;

    private Trim(Running running, String part, Wanted wanted, Accuracy accuracy, Progress progress) {
        this.running = running;
        this.part = part;
        this.wanted = wanted;
        this.accuracy = accuracy;
        this.progress = progress;
    }

    /** What a figure is to be. */
    public sealed interface Wanted {
        /** In the unit of {@link #unit}. */
        double value();

        Unit unit();

        /** As in "a carrier of 999 kHz". */
        String name();
    }

    /** The carrier, Hz. */
    public record Carrier(double value) implements Wanted {
        @Override
        public Unit unit() {
            return Unit.HERTZ;
        }

        @Override
        public String name() {
            return "carrier";
        }
    }

    /** The negative peak at the audio's level on the static curve, a fraction. */
    public record Depth(double value) implements Wanted {
        @Override
        public Unit unit() {
            return Unit.FRACTION;
        }

        @Override
        public String name() {
            return "negative peak";
        }
    }

    /**
     * The carrier's peak voltage across a coil, or of a net against ground, V.
     *
     * @param where the coil's name or the net's
     */
    public record Voltage(String where, double value) implements Wanted {
        @Override
        public Unit unit() {
            return Unit.VOLT;
        }

        @Override
        public String name() {
            return "voltage at " + where;
        }
    }

    /** The carrier's peak current in a coil, A. */
    public record Current(String where, double value) implements Wanted {
        @Override
        public Unit unit() {
            return Unit.AMPERE;
        }

        @Override
        public String name() {
            return "current in " + where;
        }
    }

    /** How it came out. */
    public enum End {
        MET("met"),
        OUT_OF_RANGE("out of range: the travel ends before"),
        TURNS_BACK("not reached: it is largest or smallest within the travel"),
        LOST("the oscillation was lost on the way");

        private final String words;

        End(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * The answer.
     *
     * @param part the adjustment
     * @param before where it stands, 0 to 1
     * @param wanted figure
     * @param end how it came out
     * @param position where the wanted is met, or where it comes nearest; empty when the oscillation was lost
     * @param found the figure there, or why there is none
     * @param carrier there, or why there is none
     */
    public record Answer(
            String part,
            double before,
            Wanted wanted,
            End end,
            Optional<Double> position,
            Figure found,
            Figure carrier) {}

    /** What was asked for is not in the build; the message says what is. */
    public static final class NotThere extends Exception {
        private static final long serialVersionUID = 1;

        NotThere(String message) {
            super(message);
        }
    }

    /**
     * @param build as read
     * @param overlay laid over it; the adjustment starts where this sets it
     * @param part one of the build's adjustments
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws Running.NotRunning when nothing oscillates where the adjustment starts
     * @throws NotThere when the build has no such coil or net, or no audio to modulate with
     */
    public static Answer of(
            Build build, Overlay overlay, String part, Wanted wanted, Accuracy accuracy, Progress progress)
            throws BadInputException, NoOperatingPoint, Running.NotRunning, NotThere {
        if (!build.adjustments().contains(part)) throw new IllegalArgumentException(part + " is no adjustment");
        Running running = Running.of(build, overlay, accuracy, progress);
        progress.at(0.3, "turning " + part);
        return new Trim(running, part, wanted, accuracy, progress).answer();
    }

    private Answer answer() throws NotThere {
        Retrim.Outcome outcome = wanted instanceof Depth ? depth() : single();
        double before = running.position(part);
        if (outcome instanceof Retrim.Trimmed there) {
            return answer(before, End.MET, there.parameter(), there.states(), wanted.value());
        }
        if (outcome instanceof Retrim.OutOfRange stop) {
            return answer(before, End.OUT_OF_RANGE, stop.stop(), stop.states(), stop.value());
        }
        if (outcome instanceof Retrim.TurnsBack peak) {
            return answer(before, End.TURNS_BACK, peak.parameter(), peak.states(), peak.value());
        }
        String why = "the oscillation was lost on the way";
        return new Answer(
                part,
                before,
                wanted,
                End.LOST,
                Optional.empty(),
                new Figure.Missing(wanted.name(), why),
                new Figure.Missing("carrier", why));
    }

    private Answer answer(double before, End end, double position, List<SteadyState.Found> states, double value) {
        double carrier = states.get(0).waveforms().frequency(), slip = carrier * accuracy.frequency();
        double share = wanted instanceof Carrier ? accuracy.frequency() : accuracy.harmonicDecibels() / 8;
        double grain = share * (wanted instanceof Depth ? 1 : Math.abs(value));
        return new Answer(
                part,
                before,
                wanted,
                end,
                Optional.of(position),
                new Figure.Known(
                        value, wanted.unit(), value - 2 * grain, value + 2 * grain, BASIS, wanted.name(), part),
                new Figure.Known(carrier, Unit.HERTZ, carrier - slip, carrier + slip, BASIS, "carrier", part));
    }

    private Retrim.Outcome depth() throws NotThere {
        String source =
                running.audioSource().orElseThrow(() -> new NotThere("the build has no audio source to modulate with"));
        double level = running.audioLevel();
        if (!(level > 0)) {
            throw new NotThere("the audio source has no level: give it one, or the intent a programme with a level");
        }
        return DepthChain.turn(running, part, source, level, wanted.value(), accuracy, progress)
                .orElse(new Retrim.Lost(SteadyState.Reason.LOST));
    }

    private Retrim.Outcome single() throws NotThere {
        return new Retrim(accuracy, progress.watch())
                .to(
                        figure(),
                        position -> Equations.of(running.turned(part, position)),
                        0,
                        1,
                        running.position(part),
                        running.state(),
                        wanted.value());
    }

    private OrbitFigure figure() throws NotThere {
        Equations equations = running.state().waveforms().equations();
        if (wanted instanceof Voltage voltage) {
            if (running.circuit().part(voltage.where()).orElse(null) instanceof Coil coil) {
                return OrbitFigure.amplitude(
                        equations.net(coil.nets().get(0)),
                        equations.net(coil.nets().get(1)),
                        1);
            }
            if (running.circuit().nets().contains(voltage.where())) {
                return OrbitFigure.amplitude(equations.net(voltage.where()), 0, 1);
            }
            throw new NotThere("the build has no coil and no net named \"" + voltage.where() + '"');
        }
        if (wanted instanceof Current current) {
            Optional<Integer> unknown = running.circuit().part(current.where()).orElse(null) instanceof Coil
                    ? equations.current(current.where())
                    : Optional.empty();
            return OrbitFigure.amplitude(
                    unknown.orElseThrow(() -> new NotThere("the build has no coil named \"" + current.where() + '"')),
                    0,
                    1);
        }
        return OrbitFigure.frequency();
    }
}
