package galena.build.depth;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The deepest clean modulation of a build.
 *
 * @param name of the build
 * @param source of the audio
 * @param loaded the resistor that may be changed, or empty
 * @param limit of the envelope's distortion, a fraction
 * @param settings every setting that was tried, deepest first; the first is the answer
 * @param binding what keeps it from going deeper, in words
 * @param available audio level that the build's programme gives, V; 0 when none is named
 * @param notes what a builder should know besides
 */
public record Deepened(
        String name,
        String source,
        String loaded,
        double limit,
        List<Setting> settings,
        String binding,
        double available,
        List<String> notes) {
    public Deepened {
        settings = List.copyOf(settings);
        notes = List.copyOf(notes);
    }

    /**
     * One position of the bias presets, and one load.
     *
     * @param presets position by name, 0 to 1; empty where the build has no bias preset
     * @param load resistance of the part that may be changed, Ω; empty where it is as written
     * @param level audio that every condition bears within the limit, peak, V
     * @param depth with it in the shallowest condition, the smaller of its two peaks, a fraction
     * @param binds the condition that sets the level
     * @param conditions each of them
     */
    public record Setting(
            Map<String, Double> presets,
            OptionalDouble load,
            double level,
            double depth,
            String binds,
            List<Condition> conditions) {
        public Setting {
            presets = Map.copyOf(presets);
            conditions = List.copyOf(conditions);
        }
    }

    /**
     * One supply and temperature.
     *
     * @param name "as set", "flat battery", "−10 °C"
     * @param most level up to which it is clean, V; sought for the deepest setting alone
     * @param depth at the setting's level, a fraction
     * @param distortion there, a fraction
     * @param swing there, Hz
     * @param suffers what ends it: the limit, or what else
     * @param crestGives true where the crest yields before the trough at its most
     */
    public record Condition(
            String name,
            OptionalDouble most,
            double depth,
            double distortion,
            double swing,
            String suffers,
            boolean crestGives) {}
}
