package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.List;

/**
 * A bobbin with cheeks, wound in layers.
 *
 * @param hubDiameter that the first layer lies on (m)
 * @param hubTolerance ± on it (m)
 * @param width between the cheeks (m)
 * @param cheekDiameter up to which it may be filled (m)
 * @param pitch from turn to turn within a layer (m)
 * @param layerPitch from layer to layer (m)
 * @param layerTolerance ± on the layer pitch, as a fraction
 * @param wire to wind with
 */
public record BobbinFormer(
        double hubDiameter,
        double hubTolerance,
        double width,
        double cheekDiameter,
        double pitch,
        double layerPitch,
        double layerTolerance,
        Wire wire)
        implements Former {
    public BobbinFormer {
        OutOfRange.requirePositive("hub diameter (m)", hubDiameter);
        OutOfRange.require("tolerance of the hub (m)", hubTolerance, 0, hubDiameter / 4, "Measure it better.");
        OutOfRange.require("tolerance of the layer pitch", layerTolerance, 0, 0.2, "Give 0.05 for 5 %.");
        OutOfRange.require(
                "cheek diameter (m)",
                cheekDiameter,
                hubDiameter + 2 * wire.outerDiameter(),
                Double.MAX_VALUE,
                "Not one layer fits.");
    }

    @Override
    public Multilayer wind(double turns) {
        OutOfRange.require("turns", turns, 1, mostTurns(), "That is what the bobbin holds.");
        return new Multilayer(turns, hubDiameter, width, pitch, layerPitch, wire);
    }

    @Override
    public double mostTurns() {
        double depth = (cheekDiameter - hubDiameter) / 2 - wire.outerDiameter();
        double fit = 1 + Math.floor(depth / layerPitch + 1e-9);
        double covered = Math.min(Multilayer.MOST_LAYERS, Math.floor(Multilayer.DEEPEST * hubDiameter / layerPitch));
        return Math.min(fit, covered) * Math.floor(width / pitch * (1 + 1e-12));
    }

    @Override
    public List<Variation> variations() {
        double room = cheekDiameter + hubDiameter;
        double tight = Math.max(layerPitch * (1 - layerTolerance), Multilayer.closestLayers(pitch, wire));
        return List.of(
                new Variation(
                        "hub diameter",
                        new BobbinFormer(hubDiameter - hubTolerance, 0, width, room, pitch, layerPitch, 0, wire),
                        new BobbinFormer(hubDiameter + hubTolerance, 0, width, room, pitch, layerPitch, 0, wire)),
                new Variation(
                        "layer pitch",
                        new BobbinFormer(hubDiameter, 0, width, room, pitch, tight, 0, wire),
                        new BobbinFormer(
                                hubDiameter, 0, width, room, pitch, layerPitch * (1 + layerTolerance), 0, wire)));
    }
}
