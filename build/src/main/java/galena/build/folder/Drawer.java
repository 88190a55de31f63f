package galena.build.folder;

import static galena.build.form.Field.optional;

import galena.build.form.Field;
import galena.build.form.Filled;
import galena.build.form.Form;
import galena.build.form.Group;
import galena.build.form.ListOf;
import galena.build.form.Quantities;
import galena.build.form.Text;
import galena.build.quantity.AtFrequency;
import galena.build.quantity.Quantity;
import galena.build.quantity.Range;
import galena.build.quantity.Unit;
import java.util.List;
import java.util.Optional;

/**
 * The parts that the builder has. Everything may be empty.
 *
 * @param resistors values in ohms
 * @param presets tracks in ohms
 * @param capacitors values in farads
 * @param trimmers ranges in farads
 * @param coils wound or bought
 * @param crystals frequencies in hertz
 * @param resonators ceramic ones, frequencies in hertz
 * @param counters what counters and dividers divide by
 * @param devices type numbers
 * @param tubes outer diameters of tubes that a coil may be wound on, m
 * @param rods of ferrite, for aerials
 * @param wires on their reels: "0.3 mm", "AWG 30", "20x0.07 mm"
 */
public record Drawer(
        List<Quantity> resistors,
        List<Quantity> presets,
        List<Quantity> capacitors,
        List<Range> trimmers,
        List<CoilHeld> coils,
        List<Quantity> crystals,
        List<Quantity> resonators,
        List<Quantity> counters,
        List<String> devices,
        List<Quantity> tubes,
        List<Rod> rods,
        List<String> wires) {
    /** An empty drawer, for folders without one. */
    public static final Drawer EMPTY = new Drawer(
            List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of(),
            List.of(), List.of(), List.of());

    /** A coil in the drawer; its Q where it is known. */
    public record CoilHeld(Quantity inductance, Optional<AtFrequency> q) {}

    /**
     * A ferrite rod.
     *
     * @param length m
     * @param diameter m
     * @param permeability of its material, initial
     */
    public record Rod(double length, double diameter, double permeability) {}

    private static final Form ROD = Form.of(
            "a rod",
            Field.needed("rod", Quantities.one(Unit.METRE, 0.02, 1), "A rod takes its length."),
            Field.needed("diameter", Quantities.one(Unit.METRE, 2e-3, 0.05), "A rod takes its diameter."),
            optional(
                    "permeability",
                    Quantities.one(Unit.NUMBER, 1.01, 5000),
                    "The material's permeability is 250 if left out."));

    private static final double USUAL_PERMEABILITY = 250;

    private static final Text WIRE = new Text(
            "\\s*(?:[Aa][Ww][Gg]|[Ss][Ww][Gg]) ?[0-9/]{1,5}\\s*|\\s*(?:\\d{1,4} ?[x×*] ?)?\\d*[.,]?\\d+ ?(?:mm|µm|um)\\s*",
            "Wire is written as 0.3 mm, AWG 30, SWG 28, or 20x0.07 mm for litz.");

    private static final Form COIL = Form.of(
            "a coil",
            Field.needed("coil", Quantities.one(Unit.HENRY, 1e-10, 1e3), "A coil takes an inductance."),
            optional("q", Quantities.atFrequency(Unit.NUMBER, 0.1, 1e6), "The Q holds at one frequency: 85 @ 1 MHz."));

    static final Form FORM = Form.of(
            "a drawer",
            Field.version(),
            optional(
                    "resistors",
                    ListOf.any(Quantities.one(Unit.OHM, 1e-3, 1e12)),
                    "Resistors are a list of resistances."),
            optional("presets", ListOf.any(Quantities.one(Unit.OHM, 1e-3, 1e12)), "Presets are a list of resistances."),
            optional(
                    "capacitors",
                    ListOf.any(Quantities.one(Unit.FARAD, 1e-15, 1)),
                    "Capacitors are a list of capacitances."),
            optional(
                    "trimmers",
                    ListOf.any(Quantities.range(Unit.FARAD, 1e-15, 1e-6)),
                    "Trimmers are a list of ranges."),
            optional("coils", ListOf.any(new Group(COIL)), "Coils are a list, each as {coil: 180 µH, q: 85 @ 1 MHz}."),
            optional(
                    "crystals",
                    ListOf.any(Quantities.one(Unit.HERTZ, 1e3, 1e9)),
                    "Crystals are a list of frequencies."),
            optional(
                    "resonators",
                    ListOf.any(Quantities.one(Unit.HERTZ, 1e3, 1e9)),
                    "Ceramic resonators are a list of frequencies."),
            optional(
                    "counters",
                    ListOf.any(Quantities.one(Unit.NUMBER, 2, 10_000)),
                    "Counters are a list of the whole numbers that they can divide by."),
            optional("devices", ListOf.any(Text.ANY), "Devices are a list of type numbers."),
            optional(
                    "tubes",
                    ListOf.any(Quantities.one(Unit.METRE, 2e-3, 0.3)),
                    "Tubes to wind coils on are a list of outer diameters."),
            optional(
                    "rods",
                    ListOf.any(new Group(ROD)),
                    "Ferrite rods are a list, each as {rod: 140 mm, diameter: 10 mm, permeability: 250}."),
            optional("wires", ListOf.any(WIRE), "Wires are a list: 0.3 mm, AWG 30, or 20x0.07 mm for litz."));

    static Drawer of(Filled filled) {
        return new Drawer(
                filled.list("resistors", Quantity.class),
                filled.list("presets", Quantity.class),
                filled.list("capacitors", Quantity.class),
                filled.list("trimmers", Range.class),
                filled.list("coils", Filled.class).stream()
                        .map(c -> new CoilHeld(c.quantity("coil").orElseThrow(), c.atFrequency("q")))
                        .toList(),
                filled.list("crystals", Quantity.class),
                filled.list("resonators", Quantity.class),
                filled.list("counters", Quantity.class),
                filled.list("devices", String.class),
                filled.list("tubes", Quantity.class),
                filled.list("rods", Filled.class).stream()
                        .map(r -> new Rod(r.si("rod"), r.si("diameter"), r.si("permeability", USUAL_PERMEABILITY)))
                        .toList(),
                filled.list("wires", String.class));
    }
}
