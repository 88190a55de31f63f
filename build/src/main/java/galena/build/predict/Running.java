package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.quantity.Quantity;
import galena.build.source.BadInputException;
import galena.build.wiring.Assembled;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Coil;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitDerivatives;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A build that oscillates, with its solved carrier: what guard, spread and the others start from.
 *
 * @param build as read
 * @param overlay laid over it
 * @param assembled its circuit, audio at rest, with the origin of every part
 * @param point its operating point
 * @param startup of the mode that became the carrier
 * @param state the carrier
 */
public record Running(
        Build build,
        Overlay overlay,
        Assembled assembled,
        OperatingPoint.Found point,
        Startup startup,
        SteadyState.Found state) {
    private static final double STEP = 1e-3;

    /** Nothing oscillates; the message says why. */
    public static final class NotRunning extends Exception {
        private static final long serialVersionUID = 1;

        public NotRunning(String why) {
            super(why);
        }
    }

    /**
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws NotRunning when nothing oscillates
     */
    public static Running of(Build build, Overlay overlay, Accuracy accuracy, Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning {
        return of(build, overlay, circuit -> circuit, accuracy, progress);
    }

    /**
     * The same with a value changed that no overlay holds.
     *
     * @param change of the build's circuit, in values only
     */
    public static Running of(
            Build build, Overlay overlay, UnaryOperator<Circuit> change, Accuracy accuracy, Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning {
        return solved(Optional.empty(), build, overlay, change, accuracy, progress);
    }

    /**
     * The same followed from a neighbour's carrier, which is several times quicker. A build of another structure, one that does not
     * start by itself, one whose oscillation would sit elsewhere, and one to which the carrier can't be led are solved from cold.
     *
     * @param neighbour the same build in other conditions, or one with other values
     */
    public static Running near(
            Running neighbour,
            Build build,
            Overlay overlay,
            UnaryOperator<Circuit> change,
            Accuracy accuracy,
            Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning {
        return solved(Optional.of(neighbour), build, overlay, change, accuracy, progress);
    }

    private static Running solved(
            Optional<Running> neighbour,
            Build build,
            Overlay overlay,
            UnaryOperator<Circuit> change,
            Accuracy accuracy,
            Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning {
        Assembled all = CircuitOf.build(build, overlay);
        Assembled assembled = all.changed(circuit -> change.apply(Quiet.of(build, circuit)));
        Equations equations = Equations.of(assembled.circuit());
        Optional<Running> like = neighbour.filter(
                n -> equations.pattern().sameAs(n.point().equations().pattern()));
        OperatingPoint rest = like.isPresent()
                ? OperatingPointLadder.near(equations, like.get().point().x())
                : OperatingPointLadder.climb(equations);
        if (rest instanceof OperatingPoint.NotFound none) throw new NoOperatingPoint(none);
        OperatingPoint.Found point = (OperatingPoint.Found) rest;
        Optional<Startup> startup = Startup.readiest(point);
        if (startup.isEmpty()) throw new NotRunning("nothing in this build can oscillate");
        SteadyOscillation steady = new SteadyOscillation(accuracy, progress.watch());
        Startup from = startup.get();
        SteadyState state = like.filter(
                        n -> from.grows() && from.site().equals(n.startup().site()))
                .map(n -> steady.solveNear(equations, n.state()))
                .filter(SteadyState.Found.class::isInstance)
                .orElseGet(() -> steady.solve(point, from));
        if (!(state instanceof SteadyState.Found found)) throw new NotRunning("no steady oscillation: " + state);
        return new Running(build, overlay, assembled, point, from, found);
    }

    public Circuit circuit() {
        return assembled.circuit();
    }

    /** The circuit with one adjustment at another position, 0 to 1. */
    public Circuit turned(String adjustment, double position) {
        return turned(circuit(), adjustment, position);
    }

    /** The same of a circuit made from this one. */
    public Circuit turned(Circuit of, String adjustment, double position) {
        return Turned.to(build, of, adjustment, position);
    }

    /** Where an adjustment stands, 0 to 1. */
    public double position(String adjustment) {
        Double laidOver = overlay.adjustments().get(adjustment);
        return laidOver != null
                ? laidOver
                : build.part(adjustment).orElseThrow().position().orElse(PartEntry.MIDDLE);
    }

    /** The part whose current is the output: the aerial, else the coil with the largest carrier current. */
    public String outputPart() {
        return build.parts().values().stream()
                .filter(p -> p.kind().isAerial())
                .map(PartEntry::name)
                .findFirst()
                .orElseGet(() -> circuit().parts().stream()
                        .filter(Coil.class::isInstance)
                        .map(p -> p.name())
                        .max(Comparator.comparingDouble(
                                name -> state.waveforms().currentAmplitude(name, 1)))
                        .orElse(startup.site().part()));
    }

    /** The engine's part that carries that current: of a wire, the meter at its foot. */
    public String outputBranch() {
        return Output.branch(circuit(), outputPart());
    }

    /** The audio source, if the build has one. */
    public Optional<String> audioSource() {
        return audio().map(PartEntry::name);
    }

    private Optional<PartEntry> audio() {
        return build.parts().values().stream()
                .filter(p -> p.kind().isProgramme())
                .findFirst();
    }

    /** Peak level of the audio source: its own, else the intent's; 0 when neither names one, V. */
    public double audioLevel() {
        return audio().flatMap(PartEntry::value)
                .map(Quantity::value)
                .or(() -> build.intent().programme().map(p -> p.level().value()))
                .orElse(0.0);
    }

    /** The trimmer that moves the carrier most; empty when none does. */
    public String strongestTrimmer() {
        OrbitDerivatives orbit = new OrbitDerivatives(state);
        String best = "";
        double most = 0;
        for (String name : build.adjustments()) {
            if (!(circuit().part(name).orElseThrow() instanceof Trimmer)) continue;
            double position = position(name);
            double low = Math.max(0, position - STEP), high = Math.min(1, position + STEP);
            double slope = orbit.between(
                            Equations.of(turned(name, low)), Equations.of(turned(name, high)), (high - low) / 2)
                    .frequency();
            if (Math.abs(slope) > most) {
                most = Math.abs(slope);
                best = name;
            }
        }
        return best;
    }
}
