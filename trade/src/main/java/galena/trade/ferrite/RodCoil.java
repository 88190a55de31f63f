package galena.trade.ferrite;

import galena.trade.coil.InternalInductance;
import galena.trade.coil.Interval;
import galena.trade.coil.Losses;
import galena.trade.coil.SelfCapacitance;
import galena.trade.coil.SingleLayer;
import galena.trade.coil.TurnField;
import galena.trade.coil.Winding;
import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.Arrays;

/**
 * A single layer on a ferrite rod, anywhere along it, perhaps hanging over the end. The inductance of the winding in
 * air is {@link SingleLayer}'s; the rod adds µ₀∫M·H, M its magnetisation by the winding's own field H ({@link
 * RodProblem}). Core loss follows from the same solution: with µ′ − jµ″ for µ, dL/dχ = µ₀∫M²/χ² gives the resistance
 * ωµ″·dL/dχ, exact for small loss. Range: that of the rod; middle of the winding on the rod; winding diameter up to 3
 * rod diameters; µ 1.001 to 5000.
 *
 * @param rod the bar
 * @param material its ferrite
 * @param turns number of turns; part turns count in proportion
 * @param diameter of the winding to wire centre (m)
 * @param pitch from turn to turn (m)
 * @param position of the winding's middle from the rod's middle, either way (m)
 * @param wire what it is wound with
 */
public record RodCoil(
        Rod rod, Material material, double turns, double diameter, double pitch, double position, Wire wire)
        implements Winding {
    public RodCoil {
        OutOfRange.require("turns", turns, 1, 100_000, "A part of a turn is a piece of wire.");
        OutOfRange.require(
                "winding diameter to wire centre (m)",
                diameter,
                rod.diameter() + wire.outerDiameter() * (1 - 1e-9),
                3 * rod.diameter(),
                "From the rod's diameter plus the wire's up to three times the rod's.");
        OutOfRange.require(
                "position of the winding's middle (m)",
                Math.abs(position),
                0,
                rod.length() / 2,
                "Keep the winding's middle on the rod.");
        OutOfRange.require(
                "turns times pitch (m)",
                turns * pitch,
                0,
                2 * rod.length(),
                "The winding is more than twice as long as the rod.");
        RodProblem.susceptibility(material.permeability());
    }

    /** The same winding slid to another place (m). */
    public RodCoil at(double newPosition) {
        return new RodCoil(rod, material, turns, diameter, pitch, newPosition, wire);
    }

    /** The same winding on a rod of another permeability. */
    public RodCoil withPermeability(double permeability) {
        return new RodCoil(rod, material.withPermeability(permeability), turns, diameter, pitch, position, wire);
    }

    /** The winding with the rod drawn out. */
    public SingleLayer inAir() {
        return new SingleLayer(turns, diameter, pitch, wire);
    }

    @Override
    public double inductance(double frequency, double celsius) {
        return inAir().inductance(frequency, celsius) + solve().addedInductance();
    }

    /** Inductance with the rod over that without. */
    public double effectivePermeability() {
        return inductance() / inAir().inductance();
    }

    /** Magnetic moment for one ampere (m²), rod included: what radiates. */
    public double momentPerAmpere() {
        return inAir().momentPerAmpere() + rod.problem().moment(solve().magnetisation());
    }

    @Override
    public double modelError() {
        return 0.01;
    }

    @Override
    public double wireLength() {
        return inAir().wireLength();
    }

    @Override
    public double windingLength() {
        return turns * pitch;
    }

    @Override
    public int layers() {
        return 1;
    }

    /**
     * {@inheritDoc}
     *
     * @throws OutOfRange also when nothing is known of the core's loss there; {@link #copperLosses} still answers
     */
    @Override
    public Losses losses(double frequency, double celsius) {
        RodResponse solution = solve();
        Interval factor = material.lossFactor(frequency);
        double perFactor = 2 * Math.PI * frequency * solution.resistancePerLossFactor();
        return turnField(solution)
                .losses(this, frequency, celsius, perFactor * factor.value(), TurnField.RECKONED)
                .widened(perFactor * (factor.value() - factor.low()), perFactor * (factor.high() - factor.value()));
    }

    @Override
    public double inductanceShift(double frequency, double celsius) {
        return turnField(solve()).inductanceShift(this, frequency, celsius);
    }

    /** Losses in the wire alone, the rod's field across it included. */
    public Losses copperLosses(double frequency, double celsius) {
        return turnField(solve()).losses(this, frequency, celsius, 0, TurnField.RECKONED);
    }

    @Override
    public SelfCapacitance selfCapacitance() {
        return new SelfCapacitance.NotKnown(
                "A rod adds capacitance that no table held covers. Measure two resonances on the rod.");
    }

    private TurnField turnField(RodResponse solution) {
        int whole = Math.max(1, (int) Math.round(turns));
        double[] z = new double[whole], r = new double[whole];
        Arrays.setAll(z, i -> position + (i - (whole - 1) / 2.0) * pitch);
        Arrays.fill(r, diameter / 2);
        RodStrayField field = new RodStrayField(rod.problem(), solution.magnetisation());
        double[] hz = new double[whole], hr = new double[whole], one = new double[2];
        for (int i = 0; i < whole; i++) {
            field.at(r[i], z[i], one);
            hz[i] = one[0];
            hr[i] = one[1];
        }
        return TurnField.ofRings(z, r, InternalInductance.conductorDiameter(wire))
                .plus(hz, hr);
    }

    private RodResponse solve() {
        double half = windingLength() / 2;
        double[] drive =
                new RodDrive(rod.problem().mesh(), diameter / 2, position - half, position + half, turns).drive();
        return RodResponse.of(rod.problem(), material.permeability(), drive);
    }
}
