package galena.trade.field;

/**
 * A vertical wire, short against λ/4, over perfect ground, with what loads its top. Capacitance by the mean potential of
 * evenly spread charge and its image (G. W. O. Howe's method); for a base on the ground it becomes 2πε0·h/(ln(h/a) − 1),
 * the capacitance behind the short-monopole reactance −60·(ln(h/a) − 1)/tan(kh) of Balanis, Antenna Theory, section 8.
 * A horizontal wire adds capacitance on top and radiates little of its own, for its image cancels it.
 *
 * @param height length of the vertical wire (m)
 * @param radius of the wire (m)
 * @param baseHeight of its lower end over ground (m)
 * @param topCapacitance of a hat or horizontal wire on its upper end against ground (F), 0 for none
 */
public record ShortWire(double height, double radius, double baseHeight, double topCapacitance) {
    /** Longer than this part of a wavelength the straight taper of the current no longer holds. */
    private static final double LONGEST = 0.1;

    public ShortWire {
        FreeSpace.positive(height, "height");
        FreeSpace.positive(radius, "wire radius");
        if (!(baseHeight >= 0) || !(topCapacitance >= 0)) {
            throw new IllegalArgumentException("base height and top capacitance are zero or more");
        }
        if (height < 10 * radius) throw new IllegalArgumentException("a wire is at least ten times as long as thick");
    }

    /** A bare vertical wire from the ground up. */
    public static ShortWire vertical(double height, double radius) {
        return new ShortWire(height, radius, 0, 0);
    }

    /** Capacitance of the vertical wire alone (F). */
    public double wireCapacitance() {
        double self = selfCoefficient(height, radius);
        double gap = 2 * baseHeight;
        double image = (xLogX(2 * height + gap) + xLogX(gap) - 2 * xLogX(height + gap)) / (2 * height);
        return 2 * Math.PI * FreeSpace.EPSILON * height / (self - image);
    }

    private static double xLogX(double x) {
        return x > 0 ? x * Math.log(x) : 0;
    }

    /** Mean potential of an evenly charged wire on itself, times 2πε0·length. */
    private static double selfCoefficient(double length, double radius) {
        double ratio = radius / length;
        return asinh(1 / ratio) + ratio - Math.sqrt(1 + ratio * ratio);
    }

    private static double asinh(double x) {
        return Math.log(x + Math.sqrt(x * x + 1));
    }

    /**
     * Capacitance (F) of a horizontal wire over ground, for {@code topCapacitance}.
     *
     * @param length (m)
     * @param radius (m)
     * @param above its height over ground (m)
     */
    public static double horizontalCapacitance(double length, double radius, double above) {
        FreeSpace.positive(length, "length");
        FreeSpace.positive(radius, "wire radius");
        FreeSpace.positive(above, "height");
        double image = selfCoefficient(length, 2 * above);
        return 2 * Math.PI * FreeSpace.EPSILON * length / (selfCoefficient(length, radius) - image);
    }

    /** Capacitance of wire and top together (F). */
    public double capacitance() {
        return wireCapacitance() + topCapacitance;
    }

    /** Part of the base current that still flows at the top: top capacitance over all. */
    public double currentAtTop() {
        return topCapacitance / capacitance();
    }

    /** Effective height (m): mean of the current along the wire over the base current, times height. */
    public double effectiveHeight() {
        return height * (1 + currentAtTop()) / 2;
    }

    /** R = 160π²·(he/λ)² (Ω), he the effective height: 40π²·(h/λ)² for a bare wire. */
    public double radiationResistance(double frequency) {
        double wavelength = FreeSpace.wavelength(shortAt(frequency));
        return 160 * Math.pow(Math.PI * effectiveHeight() / wavelength, 2);
    }

    /** Series coil (H) that tunes the wire. */
    public double loadingInductance(double frequency) {
        double omega = 2 * Math.PI * shortAt(frequency);
        return 1 / (omega * omega * capacitance());
    }

    /** The wire carrying a base current (A), right beside it too. */
    public WireCurrent carrying(double baseCurrent, double frequency) {
        return new WireCurrent(this, baseCurrent, shortAt(frequency));
    }

    /** The dipole, image included, that a base current (A) makes of it: for distances of many heights. */
    public ElectricDipole asDipole(double baseCurrent, double frequency) {
        return new ElectricDipole(2 * effectiveHeight() * baseCurrent, shortAt(frequency), true);
    }

    /**
     * The tuned wire as its transmitter sees it.
     *
     * @param frequency (Hz)
     * @param coilQ quality factor of the loading coil
     * @param groundLoss resistance of earth or counterpoise (Ω); tens of ohms for a stake or a house's wiring
     */
    public Tuned tuned(double frequency, double coilQ, double groundLoss) {
        FreeSpace.positive(coilQ, "coil Q");
        if (!(groundLoss >= 0)) throw new IllegalArgumentException("ground loss is zero or more, not " + groundLoss);
        double reactance = 2 * Math.PI * frequency * loadingInductance(frequency);
        double radiation = radiationResistance(frequency);
        double total = radiation + groundLoss + reactance / coilQ;
        return new Tuned(
                loadingInductance(frequency),
                radiation,
                groundLoss,
                reactance / coilQ,
                radiation / total,
                reactance / total);
    }

    /**
     * @param inductance of the loading coil (H)
     * @param radiationResistance (Ω)
     * @param groundLoss (Ω)
     * @param coilLoss (Ω)
     * @param efficiency radiated over delivered power
     * @param loadedQ of the whole; frequency over it is the −3 dB bandwidth
     */
    public record Tuned(
            double inductance,
            double radiationResistance,
            double groundLoss,
            double coilLoss,
            double efficiency,
            double loadedQ) {
        /** Base current (A, rms) that a power (W) drives. */
        public double currentFor(double power) {
            return Math.sqrt(power / (radiationResistance + groundLoss + coilLoss));
        }
    }

    /** Up to this frequency (Hz) the wire counts as short. */
    public double highestFrequency() {
        return LONGEST * FreeSpace.wavelength(1) / height;
    }

    private double shortAt(double frequency) {
        double longest = LONGEST * FreeSpace.wavelength(frequency);
        if (height > longest) {
            throw new IllegalArgumentException("a wire of " + height + " m is not short at " + frequency / 1e3
                    + " kHz; this holds up to " + longest + " m");
        }
        return frequency;
    }
}
