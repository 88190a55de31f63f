package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.Arrays;

/**
 * Layers of round wire one on another between two cheeks, the last one perhaps part full. Each layer is a current sheet
 * with round-wire corrections, each pair of layers two coaxial sheets: no section formula. Range: up to 60
 * layers of 2 turns and more, depth of winding at most one and a half times the inner diameter.
 *
 * @param turns number of turns; part turns count in proportion
 * @param innerDiameter of the former (m)
 * @param width between the cheeks (m)
 * @param pitch from turn to turn within a layer (m)
 * @param layerPitch from layer to layer (m): the wire's outer diameter, or less where wires bed into grooves
 * @param wire what it is wound with
 */
public record Multilayer(double turns, double innerDiameter, double width, double pitch, double layerPitch, Wire wire)
        implements Winding {
    static final int MOST_LAYERS = 60;

    /** Depth of winding over inner diameter. */
    static final double DEEPEST = 1.5;

    public Multilayer {
        OutOfRange.requirePositive("former diameter (m)", innerDiameter);
        OutOfRange.require(
                "pitch (m)",
                pitch,
                wire.outerDiameter() * (1 - 1e-9),
                width / 2,
                "From the wire's outer diameter up to half the width.");
        OutOfRange.require(
                "layer pitch (m)",
                layerPitch,
                closestLayers(pitch, wire) * (1 - 1e-9),
                innerDiameter,
                "Wires may bed into the grooves of the layer below, but not into its wires.");
        double perLayer = Math.floor(width / pitch * (1 + 1e-12));
        OutOfRange.require("turns", turns, 1, perLayer * MOST_LAYERS, "Up to 60 layers between the cheeks.");
        OutOfRange.require(
                "depth of winding (m)",
                Math.ceil(turns / perLayer) * layerPitch,
                0,
                DEEPEST * innerDiameter * (1 + 1e-9),
                "Up to one and a half times the former's diameter.");
    }

    /** Least layer pitch (m): wires lying in the grooves of the layer below. */
    static double closestLayers(double pitch, Wire wire) {
        double across = pitch / 2;
        return Math.sqrt(Math.max(0, wire.outerDiameter() * wire.outerDiameter() - across * across));
    }

    /** Turns that a full layer holds. */
    public int turnsPerLayer() {
        return (int) Math.floor(width / pitch * (1 + 1e-12));
    }

    @Override
    public int layers() {
        return (int) Math.ceil(turns / turnsPerLayer() - 1e-9);
    }

    @Override
    public double inductance(double frequency, double celsius) {
        double internal = InternalInductance.ratio(wire, frequency, celsius);
        double conductor = InternalInductance.conductorDiameter(wire), sum = 0;
        for (int i = 0; i < layers(); i++) {
            double n = Math.max(1, turnsIn(i)), a = radius(i), share = turnsIn(i) / n;
            double whole =
                    CurrentSheet.inductance(n, a, n * pitch) + RoundWire.correction(n, a, pitch, conductor, internal);
            sum += share * share * whole; // a part turn counts in proportion
            for (int j = 0; j < i; j++) sum += 2 * betweenLayers(i, j);
        }
        return sum;
    }

    private double betweenLayers(int i, int j) {
        double n1 = Math.max(1, turnsIn(i)), n2 = Math.max(1, turnsIn(j)), share = turnsIn(i) * turnsIn(j) / (n1 * n2);
        double both = CurrentSheet.mutualPerTurnsPerMetre(radius(i), 0, n1 * pitch, radius(j), 0, n2 * pitch);
        return share * both / (pitch * pitch);
    }

    private double turnsIn(int layer) {
        return layer < layers() - 1 ? turnsPerLayer() : turns - (layers() - 1.0) * turnsPerLayer();
    }

    private double radius(int layer) {
        return (innerDiameter + wire.outerDiameter()) / 2 + layer * layerPitch;
    }

    @Override
    public double modelError() {
        return 0.01;
    }

    @Override
    public double wireLength() {
        double sum = 0;
        for (int i = 0; i < layers(); i++) sum += turnsIn(i) * Math.hypot(2 * Math.PI * radius(i), pitch);
        return sum;
    }

    @Override
    public double windingLength() {
        return Math.min(turns, turnsPerLayer()) * pitch;
    }

    @Override
    public Losses losses(double frequency, double celsius) {
        return turnField().losses(this, frequency, celsius, 0, TurnField.RECKONED);
    }

    @Override
    public double inductanceShift(double frequency, double celsius) {
        return turnField().inductanceShift(this, frequency, celsius);
    }

    private TurnField turnField() {
        int whole = Math.max(1, (int) Math.round(turns)), each = turnsPerLayer();
        double[] z = new double[whole], r = new double[whole];
        // layers closer than a wire must lie in each other's grooves
        double groove = layerPitch < wire.outerDiameter() ? pitch / 2 : 0;
        Arrays.setAll(z, i -> i % each * pitch + (i / each % 2) * groove);
        Arrays.setAll(r, i -> radius(i / each));
        return TurnField.ofRings(z, r, InternalInductance.conductorDiameter(wire));
    }

    @Override
    public SelfCapacitance selfCapacitance() {
        return new SelfCapacitance.NotKnown(
                "Self-capacitance of layers depends on how they are laid; no published rule is held. Measure two resonances.");
    }
}
