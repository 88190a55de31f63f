package galena.build.readings;

import galena.build.quantity.Unit;
import galena.build.wiring.Bend;
import java.util.List;
import java.util.Optional;

/**
 * One number of what is unknown, standard normal before anything is read.
 *
 * @param key by which a calibration calls it: "Lt inductance", "capacitance added from drain to ground"
 * @param shown what is shown of it, in words: "Q1 pinch-off"
 * @param unit of what is shown
 * @param part the engine's part; empty for circumstances
 * @param between two nets, where it is capacitance that nobody drew
 * @param kind of unknown
 * @param bend of the value that readings are about straight in, along the scale
 */
public record Latent(
        String key, String shown, Unit unit, String part, Optional<List<String>> between, Kind kind, Bend bend) {
    /** What sort of thing it is. */
    public enum Kind {
        /** The value of a part that was fitted. */
        PART,
        /** A device's own number. */
        DEVICE,
        /** A stray or a stray coupling that the build names. */
        STRAY,
        /** Capacitance that nobody drew. */
        ADDED,
        /** How a reading was taken: it is no property of the build and is never kept. */
        CIRCUMSTANCE
    }
}
