package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import galena.trade.wire.SkinEffect;
import galena.trade.wire.Wire;

/**
 * The field across each turn of a winding for one ampere, and the loss that follows. Solid wire is solved with all
 * turns' eddy currents at once ({@link Multipoles}); strands of litz feel the field as it stands, plus that of their
 * own bundle (Butterworth's relation, F. E. Terman, Radio Engineers' Handbook 1943). A core adds its field by {@link
 * #plus}.
 *
 * <p>Against Medhurst's table (thick wire, 40 turns) the solid-wire loss is within 7 % from pitch 1.25 wire diameters
 * and length 0.8 diameters up, and in coils longer than 3 diameters at any pitch; in shorter and closer coils it
 * comes out higher than he measured, up to twice at pitch 1.11 and length 0.2. {@link #losses} gives that as the
 * interval.
 */
public final class TurnField {
    /** Turns that are solved at once; time grows with their square. */
    public static final int MOST_TURNS = 500;

    /**
     * Doubt for single layers: the worst difference from Medhurst's measured coils where pitch and length are ample.
     */
    public static final double MEASURED = 0.07;

    /** Doubt for every other form: the same equations, no measured table held to test them against; a judgement. */
    public static final double RECKONED = 0.15;

    private final double[] z;
    private final double[] r;
    private final double[] lengths;
    private final double[] hz;
    private final double[] hr;

    private TurnField(double[] z, double[] r, double[] lengths, double[] hz, double[] hr) {
        this.z = z;
        this.r = r;
        this.lengths = lengths;
        this.hz = hz;
        this.hr = hr;
    }

    /**
     * Turns as circles about one axis.
     *
     * @param z height of each turn (m)
     * @param r radius of each turn (m)
     * @param wireDiameter for the small field that a turn's own curvature throws on itself (m)
     */
    public static TurnField ofRings(double[] z, double[] r, double wireDiameter) {
        int turns = countable(z.length);
        double[] hz = new double[turns], hr = new double[turns], lengths = new double[turns], one = new double[2];
        for (int i = 0; i < turns; i++) {
            lengths[i] = 2 * Math.PI * r[i];
            hz[i] = (Math.log(16 * r[i] / wireDiameter) - 0.75) / (4 * Math.PI * r[i]);
            for (int j = 0; j < turns; j++) {
                if (i == j) continue;
                CoaxialLoops.field(r[j], r[i], z[i] - z[j], one);
                hz[i] += one[0];
                hr[i] += one[1];
            }
        }
        return new TurnField(z.clone(), r.clone(), lengths, hz, hr);
    }

    /**
     * Turns as long straight wires side by side, all carrying current the same way: one side of a frame.
     *
     * @param across positions in the plane across them (m)
     * @param up positions at right angles to those (m)
     */
    static TurnField ofParallels(double[] across, double[] up) {
        int turns = countable(across.length);
        double[] hz = new double[turns], hr = new double[turns], lengths = new double[turns];
        for (int i = 0; i < turns; i++) {
            lengths[i] = 1;
            for (int j = 0; j < turns; j++) {
                if (i == j) continue;
                double dz = across[i] - across[j], dr = up[i] - up[j], size = 2 * Math.PI * (dz * dz + dr * dr);
                hz[i] -= dr / size;
                hr[i] += dz / size;
            }
        }
        return new TurnField(across.clone(), up.clone(), lengths, hz, hr);
    }

    /**
     * The same turns in an added field, such as a core's.
     *
     * @param addedZ along the axis at each turn for one ampere (A/m)
     * @param addedR outwards
     */
    public TurnField plus(double[] addedZ, double[] addedR) {
        double[] sumZ = hz.clone(), sumR = hr.clone();
        for (int i = 0; i < sumZ.length; i++) {
            sumZ[i] += addedZ[i];
            sumR[i] += addedR[i];
        }
        return new TurnField(z, r, lengths, sumZ, sumR);
    }

    /**
     * Loss added by the field across each turn, over its direct-current loss, and the inductance that eddy currents
     * take from it.
     */
    Multipoles.Outcome eddies(Wire wire, double frequency, double celsius) {
        double rho = wire.metal().resistivity(celsius);
        if (wire instanceof Wire.Solid solid) {
            double x = SkinEffect.argument(solid.diameter(), rho, frequency);
            return new Multipoles(z, r, hz, hr, solid.diameter() / 2, x).solve();
        }
        return new Multipoles.Outcome(addedInStrands((Wire.Litz) wire, rho, frequency), new double[hz.length]);
    }

