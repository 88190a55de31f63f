package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.Arrays;

/**
 * One layer of round wire at even pitch on a cylinder; with few turns, a circular loop frame. Inductance: {@link
 * CurrentSheet} with {@link RoundWire}. Range: 1 turn and more, pitch at least the wire's outer diameter and at most
 * a fifth of the coil's diameter. Within it the sum over true rings is met within 0.5 %. Thick close wire takes off a
 * little more at high frequency, see {@link Losses#inductanceShift}.
 *
 * @param turns number of turns; part turns count in proportion
 * @param diameter to wire centre (m)
 * @param pitch from turn to turn (m)
 * @param wire what it is wound with
 */
public record SingleLayer(double turns, double diameter, double pitch, Wire wire) implements Winding {
    private static final double COARSEST = 0.2;

    public SingleLayer {
        OutOfRange.require("turns", turns, 1, 100_000, "A part of a turn is a piece of wire.");
        OutOfRange.requirePositive("coil diameter (m)", diameter);
        OutOfRange.require(
                "pitch (m)",
                pitch,
                wire.outerDiameter() * (1 - 1e-9),
                diameter * COARSEST,
                "From the wire's outer diameter up to a fifth of the coil's diameter.");
    }

    @Override
    public double inductance(double frequency, double celsius) {
        double internal = InternalInductance.ratio(wire, frequency, celsius);
        double conductor = InternalInductance.conductorDiameter(wire);
        return CurrentSheet.inductance(turns, diameter / 2, windingLength())
                + RoundWire.correction(turns, diameter / 2, pitch, conductor, internal);
    }

    @Override
    public double modelError() {
        return 0.005;
    }

    @Override
    public double wireLength() {
        return turns * Math.hypot(Math.PI * diameter, pitch);
    }

    /** Turns times pitch: the length that Nagaoka's and Medhurst's tables mean (m). */
    @Override
    public double windingLength() {
        return turns * pitch;
    }

    @Override
    public int layers() {
        return 1;
    }

    @Override
    public Losses losses(double frequency, double celsius) {
        return turnField().losses(this, frequency, celsius, 0, TurnField.MEASURED);
    }

    @Override
    public double inductanceShift(double frequency, double celsius) {
        return turnField().inductanceShift(this, frequency, celsius);
    }

    /** Magnetic moment for one ampere (m²): turns times area. */
    public double momentPerAmpere() {
        return turns * Math.PI * diameter * diameter / 4;
    }

    TurnField turnField() {
        int whole = Math.max(1, (int) Math.round(turns));
        double[] z = new double[whole], r = new double[whole];
        Arrays.setAll(z, i -> i * pitch);
        Arrays.fill(r, diameter / 2);
        return TurnField.ofRings(z, r, InternalInductance.conductorDiameter(wire));
    }

    @Override
    public SelfCapacitance selfCapacitance() {
        return Medhurst.of(windingLength(), diameter);
    }
}
