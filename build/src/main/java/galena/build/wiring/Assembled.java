package galena.build.wiring;

import galena.build.source.Problem;
import galena.engine.circuit.Circuit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A circuit made from a build.
 *
 * @param circuit ready to be solved, at the overlay's temperature
 * @param origins engine part to the path in the build file that it comes from: {@code Q1} to {@code parts.Q1}; parts that
 *     an overlay added have none
 * @param warnings unusual structure that can be solved all the same
 */
public record Assembled(Circuit circuit, Map<String, String> origins, List<Problem> warnings) {
    public Assembled {
        origins = Collections.unmodifiableMap(new LinkedHashMap<>(origins));
        warnings = List.copyOf(warnings);
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
