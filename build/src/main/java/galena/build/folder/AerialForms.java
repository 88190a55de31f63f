package galena.build.folder;

import static galena.build.form.Field.needed;
import static galena.build.form.Field.optional;

import galena.build.form.Field;
import galena.build.form.Quantities;
import galena.build.form.Type;
import galena.build.quantity.Unit;
import java.util.List;

/** What parts that radiate say beside their electrical values: size, and the lengths that rules ask for. */
final class AerialForms {
    private static final Type SIZE = Quantities.one(Unit.METRE, 1e-4, 10);
    private static final Type LEAD = Quantities.one(Unit.METRE, 0, 1000);
    /** Up to it the field is reckoned from a hand's breadth off (m). */
    private static final double LONGEST_WIRE = 6;

    private static final Field TURNS =
            optional("turns", Quantities.one(Unit.NUMBER, 0.25, 1e5), "The turns are a number.");
    private static final Field FEED =
            optional("lead", LEAD, "The lead is what joins the aerial to its stage; 0 m where there is none.");
    private static final Field GROUND_LEAD =
            optional("ground_lead", LEAD, "The ground lead counts where there is one; 0 m where there is none.");

    private AerialForms() {}

    static List<Field> rod() {
        return List.of(
                TURNS,
                optional("rod_length", SIZE, "The length of the rod."),
                optional("rod_diameter", SIZE, "The diameter of the rod."),
                optional("winding_length", SIZE, "The length that the winding takes on the rod."),
                optional(
                        "winding_diameter",
                        SIZE,
                        "The diameter of a turn, to wire centre; the rod's and half a millimetre if left out."),
                optional(
                        "position",
                        Quantities.one(Unit.METRE, -5, 5),
                        "The position is that of the winding's middle from the rod's; 0 mm if left out."),
                optional(
                        "slide",
                        Quantities.range(Unit.METRE, 0, 5),
                        "The slide is from where to where the winding's middle can be moved, from the middle of the rod;"
                                + " the inductance is then that in the middle."),
                optional(
                        "permeability",
                        Quantities.one(Unit.NUMBER, 1.001, 5000),
                        "The permeability is that of the rod's material; told by the inductance if left out."),
                FEED,
                GROUND_LEAD);
    }

    static List<Field> loop() {
        return List.of(
                TURNS,
                optional("diameter", SIZE, "A round loop has a diameter."),
                optional("width", SIZE, "A loop with corners has a width and a height."),
                optional("height", SIZE, "A loop with corners has a width and a height."),
                FEED,
                GROUND_LEAD);
    }

    static List<Field> wire() {
        return List.of(
                needed(
                        PartKind.WIRE.key(),
                        Quantities.one(Unit.METRE, 0.1, LONGEST_WIRE),
                        "A wire takes its length, standing upright."),
                needed("diameter", Quantities.one(Unit.METRE, 1e-5, 0.1), "The diameter is that of the wire."),
                needed(
                        "ground_loss",
                        Quantities.one(Unit.OHM, 0, 1e5),
                        "The ground loss is the resistance of the earth; tens of ohms for a stake or a house's wiring."),
                optional(
                        "base_height",
                        Quantities.one(Unit.METRE, 0, 100),
                        "The height of the lower end over ground is 0 m if left out."),
                optional(
                        "top_capacitance",
                        Quantities.one(Unit.FARAD, 0, 1e-9),
                        "The capacitance of a hat or of a level wire on top is none if left out."),
                FEED,
                GROUND_LEAD);
    }
}
