package galena.trade.field;

/**
 * Short vertical monopole on perfect ground, the reference of ITU-R P.368: 1 kW makes 300 mV/m at 1 km, with η = 120π.
 * Radiation term alone, so beyond about λ/2π only.
 */
public final class ReferenceRadiator {
    private static final double DIRECTIVITY = 3;

    /** Lb = 142.0 + 20·log(f/MHz) − E(dBµV/m for 1 kW), ITU-R P.368-10, note 1. */
    private static final double LOSS_CONSTANT = 142.0;

    private ReferenceRadiator() {}

    /** E = √(90·P)/d (V/m, rms), η taken as 120π as P.368 does. */
    public static double field(double radiatedPower, double distance) {
        return Math.sqrt(90 * radiatedPower) / FreeSpace.positive(distance, "distance");
    }

    /** The same with the exact η0: E = √(η·3·P/4π)/d (V/m, rms). */
    public static double exactField(double radiatedPower, double distance) {
        return Math.sqrt(FreeSpace.IMPEDANCE * DIRECTIVITY * radiatedPower / (4 * Math.PI))
                / FreeSpace.positive(distance, "distance");
    }

    /** P = (E·d)²/90 (W). */
    public static double powerFor(double field, double distance) {
        double ed = field * distance;
        return ed * ed / 90;
    }

    /**
     * Basic transmission loss (dB).
     *
     * @param frequency (Hz)
     * @param fieldOfReference E in dB above 1 µV/m that the 1 kW reference would make
     */
    public static double basicTransmissionLoss(double frequency, double fieldOfReference) {
        return LOSS_CONSTANT + 20 * Math.log10(FreeSpace.positive(frequency, "frequency") / 1e6) - fieldOfReference;
    }
}
