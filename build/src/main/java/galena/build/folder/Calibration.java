package galena.build.folder;

import static galena.build.form.Field.needed;
import static galena.build.form.Field.optional;

import galena.build.form.Field;
import galena.build.form.Filled;
import galena.build.form.Form;
import galena.build.form.Group;
import galena.build.form.ListOf;
import galena.build.form.Named;
import galena.build.form.Quantities;
import galena.build.form.Text;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a reconciling of readings found and the builder accepted: laid over the build, never written into it.
 *
 * @param accepted the day
 * @param parts by the name of the part
 * @param strays added to those of the build
 * @param couplings in place of those of the build that join the same coils
 */
public record Calibration(String accepted, Map<String, Correction> parts, List<Stray> strays, List<Coupled> couplings) {
    /**
     * What is different about one part.
     *
     * @param factor on its main value; on both ends of a range
     * @param saturationCurrent of a JFET or a bipolar transistor
     * @param pinchOff of a JFET
     * @param beta of a bipolar transistor
     */
    public record Correction(
            Optional<Quantity> factor,
            Optional<Quantity> saturationCurrent,
            Optional<Quantity> pinchOff,
            Optional<Quantity> beta) {}

    public Calibration {
        parts = Collections.unmodifiableMap(new TreeMap<>(parts)); // in a fixed order: cache keys depend on it
        strays = List.copyOf(strays);
        couplings = List.copyOf(couplings);
    }

    private static final Form CORRECTION = Form.of(
            "a correction",
            optional("factor", Quantities.one(Unit.NUMBER, 0.1, 10), "The factor multiplies the part's value."),
            optional(
                    "saturation_current",
                    Quantities.one(Unit.AMPERE, 1e-30, 10),
                    "The saturation current of this very device."),
            optional("pinch_off", Quantities.one(Unit.VOLT, -50, -0.05), "The pinch-off voltage of this very device."),
            optional("beta", Quantities.one(Unit.NUMBER, 1, 1e5), "The current gain of this very device."));

    static final Form FORM = Form.of(
            "a calibration",
            Field.version(),
            needed("accepted", Text.MOMENT, "The day on which it was accepted."),
            optional("parts", Named.of(CORRECTION), "Corrections stand under the names of their parts."),
            optional("strays", ListOf.any(new Group(BuildForm.STRAY)), "Strays found, added to those of the build."),
            optional("couplings", ListOf.any(new Group(BuildForm.COUPLING)), "Couplings found."));

    static Calibration of(Filled filled) {
        Map<String, Correction> parts = new LinkedHashMap<>();
        filled.named("parts")
                .forEach((name, c) -> parts.put(
                        name,
                        new Correction(
                                c.quantity("factor"),
                                c.quantity("saturation_current"),
                                c.quantity("pinch_off"),
                                c.quantity("beta"))));
        return new Calibration(
                filled.text("accepted").orElseThrow(),
                parts,
                BuildReader.strays(filled),
                BuildReader.couplings(filled));
    }
}