    /** Each of n strands turns 8πρH²G watts per metre into heat; over I²R/2 that is 4π²(n·ds·H)²G. */
    private double[] addedInStrands(Wire.Litz litz, double rho, double frequency) {
        double g = SkinEffect.proximityFactor(SkinEffect.argument(litz.strandDiameter(), rho, frequency));
        double side = 2 * Math.PI * litz.strands() * litz.strandDiameter();
        double[] added = new double[hz.length];
        for (int i = 0; i < added.length; i++) added[i] = side * side * (hz[i] * hz[i] + hr[i] * hr[i]) * g;
        return added;
    }

    /**
     * All losses of a winding of these turns.
     *
     * @param winding for its wire, resistance and reactance
     * @param core series resistance of the core (Ω)
     * @param doubt how far the total may be off, as a fraction: {@link #MEASURED} or {@link #RECKONED}
     */
    public Losses losses(Winding winding, double frequency, double celsius, double core, double doubt) {
        OutOfRange.requirePositive("frequency (Hz)", frequency);
        double dc = winding.dcResistance(celsius);
        double skin = dc * (straightRatio(winding.wire(), frequency, celsius) - 1);
        Multipoles.Outcome eddies = eddies(winding.wire(), frequency, celsius);
        double proximity = dc * mean(eddies.addedLoss());
        double shift = mean(eddies.inductance()) * winding.wireLength();
        double reactance = 2 * Math.PI * frequency * (winding.inductance(frequency, celsius) + shift);
        double total = dc + skin + proximity + core;
        double less = proximity * crowding(winding.wire(), frequency, celsius) + doubt * total;
        return new Losses(frequency, reactance, shift, dc, skin, proximity, core, 1 - less / total, 1 + doubt);
    }

    /** What eddy currents take from a winding of these turns, see {@link Winding#inductanceShift} (H). */
    public double inductanceShift(Winding winding, double frequency, double celsius) {
        return mean(eddies(winding.wire(), frequency, celsius).inductance()) * winding.wireLength();
    }

    private double mean(double[] byTurn) {
        double sum = 0, length = 0;
        for (int i = 0; i < byTurn.length; i++) {
            sum += byTurn[i] * lengths[i];
            length += lengths[i];
        }
        return sum / length;
    }

    /** Resistance of the wire by itself, drawn out straight, over its direct-current resistance. */
    public static double straightRatio(Wire wire, double frequency, double celsius) {
        double rho = wire.metal().resistivity(celsius);
        if (wire instanceof Wire.Solid solid) {
            return SkinEffect.resistanceRatio(SkinEffect.argument(solid.diameter(), rho, frequency));
        }
        Wire.Litz litz = (Wire.Litz) wire;
        double x = SkinEffect.argument(litz.strandDiameter(), rho, frequency);
        double fill = litz.strands() * litz.strandDiameter() / litz.bundleDiameter();
        return SkinEffect.resistanceRatio(x) + litz.strandConstant() * fill * fill * SkinEffect.proximityFactor(x);
    }

    /**
     * Share by which the proximity loss of thick, close and short windings has been seen too high: 1 −
     * measured/computed against Medhurst. Fades out below x = 4, where eddy currents no longer push each other about.
     */
    private double crowding(Wire wire, double frequency, double celsius) {
        if (!(wire instanceof Wire.Solid solid)) return 0;
        double x = SkinEffect.argument(solid.diameter(), wire.metal().resistivity(celsius), frequency);
        double spacing = closest() / solid.diameter(), shape = lengthOverDiameter();
        double full = 0;
        if (shape < 0.8) {
            full = spacing < 1.25 ? 0.55 : spacing < 1.4 ? 0.4 : spacing < 1.7 ? 0.3 : spacing < 2.2 ? 0.2 : 0;
        } else if (shape < 3) {
            full = spacing < 1.25 ? 0.32 : 0;
        }
        return full * Math.max(0, Math.min(1, (x - 1.5) / 2.5));
    }

    private double lengthOverDiameter() {
        double first = Double.MAX_VALUE, last = -Double.MAX_VALUE, radii = 0;
        for (int i = 0; i < z.length; i++) {
            first = Math.min(first, z[i]);
            last = Math.max(last, z[i]);
            radii += r[i];
        }
        return radii == 0 ? 0 : (last - first) / (2 * radii / z.length);
    }

    private double closest() {
        double least = Double.MAX_VALUE;
        for (int i = 0; i < z.length; i++) {
            for (int j = 0; j < i; j++) least = Math.min(least, Math.hypot(z[i] - z[j], r[i] - r[j]));
        }
        return least;
    }

    private static int countable(int turns) {
        return (int) OutOfRange.require(
                "turns to reckon losses for", turns, 1, MOST_TURNS, "Inductance has no such limit; measure the Q.");
    }
}
