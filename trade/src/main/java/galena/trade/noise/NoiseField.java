package galena.trade.noise;

import galena.trade.field.FreeSpace;

/**
 * Noise as a field in a bandwidth: En = Fa + 20·log10(f/MHz) + 10·log10(b/Hz) − 95.5 dBµV/m for a short monopole over
 * perfect ground (ITU-R P.372); the constant is worked out from E² = 640·π²·k·T0·b/λ², T0 = 290 K.
 *
 * @param low exceeded nine tenths of the time (V/m, rms)
 * @param median (V/m, rms)
 * @param high exceeded a tenth of the time (V/m, rms)
 */
public record NoiseField(double low, double median, double high) {
    private static final double BOLTZMANN = 1.380649e-23;
    private static final double REFERENCE_TEMPERATURE = 290;

    /** kT0 in dB above 1 mW in 1 Hz. */
    public static double thermalDensity() {
        return 10 * Math.log10(BOLTZMANN * REFERENCE_TEMPERATURE) + 30;
    }

    /** Constant of En for the short monopole over perfect ground (dB), printed as −95.5. */
    public static double monopoleConstant() {
        double wavelength = FreeSpace.wavelength(1e6);
        double square = 640 * Math.PI * Math.PI * BOLTZMANN * REFERENCE_TEMPERATURE / (wavelength * wavelength);
        return 10 * Math.log10(square) + 120;
    }

    /** The same for a half-wave dipole in free space (dB), printed as −98.9. */
    public static double dipoleConstant() {
        double wavelength = FreeSpace.wavelength(1e6);
        double square = 4
                * Math.PI
                * FreeSpace.IMPEDANCE
                * BOLTZMANN
                * REFERENCE_TEMPERATURE
                / (1.64 * wavelength * wavelength);
        return 10 * Math.log10(square) + 120;
    }

    /** En (dB above 1 µV/m) of a noise figure (dB) at a frequency (Hz) in a bandwidth (Hz). */
    public static double decibels(double noiseFigure, double frequency, double bandwidth) {
        return noiseFigure + 20 * Math.log10(frequency / 1e6) + 10 * Math.log10(bandwidth) + monopoleConstant();
    }

    /**
     * Outdoors by the Recommendation, indoors with an excess.
     *
     * @param environment surroundings
     * @param frequency (Hz)
     * @param bandwidth of the receiver before detection (Hz)
     * @param excess what a room adds to it (dB), entered; 0 outdoors
     */
    public static NoiseField of(Environment environment, double frequency, double bandwidth, double excess) {
        if (!(bandwidth > 0) || !Double.isFinite(excess)) {
            throw new IllegalArgumentException("a bandwidth is positive and an excess finite");
        }
        if (environment == Environment.GALACTIC) {
            throw new IllegalArgumentException(
                    "galactic noise doesn't reach the ground at medium waves; it isn't man-made");
        }
        double median = decibels(environment.median(frequency) + excess, frequency, bandwidth);
        return new NoiseField(
                volts(median - environment.lowerDecile()), volts(median), volts(median + environment.upperDecile()));
    }

    /**
     * A noise measured in the room instead, which then stands for itself.
     *
     * @param reading field of the noise in the receiver's bandwidth (V/m, rms)
     */
    public static NoiseField measured(double reading) {
        if (!(reading >= 0) || Double.isInfinite(reading)) {
            throw new IllegalArgumentException("a noise is zero or more, not " + reading);
        }
        return new NoiseField(reading, reading, reading);
    }

    private static double volts(double decibelMicrovolts) {
        return 1e-6 * Math.pow(10, decibelMicrovolts / 20);
    }
}
