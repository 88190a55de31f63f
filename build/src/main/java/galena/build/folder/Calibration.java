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
 * @param unknowns what readings left of tolerances and devices, together
 */
public record Calibration(
        String accepted,
        Map<String, Correction> parts,
        List<Stray> strays,
        List<Coupled> couplings,
        List<Known> unknowns) {
    /** Without what readings left of the unknowns. */
    public Calibration(String accepted, Map<String, Correction> parts, List<Stray> strays, List<Coupled> couplings) {
        this(accepted, parts, strays, couplings, List.of());
    }

    /**
     * What readings left of one unknown of the build: the middle of its value, and a row of the triangle whose product with its
     * transpose is the covariance of all. Values are 0 to 1 over a tolerance or over what a data sheet admits, means of the law of
     * added capacitance, standard deviations of an added coupling.
     *
     * @param of its key
     * @param between two nets, for capacitance that nobody drew; else empty
     * @param at its middle
     * @param spread the row, as long as the rows before it are many, plus one
     */
    public record Known(String of, List<String> between, double at, List<Double> spread) {
        public Known {
            between = List.copyOf(between);
            spread = List.copyOf(spread);
        }
    }

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
        unknowns = List.copyOf(unknowns);
        for (int k = 0; k < unknowns.size(); k++) {
            if (unknowns.get(k).spread().size() != k + 1)
                throw new IllegalArgumentException("row " + (k + 1) + " of a calibration has as many spreads");
        }
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

    private static final double FAR = 10;

    private static final Form KNOWN = Form.of(
            "what is known of an unknown",
            needed("of", Text.ANY, "An unknown is called by its name, as reconcile prints it."),
            optional("between", new ListOf(Text.NAME, 2, 2), "Capacitance that nobody drew lies between two nets."),
            needed("at", Quantities.one(Unit.NUMBER, -FAR, FAR), "The middle of what is left."),
            needed(
                    "spread",
                    ListOf.any(Quantities.one(Unit.NUMBER, -FAR, FAR)),
                    "A row of the triangle of spreads: one number more than the row before."));

    static final Form FORM = Form.of(
            "a calibration",
            Field.version(),
            needed("accepted", Text.MOMENT, "The day on which it was accepted."),
            optional("parts", Named.of(CORRECTION), "Corrections stand under the names of their parts."),
            optional("strays", ListOf.any(new Group(BuildForm.STRAY)), "Strays found, added to those of the build."),
            optional("couplings", ListOf.any(new Group(BuildForm.COUPLING)), "Couplings found."),
            optional(
                    "unknowns",
                    ListOf.any(new Group(KNOWN)),
                    "What the readings left of each unknown, in the unit of its law."));

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
                BuildReader.couplings(filled),
                known(filled));
    }

    private static List<Known> known(Filled filled) {
        return filled.list("unknowns", Filled.class).stream()
                .map(k -> new Known(
                        k.text("of").orElseThrow(),
                        k.list("between", String.class),
                        k.quantity("at").orElseThrow().value(),
                        k.list("spread", Quantity.class).stream()
                                .map(Quantity::value)
                                .toList()))
                .toList();
    }
}
