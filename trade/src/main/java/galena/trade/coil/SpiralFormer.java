package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.List;

/**
 * A flat card or cross for a spiral.
 *
 * @param innerDiameter where the spiral starts (m)
 * @param tolerance ± on it (m)
 * @param outerDiameter where it must end (m)
 * @param pitch from turn to turn (m)
 * @param pitchTolerance ± on the pitch, as a fraction
 * @param wire to wind with
 */
public record SpiralFormer(
        double innerDiameter, double tolerance, double outerDiameter, double pitch, double pitchTolerance, Wire wire)
        implements Former {
    public SpiralFormer {
        OutOfRange.requirePositive("inner diameter (m)", innerDiameter);
        OutOfRange.require(
                "tolerance of the inner diameter (m)", tolerance, 0, innerDiameter / 4, "Measure it better.");
        OutOfRange.require("tolerance of the pitch", pitchTolerance, 0, 0.5, "Give 0.03 for 3 %.");
        OutOfRange.require(
                "outer diameter (m)", outerDiameter, innerDiameter + 2 * pitch, Double.MAX_VALUE, "Not one turn fits.");
    }

    @Override
    public FlatSpiral wind(double turns) {
        OutOfRange.require("turns", turns, 1, mostTurns(), "That is what the card holds.");
        return new FlatSpiral(turns, innerDiameter, pitch, wire);
    }

    @Override
    public double mostTurns() {
        double room = (outerDiameter - innerDiameter) / 2;
        return Math.min(FlatSpiral.MOST_TURNS, Math.floor(room / pitch * (1 + 1e-12)));
    }

    @Override
    public List<Variation> variations() {
        double room = outerDiameter * 2, tight = Math.max(wire.outerDiameter(), pitch * (1 - pitchTolerance));
        return List.of(
                new Variation(
                        "inner diameter",
                        new SpiralFormer(innerDiameter - tolerance, 0, room, pitch, 0, wire),
                        new SpiralFormer(innerDiameter + tolerance, 0, room, pitch, 0, wire)),
                new Variation(
                        "pitch",
                        new SpiralFormer(innerDiameter, 0, room, tight, 0, wire),
                        new SpiralFormer(innerDiameter, 0, room, pitch * (1 + pitchTolerance), 0, wire)));
    }
}
