package galena.build.guard;

import galena.build.folder.Supply;
import galena.build.predict.Running;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.part.Battery;
import galena.engine.part.Part;
import galena.engine.steady.OrbitDerivatives;
import galena.engine.steady.OrbitDerivatives.Derivative;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What one part does to a running build: the exact derivatives by each of its values, one solve each, so that it can be asked whenever
 * a part is looked at. Everything about every part at once: {@link Guard}.
 */
public final class PartMoves {
    private static final double PERCENT = 0.01;
    private static final double STEP = 1e-4;
    private static final double TRAVEL_STEP = 1e-3;
    private static final double KELVIN_STEP = 0.5;
    private static final double VOLT_STEP = 0.05;
    private static final int LAST_HARMONIC = 5;
    private static final double DECIBELS = 20 / Math.log(10);

    private final Running running;
    private final OrbitDerivatives orbit;
    private final Waveforms waveforms;
    private final int output;

    public PartMoves(Running running) {
        this.running = running;
        orbit = new OrbitDerivatives(running.state());
        waveforms = running.state().waveforms();
        output = waveforms.equations().current(running.outputBranch()).orElseThrow();
    }

    /**
     * What a small change of one value does, everything else staying.
     *
     * @param what is changed: "Lt inductance", "travel"
     * @param change by how much, in words: "+1 %"
     * @param carrier Hz
     * @param output dB of the carrier current in the output coil
     * @param harmonics dB of that current's harmonics 2 to 5, each against the fundamental
     * @param supply A of supply current
     */
    public record Move(
            String what, String change, double carrier, double output, List<Double> harmonics, double supply) {
        public Move {
            harmonics = List.copyOf(harmonics);
        }
    }

    /** By one percent of each of a part's values; device parameters included. */
    public List<Move> of(String part) {
        Circuit circuit = running.circuit();
        List<Move> moves = new ArrayList<>();
        for (Scaled scaled : Scaled.all(circuit)) {
            if (!scaled.at(1).name().equals(part)) continue;
            Part below = scaled.at(1 - STEP), above = scaled.at(1 + STEP);
            moves.add(move(scaled.value(), "+1 %", circuit.with(below), circuit.with(above), STEP, PERCENT));
        }
        return moves;
    }

    /** By one percent of an adjustment's travel. */
    public Move travel(String adjustment) {
        double position = running.position(adjustment);
        double low = Math.max(0, position - TRAVEL_STEP), high = Math.min(1, position + TRAVEL_STEP);
        return move(
                "travel",
                "+1 % of travel",
                running.turned(adjustment, low),
                running.turned(adjustment, high),
                (high - low) / 2,
                PERCENT);
    }

    /** By ten kelvin, all parts together. */
    public Move heat() {
        double celsius = running.circuit().temperature();
        return move(
                "temperature",
                "+10 °C",
                running.circuit().atTemperature(celsius - KELVIN_STEP),
                running.circuit().atTemperature(celsius + KELVIN_STEP),
                KELVIN_STEP,
                10);
    }

    /** By one volt of the supply; empty for a build without one. */
    public Optional<Move> supply() {
        Circuit circuit = running.circuit();
        if (!(circuit.part(Supply.NAME).orElse(null) instanceof Battery b)) return Optional.empty();
        return Optional.of(move(
                "supply",
                "+1 V",
                circuit.with(raised(b, -VOLT_STEP)),
                circuit.with(raised(b, VOLT_STEP)),
                VOLT_STEP,
                1));
    }

    private static Battery raised(Battery b, double volts) {
        return new Battery(b.name(), b.plus(), b.minus(), b.emf() + volts, b.internalResistance());
    }

    private Move move(String what, String change, Circuit below, Circuit above, double delta, double size) {
        Derivative by = orbit.between(Equations.of(below), Equations.of(above), delta);
        double carrier = relative(by, 1);
        List<Double> harmonics = new ArrayList<>();
        for (int h = 2; h <= LAST_HARMONIC; h++) harmonics.add(size * DECIBELS * (relative(by, h) - carrier));
        double drawn = waveforms.equations().current(Supply.NAME).map(by::mean).orElse(0.0);
        return new Move(what, change, size * by.frequency(), size * DECIBELS * carrier, harmonics, -size * drawn);
    }

    private double relative(Derivative by, int h) {
        double level = waveforms.amplitude(output, 0, h);
        return level > 0 ? by.amplitude(output, 0, h) / level : 0;
    }
}
