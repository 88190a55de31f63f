package galena.build.wiring;

import galena.build.folder.PartEntry;
import galena.build.form.Filled;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.Rod;
import galena.trade.ferrite.RodCoil;
import galena.trade.ferrite.RodFormer;
import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.List;

/**
 * A loopstick's rod and winding from the sizes in its entry, for its inductance and its field alike.
 *
 * @param former the rod, of the grade written or, where none is, of the most permeable
 * @param coil the winding where the entry puts it
 */
public record RodWinding(RodFormer former, RodCoil coil) {
    /** What paper and wire add to a rod's diameter where the build says nothing (m); common practice. */
    private static final double USUAL_SLEEVE = 0.5e-3;

    private static final List<String> SIZES = List.of("turns", "rod_length", "rod_diameter", "winding_length");

    /** The sizes that an entry doesn't say. */
    public static List<String> missing(PartEntry loopstick) {
        return SIZES.stream().filter(key -> !loopstick.values().has(key)).toList();
    }

    /**
     * @param loopstick with all its sizes
     * @throws OutOfRange when they lie outside what can be reckoned
     */
    public static RodWinding of(PartEntry loopstick) {
        Filled values = loopstick.values();
        Rod rod = Rod.of(values.si("rod_length"), values.si("rod_diameter"));
        double turns = values.si("turns"), pitch = values.si("winding_length") / turns;
        double diameter = values.si("winding_diameter", rod.diameter() + USUAL_SLEEVE);
        // The wire's own thickness hardly matters for field and inductance: any that fits between the turns and over
        // the
        // rod will do.
        Wire wire = Wire.Solid.bareCopper(0.9 * Math.min(pitch, Math.max(1e-5, diameter - rod.diameter())));
        RodFormer former = new RodFormer(
                rod,
                Material.ofPermeability(values.si("permeability", Material.MOST_PERMEABLE)),
                Math.max(rod.diameter(), diameter - wire.outerDiameter()),
                0,
                position(loopstick),
                pitch,
                0,
                wire);
        return new RodWinding(former, former.wind(turns));
    }

    /** Of the winding's middle from the rod's, as the file has it (m). */
    private static double position(PartEntry loopstick) {
        return loopstick
                .slide()
                .map(way -> way.at(loopstick.position().orElse(PartEntry.MIDDLE)))
                .orElseGet(() -> loopstick.values().si("position", 0));
    }
}
