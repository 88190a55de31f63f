package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.Arrays;

/**
 * A spiral in one plane, summed from circles of round wire: L = Σ self + ΣΣ mutual. Self-inductance of a ring
 * µ₀a[ln(8a/b) − 2 + internal/4], F. W. Grover (1946). Range: 1 to 200 turns, pitch at least the wire's outer
 * diameter, inner diameter at least twice the pitch, so that circles stand well for the spiral.
 *
 * @param turns number of turns; a part turn counts in proportion
 * @param innerDiameter to the inner edge (m)
 * @param pitch from turn to turn (m)
 * @param wire what it is wound with
 */
public record FlatSpiral(double turns, double innerDiameter, double pitch, Wire wire) implements Winding {
    static final int MOST_TURNS = 200;

    public FlatSpiral {
        OutOfRange.require("turns", turns, 1, MOST_TURNS, "A flat spiral of that many turns is not covered.");
        OutOfRange.require(
                "pitch (m)",
                pitch,
                wire.outerDiameter() * (1 - 1e-9),
                innerDiameter / 2,
                "From the wire's outer diameter up to half the inner diameter.");
    }

    @Override
    public double inductance(double frequency, double celsius) {
        double internal = InternalInductance.ratio(wire, frequency, celsius);
        double b = InternalInductance.conductorDiameter(wire) / 2, sum = 0;
        for (int i = 0; i < rings(); i++) {
            double a = radius(i);
            sum += share(i) * share(i) * CircularLoop.inductance(a, b, internal);
            for (int j = 0; j < i; j++) sum += 2 * share(i) * share(j) * CoaxialLoops.mutual(a, radius(j), 0);
        }
        return sum;
    }

    private int rings() {
        return (int) Math.ceil(turns - 1e-9);
    }

    /** 1, or the part of the outermost turn that is there. */
    private double share(int ring) {
        return Math.min(1, turns - ring);
    }

    private double radius(int ring) {
        return innerDiameter / 2 + (ring + 0.5) * pitch;
    }

    @Override
    public double modelError() {
        return 0.01;
    }

    @Override
    public double wireLength() {
        double sum = 0;
        for (int i = 0; i < rings(); i++) sum += share(i) * 2 * Math.PI * radius(i);
        return sum;
    }

    /** From inner to outer edge (m). */
    @Override
    public double windingLength() {
        return turns * pitch;
    }

    @Override
    public int layers() {
        return 1;
    }

    /** Magnetic moment for one ampere (m²): the sum of the turns' areas. */
    public double momentPerAmpere() {
        double sum = 0;
        for (int i = 0; i < rings(); i++) sum += share(i) * Math.PI * radius(i) * radius(i);
        return sum;
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
        double[] z = new double[Math.max(1, (int) Math.round(turns))], r = new double[z.length];
        Arrays.setAll(r, this::radius);
        return TurnField.ofRings(z, r, InternalInductance.conductorDiameter(wire));
    }

    @Override
    public SelfCapacitance selfCapacitance() {
        return new SelfCapacitance.NotKnown("No published rule for flat spirals is held. Measure two resonances.");
    }
}
