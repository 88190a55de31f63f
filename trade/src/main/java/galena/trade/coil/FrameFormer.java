package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.List;

/**
 * A rectangular or square frame.
 *
 * @param width of the outermost turn, to wire centre (m)
 * @param height of the outermost turn (m)
 * @param tolerance ± on both (m)
 * @param extent that the turns may take up, along the axis of a box or inwards on a flat frame (m)
 * @param pitch from turn to turn (m)
 * @param pitchTolerance ± on the pitch, as a fraction
 * @param lay how the turns lie
 * @param wire to wind with
 */
public record FrameFormer(
        double width,
        double height,
        double tolerance,
        double extent,
        double pitch,
        double pitchTolerance,
        RectangularFrame.Lay lay,
        Wire wire)
        implements Former {
    public FrameFormer {
        OutOfRange.requirePositive("side of the frame (m)", Math.min(width, height));
        OutOfRange.require(
                "tolerance of the sides (m)", tolerance, 0, Math.min(width, height) / 4, "Measure it better.");
        OutOfRange.require("tolerance of the pitch", pitchTolerance, 0, 0.5, "Give 0.03 for 3 %.");
        OutOfRange.require("extent of the turns (m)", extent, pitch, Double.MAX_VALUE, "Not one turn fits.");
    }

    @Override
    public RectangularFrame wind(double turns) {
        OutOfRange.require("turns", turns, 1, mostTurns(), "That is what the frame holds.");
        return new RectangularFrame(turns, width, height, pitch, lay, wire);
    }

    @Override
    public double mostTurns() {
        return Math.min(
                Math.floor(extent / pitch * (1 + 1e-12)), RectangularFrame.mostTurns(width, height, pitch, lay));
    }

    @Override
    public List<Variation> variations() {
        double tight = Math.max(wire.outerDiameter(), pitch * (1 - pitchTolerance)),
                loose = pitch * (1 + pitchTolerance);
        return List.of(
                new Variation("sides", sized(-tolerance, pitch), sized(tolerance, pitch)),
                new Variation("pitch", sized(0, tight), sized(0, loose)));
    }

    private FrameFormer sized(double change, double newPitch) {
        double room = extent * (1 + pitchTolerance);
        return new FrameFormer(width + change, height + change, 0, room, newPitch, 0, lay, wire);
    }
}
