package galena.trade.ferrite;

import galena.trade.coil.Former;
import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.List;

/**
 * A ferrite rod with a sleeve to wind on.
 *
 * @param rod the bar
 * @param material its ferrite; the tolerance of its permeability counts
 * @param sleeveDiameter outside of the paper or sleeve under the wire, at least the rod's diameter (m)
 * @param sleeveTolerance ± on it (m)
 * @param position of the winding's middle from the rod's (m)
 * @param pitch from turn to turn (m)
 * @param wire to wind with
 */
public record RodFormer(
        Rod rod,
        Material material,
        double sleeveDiameter,
        double sleeveTolerance,
        double position,
        double pitch,
        Wire wire)
        implements Former {
    public RodFormer {
        OutOfRange.require(
                "sleeve diameter (m)", sleeveDiameter, rod.diameter(), 2.5 * rod.diameter(), "It lies round the rod.");
        OutOfRange.require("tolerance of the sleeve (m)", sleeveTolerance, 0, sleeveDiameter / 4, "Measure it better.");
    }

    /** One whose winding stands in the middle, close wound straight on the rod. */
    public static RodFormer closeWound(Rod rod, Material material, Wire wire) {
        return new RodFormer(rod, material, rod.diameter(), 0, 0, wire.outerDiameter(), wire);
    }

    /** The same on a rod of another permeability, known within a fraction. */
    public RodFormer withMaterial(Material other) {
        return new RodFormer(rod, other, sleeveDiameter, sleeveTolerance, position, pitch, wire);
    }

    @Override
    public RodCoil wind(double turns) {
        return new RodCoil(rod, material, turns, sleeveDiameter + wire.outerDiameter(), pitch, position, wire);
    }

    /** As many as lie on the rod without hanging over its nearer end. */
    @Override
    public double mostTurns() {
        return Math.floor((rod.length() - 2 * Math.abs(position)) / pitch * (1 + 1e-12));
    }

    @Override
    public List<Variation> variations() {
        double mu = material.permeability(), tolerance = material.tolerance();
        double tight = Math.max(rod.diameter(), sleeveDiameter - sleeveTolerance);
        double loose = Math.min(2.5 * rod.diameter(), sleeveDiameter + sleeveTolerance);
        double weakest = Math.max(1.001, mu * (1 - tolerance));
        double strongest = Math.min(Material.MOST_PERMEABLE, mu * (1 + tolerance));
        return List.of(
                new Variation("sleeve diameter", sleeved(tight), sleeved(loose)),
                new Variation(
                        "permeability",
                        withMaterial(material.withPermeability(weakest)),
                        withMaterial(material.withPermeability(strongest))));
    }

    private RodFormer sleeved(double diameter) {
        return new RodFormer(rod, material, diameter, 0, position, pitch, wire);
    }
}
