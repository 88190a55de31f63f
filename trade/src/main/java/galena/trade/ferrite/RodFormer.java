package galena.trade.ferrite;

import galena.trade.coil.Former;
import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.ArrayList;
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
 * @param pitchTolerance ± on the pitch, as a fraction
 * @param wire to wind with
 */
public record RodFormer(
        Rod rod,
        Material material,
        double sleeveDiameter,
        double sleeveTolerance,
        double position,
        double pitch,
        double pitchTolerance,
        Wire wire)
        implements Former {
    public RodFormer {
        OutOfRange.require(
                "sleeve diameter (m)", sleeveDiameter, rod.diameter(), 2.5 * rod.diameter(), "It lies round the rod.");
        OutOfRange.require("tolerance of the sleeve (m)", sleeveTolerance, 0, sleeveDiameter / 4, "Measure it better.");
        OutOfRange.require("tolerance of the pitch", pitchTolerance, 0, 0.5, "Give 0.03 for 3 %.");
        OutOfRange.require(
                "pitch (m)", pitch, wire.outerDiameter() * (1 - 1e-9), rod.length(), "At least the wire's own.");
    }

    /** One whose winding stands in the middle, close wound straight on the rod. */
    public static RodFormer closeWound(Rod rod, Material material, Wire wire) {
        return new RodFormer(rod, material, rod.diameter(), 0, 0, wire.outerDiameter(), 0, wire);
    }

    /** The same with the winding in another place (m). */
    public RodFormer at(double newPosition) {
        return new RodFormer(rod, material, sleeveDiameter, sleeveTolerance, newPosition, pitch, pitchTolerance, wire);
    }

    /** The same on a rod of another permeability, known within a fraction. */
    public RodFormer withMaterial(Material other) {
        return new RodFormer(rod, other, sleeveDiameter, sleeveTolerance, position, pitch, pitchTolerance, wire);
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
        double weakest = Math.max(RodProblem.LEAST_PERMEABILITY, mu * (1 - tolerance));
        double strongest = Math.min(Material.MOST_PERMEABLE, mu * (1 + tolerance));
        List<Variation> all = new ArrayList<>(sizeVariations());
        all.add(new Variation(
                "permeability",
                withMaterial(material.withPermeability(weakest)),
                withMaterial(material.withPermeability(strongest))));
        return List.copyOf(all);
    }

    /** Those that remain when the core has been measured. */
    List<Variation> sizeVariations() {
        double thin = Math.max(rod.diameter(), sleeveDiameter - sleeveTolerance);
        double thick = Math.min(2.5 * rod.diameter(), sleeveDiameter + sleeveTolerance);
        double tight = Math.max(wire.outerDiameter(), pitch * (1 - pitchTolerance));
        double loose = Math.min(rod.length(), pitch * (1 + pitchTolerance));
        return List.of(
                new Variation("sleeve diameter", sized(thin, pitch), sized(thick, pitch)),
                new Variation("pitch", sized(sleeveDiameter, tight), sized(sleeveDiameter, loose)));
    }

    private RodFormer sized(double sleeve, double newPitch) {
        return new RodFormer(rod, material, sleeve, 0, position, newPitch, 0, wire);
    }
}
