package galena.build.folder;

import galena.build.form.Filled;
import galena.build.quantity.Quantity;
import galena.build.quantity.Range;
import galena.build.source.Place;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A part as the build file has it.
 *
 * @param name the builder's name for it
 * @param kind told by its key
 * @param values everything written about it, checked
 */
public record PartEntry(String name, PartKind kind, Filled values) {
    /** Where an adjustment stands that nobody has set. */
    public static final double MIDDLE = 0.5;

    /** Pin to net, in the order of the engine's part. */
    public Map<String, String> pins() {
        Map<String, String> pins = new LinkedHashMap<>();
        for (String pin : kind.pins()) pins.put(pin, pin(pin));
        return pins;
    }

    /** The net that a pin is joined to. */
    public String pin(String pin) {
        return values.text(pin).orElseThrow(() -> new IllegalArgumentException(name + " has no pin " + pin));
    }

    /** The main value where it is a single quantity. */
    public Optional<Quantity> value() {
        return values.quantity(kind.key());
    }

    /** The main value where it is a range. */
    public Optional<Range> range() {
        return values.range(kind.key());
    }

    /** From where to where a winding slides along its rod, from the rod's middle (m); empty where it stands still. */
    public Optional<Range> slide() {
        return values.range("slide");
    }

    /** The type number of a device that is named by it. */
    public Optional<String> type() {
        return kind.isProgramme() ? Optional.empty() : values.text(kind.key());
    }

    /** The parameters of a device that is given by them. */
    public Optional<Filled> parameters() {
        return values.group(kind.key());
    }

    /** The main value as written: "5..60 pF", "BF256B"; "own parameters" for a device given by them. */
    public String label() {
        return value().map(Quantity::text)
                .or(() -> range().map(Range::text))
                .or(() -> values.text(kind.key()))
                .orElse("own parameters");
    }

    /** Whether it has a position to set: a trimmer, a preset, a coil with a slug or one that slides. */
    public boolean isAdjustable() {
        return kind == PartKind.PRESET || range().isPresent() || slide().isPresent();
    }

    /** Position 0..1 as set in the file, or the middle; empty for parts without one. */
    public OptionalDouble position() {
        return isAdjustable() ? OptionalDouble.of(values.si("set", MIDDLE)) : OptionalDouble.empty();
    }

    /** As a fraction; the usual one of its kind where none is written. */
    public double tolerance() {
        return values.si("tolerance", kind.usualTolerance());
    }

    /** Per kelvin; the usual one of its kind where none is written. */
    public double temperatureCoefficient() {
        return values.si("tempco", kind.usualTemperatureCoefficient());
    }

    /** Where its keys begin in the file. */
    public Place place() {
        return values.place();
    }

    /** Its path in the file: {@code parts.Ct}. */
    public String path() {
        return values.path();
    }
}
