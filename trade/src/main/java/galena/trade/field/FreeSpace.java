package galena.trade.field;

/** Constants of free space and of waves in it. */
public final class FreeSpace {
    /** Speed of light (m/s), exact. */
    public static final double LIGHT = 299_792_458;

    /** Magnetic constant µ0 (H/m), CODATA 2018. */
    public static final double MU = 1.25663706212e-6;

    /** Electric constant ε0 (F/m). */
    public static final double EPSILON = 1 / (MU * LIGHT * LIGHT);

    /** Wave impedance η0 (Ω). */
    public static final double IMPEDANCE = MU * LIGHT;

    private FreeSpace() {}

    /** Wavelength (m) at a frequency (Hz). */
    public static double wavelength(double frequency) {
        return LIGHT / positive(frequency, "frequency");
    }

    /** k = 2π/λ (1/m) at a frequency (Hz). */
    public static double waveNumber(double frequency) {
        return 2 * Math.PI * positive(frequency, "frequency") / LIGHT;
    }

    /** λ/2π (m) at a frequency (Hz): nearer than this the near field rules. */
    public static double nearFieldBoundary(double frequency) {
        return 1 / waveNumber(frequency);
    }

    static double positive(double value, String what) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(what + " must be positive, not " + value);
        }
        return value;
    }
}
