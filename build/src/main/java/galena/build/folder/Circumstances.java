package galena.build.folder;

import static galena.build.form.Field.optional;

import galena.build.form.Field;
import galena.build.form.Filled;
import galena.build.form.NamedQuantities;
import galena.build.form.Quantities;
import galena.build.form.Text;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Under what a reading was taken: what has to be laid over a build before its prediction can be held against the reading.
 *
 * @param instrument in words
 * @param probe in words, "10x"
 * @param set adjustments and their positions, 0 to 1
 * @param temperature of the build
 * @param supply voltage at the build's terminals
 * @param audio peak of the tone at the audio source; modulation says nothing without it
 * @param added capacitance put across the test point for this reading, F
 * @param capture name of the file that the reading was taken from
 */
public record Circumstances(
        Optional<String> instrument,
        Optional<String> probe,
        Map<String, Quantity> set,
        Optional<Quantity> temperature,
        Optional<Quantity> supply,
        Optional<Quantity> audio,
        Optional<Quantity> added,
        Optional<String> capture) {
    /** Nothing was noted. */
    public static final Circumstances UNKNOWN = new Circumstances(
            Optional.empty(),
            Optional.empty(),
            Map.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());

    /** Of a reading for which nothing was put across the point. */
    public Circumstances(
            Optional<String> instrument,
            Optional<String> probe,
            Map<String, Quantity> set,
            Optional<Quantity> temperature,
            Optional<Quantity> supply,
            Optional<Quantity> audio,
            Optional<String> capture) {
        this(instrument, probe, set, temperature, supply, audio, Optional.empty(), capture);
    }

    public Circumstances {
        set = Collections.unmodifiableMap(new LinkedHashMap<>(set));
    }

    /** The same, of another capture. */
    public Circumstances of(String file) {
        return new Circumstances(instrument, probe, set, temperature, supply, audio, added, Optional.of(file));
    }

    static Field[] fields() {
        return new Field[] {
            optional("instrument", Text.ANY, "What it was read with."),
            optional("probe", Text.ANY, "What touched the circuit, as 10x."),
            optional(
                    "set",
                    new NamedQuantities(Unit.FRACTION, 0, 1),
                    "Adjustments as they stood, each with its position, 0 % to 100 %."),
            optional("temperature", Quantities.one(Unit.KELVIN, 223.15, 373.15), "The temperature of the build."),
            optional("supply", Quantities.one(Unit.VOLT, 0, 1e3), "The supply voltage while it was read."),
            optional("audio", Quantities.one(Unit.VOLT, 0, 100), "The peak of the tone at the audio source."),
            optional(
                    "added",
                    Quantities.one(Unit.FARAD, 1e-15, 1e-6),
                    "A capacitor put across the test point for this reading alone."),
            optional("capture", Text.ANY, "The file that it was taken from.")
        };
    }

    static Circumstances of(Filled filled) {
        return new Circumstances(
                filled.text("instrument"),
                filled.text("probe"),
                filled.quantities("set"),
                filled.quantity("temperature"),
                filled.quantity("supply"),
                filled.quantity("audio"),
                filled.quantity("added"),
                filled.text("capture"));
    }
}
