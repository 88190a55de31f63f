package galena.build.wiring;

import galena.build.source.Problem;
import galena.engine.circuit.Circuit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A circuit made from a build.
 *
 * @param circuit ready to be solved, at the overlay's temperature
 * @param base the same before a calibration moved its unknowns; equal to the circuit where there is none
 * @param knowledge of what is unknown of the base
 * @param origins engine part to the path in the build file that it comes from: {@code Q1} to {@code parts.Q1}; parts that
 *     an overlay added have none
 * @param warnings unusual structure that can be solved all the same
 */
public record Assembled(
        Circuit circuit, Circuit base, Knowledge knowledge, Map<String, String> origins, List<Problem> warnings) {
    public Assembled {
        origins = Collections.unmodifiableMap(new LinkedHashMap<>(origins));
        warnings = List.copyOf(warnings);
    }

    /** Of which nothing was read and nothing is told of what is unknown. */
    public Assembled(Circuit circuit, Map<String, String> origins, List<Problem> warnings) {
        this(circuit, circuit, Knowledge.before(List.of()), origins, warnings);
    }

    /** With the same change to the circuit and its base. */
    public Assembled changed(UnaryOperator<Circuit> change) {
        return new Assembled(change.apply(circuit), change.apply(base), knowledge, origins, warnings);
    }

    /** The circuit of numbers drawn evenly from the unit cube, placed by what is known. */
    public Circuit drawn(double[] u) {
        return Unknowns.drawn(knowledge.unknowns(), base, knowledge.placed(u));
    }

    /** The typical circuit moved along one direction of what is known by so many standard deviations. */
    public Circuit along(int direction, double deviations) {
        return Unknowns.drawn(knowledge.unknowns(), base, knowledge.along(direction, deviations));
    }

    /** Where an engine part comes from. */
    public Optional<String> origin(String enginePart) {
        return Optional.ofNullable(origins.get(enginePart));
    }

    /** The engine parts that one entry of the build became, the entry's own name first. */
    public List<String> enginePartsOf(String path) {
        return origins.entrySet().stream()
                .filter(entry -> entry.getValue().equals(path))
                .map(Map.Entry::getKey)
                .toList();
    }
}
