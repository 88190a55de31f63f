package galena.bench.capture;

import java.util.List;
import java.util.Map;

/**
 * Frequency against time, with what was logged beside it.
 *
 * @param seconds from the first reading
 * @param hertz as many
 * @param others further columns by name, as long; a reading that was not there repeats the one before
 */
public record FrequencyLog(List<Double> seconds, List<Double> hertz, Map<String, List<Double>> others)
        implements Content {
    public FrequencyLog {
        seconds = List.copyOf(seconds);
        hertz = List.copyOf(hertz);
        others = Map.copyOf(others);
    }
}
