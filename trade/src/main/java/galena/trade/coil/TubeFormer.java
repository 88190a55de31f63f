package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.List;

/**
 * A tube or a round frame for one layer.
 *
 * @param diameter of the tube's outside (m)
 * @param diameterTolerance ± on it (m)
 * @param length that may be wound (m)
 * @param pitch from turn to turn (m); the wire's outer diameter for close winding
 * @param pitchTolerance ± on the pitch, as a fraction
 * @param wire to wind with
 */
public record TubeFormer(
        double diameter, double diameterTolerance, double length, double pitch, double pitchTolerance, Wire wire)
        implements Former {
    public TubeFormer {
        OutOfRange.requirePositive("tube diameter (m)", diameter);
        OutOfRange.require("tolerance of the diameter (m)", diameterTolerance, 0, diameter / 4, "Measure it better.");
        OutOfRange.require("tolerance of the pitch", pitchTolerance, 0, 0.5, "Give 0.03 for 3 %.");
        OutOfRange.require("winding length (m)", length, pitch, Double.MAX_VALUE, "Not one turn fits.");
    }

    @Override
    public SingleLayer wind(double turns) {
        OutOfRange.require("turns", turns, 1, mostTurns(), "That is what the tube holds.");
        return new SingleLayer(turns, diameter + wire.outerDiameter(), pitch, wire);
    }

    @Override
    public double mostTurns() {
        return Math.floor(length / pitch * (1 + 1e-12));
    }

    @Override
    public List<Variation> variations() {
        double tight = Math.max(wire.outerDiameter(), pitch * (1 - pitchTolerance)),
                loose = pitch * (1 + pitchTolerance);
        double room = length * (1 + pitchTolerance);
        return List.of(
                new Variation(
                        "tube diameter",
                        new TubeFormer(diameter - diameterTolerance, 0, length, pitch, 0, wire),
                        new TubeFormer(diameter + diameterTolerance, 0, length, pitch, 0, wire)),
                new Variation(
                        "pitch",
                        new TubeFormer(diameter, 0, room, tight, 0, wire),
                        new TubeFormer(diameter, 0, room, loose, 0, wire)));
    }
}
