package galena.build.fault;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * What a builder reads of one copy, faulty or not, with otherwise typical parts.
 *
 * @param outcome how the copy behaves
 * @param remark why it could not be solved; else empty
 * @param values of the readings it has, in the unit of each; no carrier where nothing oscillates, nothing where it is unsolved
 */
public record Symptoms(Outcome outcome, String remark, Map<Reading, Double> values) {
    /** How a copy behaves. */
    public enum Outcome {
        /** It oscillates steadily. */
        RUNS,
        /** It stands at rest. */
        SILENT,
        /** Nothing can be said: no rest or no steady oscillation was found, although it starts. */
        UNSOLVED
    }

    public Symptoms {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /** Empty where there is none to be read. */
    public OptionalDouble value(Reading reading) {
        Double value = values.get(reading);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }
}
