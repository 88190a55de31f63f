package galena.trade.ferrite;

import static galena.trade.wire.SkinEffect.MU_0;

import galena.trade.coil.Interval;
import galena.trade.coil.Losses;
import galena.trade.coil.SelfCapacitance;
import galena.trade.coil.TurnField;
import galena.trade.coil.Winding;
import galena.trade.coil.WireRow;
import galena.trade.wire.OutOfRange;
import galena.trade.wire.SkinEffect;
import galena.trade.wire.Wire;

/**
 * A single layer on a ring core: L = µ₀µN²∫dA/2πr. Range: turns that fit the hole in one layer over the part covered,
 * 5 turns and more; all the way round when µ is below 20, since flux then leaks between spread turns. Flux outside
 * the core is left out and stated in {@link #modelError} as 1/µ, at most 10 %.
 *
 * @param core the ring
 * @param material its ferrite or powder
 * @param turns number of turns
 * @param coverage part of the ring's round that the winding takes, 0 to 1
 * @param wire what it is wound with
 */
public record ToroidCoil(Toroid core, Material material, double turns, double coverage, Wire wire) implements Winding {
    private static final double FEW_LEAK = 20;
    static final double LEAST_PERMEABILITY = 4;

    public ToroidCoil {
        OutOfRange.require("part of the ring covered", coverage, 0.05, 1, "1 is all the way round.");
        OutOfRange.require(
                "permeability of the ring",
                material.permeability(),
                LEAST_PERMEABILITY,
                Material.MOST_PERMEABLE,
                "Without a core a ring's stray flux is not covered.");
        if (material.permeability() < FEW_LEAK) {
            OutOfRange.require(
                    "part of a low-permeability ring covered", coverage, 0.8, 1, "Spread the turns all the way round.");
        }
        OutOfRange.require(
                "turns", turns, 1, mostTurns(core, coverage, wire), "That is what one layer in the hole holds.");
    }

    /** Turns of one layer in the hole. */
    public static double mostTurns(Toroid core, double coverage, Wire wire) {
        return Math.floor(coverage * Math.PI * (core.innerDiameter() - wire.outerDiameter()) / wire.outerDiameter());
    }

    @Override
    public double inductance(double frequency, double celsius) {
        return MU_0 * material.permeability() * turns * turns * core.reach();
    }

    /** None: the field across the wire is a small part of that in the core. */
    @Override
    public double inductanceShift(double frequency, double celsius) {
        return 0;
    }

    @Override
    public double modelError() {
        return modelError(material.permeability());
    }

    /** A hundredth for the section's corners and roundings, and the share of flux that air takes beside the core. */
    static double modelError(double permeability) {
        return 0.01 + Math.min(0.1, 1 / permeability);
    }

    @Override
    public double wireLength() {
        return turns * core.turnLength(wire.outerDiameter());
    }

    /** Round the inside of the ring (m). */
    @Override
    public double windingLength() {
        return coverage * Math.PI * (core.innerDiameter() - wire.outerDiameter());
    }

    @Override
    public int layers() {
        return 1;
    }

    /**
     * {@inheritDoc} The turns are one row, tight in the hole and spread outside: {@link WireRow} at both pitches, the
     * faces at their mean.
     *
     * @throws OutOfRange also when nothing is known of the core's loss there
     */
    @Override
    public Losses losses(double frequency, double celsius) {
        Interval factor = material.lossFactor(frequency);
        double omega = 2 * Math.PI * frequency, dc = dcResistance(celsius);
        double skin = dc * (TurnField.straightRatio(wire, frequency, celsius) - 1);
        double proximity = dc * proximity(frequency, celsius);
        double perFactor = omega * inductance(frequency, celsius) * material.permeability();
        double core = perFactor * factor.value(), copper = dc + skin + proximity, total = copper + core;
        return new Losses(
                frequency,
                omega * inductance(frequency, celsius),
                0,
                dc,
                skin,
                proximity,
                core,
                1 - (COPPER_DOUBT * copper + perFactor * (factor.value() - factor.low())) / total,
                1 + (COPPER_DOUBT * copper + perFactor * (factor.high() - factor.value())) / total);
    }

    /** The row is exact; corners, and turns that lean on each other, are guessed at this much. */
    private static final double COPPER_DOUBT = 0.15;

    private double proximity(double frequency, double celsius) {
        double inner = windingLength() / turns;
        double outer = coverage * Math.PI * (core.outerDiameter() + wire.outerDiameter()) / turns;
        double side = core.height() / (2 * (core.height() + (core.outerDiameter() - core.innerDiameter()) / 2));
        double rows = rowLoss(inner, frequency, celsius) + rowLoss(outer, frequency, celsius);
        return side * rows + (1 - 2 * side) * rowLoss((inner + outer) / 2, frequency, celsius);
    }

    private double rowLoss(double pitch, double frequency, double celsius) {
        double rho = wire.metal().resistivity(celsius);
        if (wire instanceof Wire.Solid solid) {
            double x = SkinEffect.argument(solid.diameter(), rho, frequency);
            return WireRow.addedLoss(solid.diameter(), Math.max(pitch, solid.diameter()), x);
        }
        Wire.Litz litz = (Wire.Litz) wire;
        double x = SkinEffect.argument(litz.strandDiameter(), rho, frequency);
        double side = 2 * Math.PI * litz.strands() * litz.strandDiameter() / (2 * pitch);
        return side * side * SkinEffect.proximityFactor(x);
    }

    @Override
    public SelfCapacitance selfCapacitance() {
        return new SelfCapacitance.NotKnown("No published rule for toroids is held. Measure two resonances.");
    }

    /** Inductance of one turn, the makers' A_L (H). */
    public double perTurnSquared() {
        return inductance() / (turns * turns);
    }
}
