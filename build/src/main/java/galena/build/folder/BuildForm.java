package galena.build.folder;

import static galena.build.form.Field.needed;
import static galena.build.form.Field.optional;

import galena.build.form.Choice;
import galena.build.form.Field;
import galena.build.form.Form;
import galena.build.form.Group;
import galena.build.form.ListOf;
import galena.build.form.Named;
import galena.build.form.Quantities;
import galena.build.form.Text;
import galena.build.form.WordOr;
import galena.build.form.Words;
import galena.build.quantity.Unit;
import java.util.List;

/** The keys of {@code build.yaml}. */
final class BuildForm {
    /** The ends of a battery, unless the supply names others. */
    static final String RAIL = "rail";

    /** The net that voltages are measured from. */
    static final String GROUND = "ground";

    static final Text BATTERY = new Text(
            "(?:\\d{1,3}\\s*[x×*]\\s*)?[A-Za-z0-9][A-Za-z0-9 _\\-]{0,23}",
            "A battery is written as cells, size and chemistry: 6xAA-NiMH, or 9V-alkaline.");

    private static final Field PLUS = optional("plus", Text.NAME, "The net at the positive end is rail if left out.");
    private static final Field MINUS =
            optional("minus", Text.NAME, "The net at the negative end is ground if left out.");

    static final Form PROGRAMME = Form.of(
            "a programme",
            needed(
                    "level",
                    Quantities.one(Unit.VOLT, 1e-6, 100),
                    "The level is the peak voltage that the source delivers."),
            needed(
                    "band",
                    Quantities.range(Unit.HERTZ, 1, 1e5),
                    "The band runs from the lowest to the highest audio frequency."));

    static final Form INTENT = Form.of(
            "an intent",
            optional(
                    "carrier", Quantities.one(Unit.HERTZ, 1e4, 3e7), "The carrier is the frequency wanted on the air."),
            optional("rules", Text.NAME, "The rules are those of the region, by name."),
            optional("distance", Quantities.one(Unit.METRE, 0.1, 1e4), "The distance is how far it shall be heard."),
            optional(
                    "modulation",
                    Quantities.one(Unit.FRACTION, 0, 1),
                    "The modulation is the depth wanted, 0 to 100 %."),
            optional("programme", new Group(PROGRAMME), "The programme has a level and a band."),
            optional(
                    "runtime", Quantities.one(Unit.SECOND, 60, 1e9), "The runtime is how long one battery shall last."),
            optional(
                    "harmonics",
                    Quantities.one(Unit.DECIBEL, -120, 0),
                    "The harmonics limit is the strongest one allowed, below the carrier: -40 dBc."),
            optional(
                    "raster",
                    Quantities.one(Unit.HERTZ, 100, 1e5),
                    "The raster is the spacing of the region's channels, 9 kHz or 10 kHz."));

    static final Form BATTERY_SUPPLY = Form.of(
            "a battery",
            needed("battery", BATTERY, "A supply takes a battery, or a voltage with its resistance."),
            optional("charge", Quantities.one(Unit.FRACTION, 0, 1), "The state of charge is 100 % if left out."),
            PLUS,
            MINUS);

    static final Form RIPPLE = Form.of(
            "a ripple",
            needed("mains", Quantities.one(Unit.HERTZ, 10, 1000), "The mains frequency is 50 Hz or 60 Hz."),
            optional(
                    "once",
                    Quantities.one(Unit.VOLT, 0, 10),
                    "The peak of the ripple at the mains frequency is none if left out."),
            optional(
                    "twice",
                    Quantities.one(Unit.VOLT, 0, 10),
                    "The peak of the ripple at twice the mains frequency is none if left out."));

    static final Form VOLTAGE_SUPPLY = Form.of(
            "a supply of a given voltage",
            needed(
                    "voltage",
                    Quantities.one(Unit.VOLT, 0.1, 1e3),
                    "A supply takes a battery, or a voltage with its resistance."),
            needed(
                    "resistance",
                    Quantities.one(Unit.OHM, 0, 1e6),
                    "The resistance is what the supply has inside; 0 Ω for an ideal one."),
            optional(
                    "capacity",
                    Quantities.one(Unit.COULOMB, 1, 1e9),
                    "The capacity tells how long it lasts: 2000 mAh."),
            optional(
                    "ripple",
                    new Group(RIPPLE),
                    "The ripple is what a mains supply leaves: {mains: 50 Hz, twice: 10 mV}."),
            PLUS,
            MINUS);

    static final Form STRAY = Form.of(
            "a stray",
            needed("from", Text.NAME, "A stray lies between two nets, from and to."),
            needed("to", Text.NAME, "A stray lies between two nets, from and to."),
            needed("capacitance", Quantities.one(Unit.FARAD, 1e-18, 1e-6), "A stray takes a capacitance."));

    /** Nearer to 1 no two windings come; at 1 the equations have no solution. */
    static final double CLOSEST = 0.99999;

    static final Form COUPLING = Form.of(
            "a coupling",
            needed("between", new ListOf(Text.NAME, 2, 2), "A coupling names two coils: between: [Lt, La]."),
            needed(
                    "k",
                    Quantities.one(Unit.NUMBER, -CLOSEST, CLOSEST),
                    "k lies between -1 and 1, the ends excluded: no two windings share all flux."));

    static final Form PROBE = Form.of(
            "a probe",
            needed(
                    "resistance",
                    Quantities.one(Unit.OHM, 1, 1e12),
                    "The resistance is that of probe and instrument together."),
            needed("capacitance", Quantities.one(Unit.FARAD, 0, 1e-6), "The capacitance is that at the tip."));

    static final Form POINT = Form.of(
            "a test point",
            needed("at", Text.NAME, "A test point is at a net."),
            optional("to", Text.NAME, "The other end of the reading is ground if left out."),
            optional(
                    "probe",
                    new WordOr(new Words(Probe.words()), new Group(PROBE)),
                    "The probe is " + String.join(", ", Probe.words()) + ", or its resistance and capacitance."),
            optional("note", Text.ANY, "A note is for readers."));

    static final Form BUILD = Form.of(
            "a build",
            Field.version(),
            optional("name", Text.ANY, "The name is the builder's own."),
            optional("note", Text.ANY, "A note is for readers."),
            optional("intent", new Group(INTENT), "The intent says what the build is for."),
            optional(
                    "supply",
                    new Choice("supply", List.of(BATTERY_SUPPLY, VOLTAGE_SUPPLY)),
                    "A supply takes a battery, or a voltage with its resistance."),
            needed("parts", new Named("part", PartForms.all()), "The parts stand under their names."),
            optional(
                    "strays",
                    ListOf.any(new Group(STRAY)),
                    "Strays are a list of small capacitances that nobody fitted."),
            optional("couplings", ListOf.any(new Group(COUPLING)), "Couplings are a list of pairs of coils."),
            optional("points", Named.of(POINT), "Test points stand under their names."));

    private BuildForm() {}
}
