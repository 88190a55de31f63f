package galena.build.reach;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import galena.trade.field.FreeSpace;
import galena.trade.field.PointField;
import java.util.Optional;

/**
 * Field of one emission at one distance, rms, unmodulated.
 *
 * @param distance from the aerial (m)
 * @param eAxis greatest E on the aerial's axis (V/m); none for a wire, whose axis points up
 * @param eBroadside greatest E at right angles to it, for a wire along the ground
 * @param hAxis greatest H on the axis (A/m)
 * @param hBroadside greatest H at right angles to it
 * @param loopEquivalent greatest H anywhere times 377 Ω (V/m): what a loop calibrated in far-field terms shows
 */
public record Level(
        double distance,
        Optional<Figure.Known> eAxis,
        Figure.Known eBroadside,
        Optional<Figure.Known> hAxis,
        Figure.Known hBroadside,
        Figure.Known loopEquivalent) {
    static Level of(Emission emission, double distance, boolean hasAxis) {
        PointField broadside = emission.radiator().broadside(distance);
        Optional<PointField> axis = hasAxis ? Optional.of(emission.radiator().onAxis(distance)) : Optional.empty();
        String along = "on the axis", across = hasAxis ? "broadside" : "along the ground";
        return new Level(
                distance,
                axis.map(f -> emission.field(f.greatestE(), Unit.VOLT_PER_METRE, "E", along)),
                emission.field(broadside.greatestE(), Unit.VOLT_PER_METRE, "E", across),
                axis.map(f -> emission.field(f.greatestH(), Unit.AMPERE_PER_METRE, "H", along)),
                emission.field(broadside.greatestH(), Unit.AMPERE_PER_METRE, "H", across),
                emission.field(
                        emission.radiator().worstH(distance) * FreeSpace.IMPEDANCE,
                        Unit.VOLT_PER_METRE,
                        "377 Ω times H",
                        "worst orientation"));
    }
}
