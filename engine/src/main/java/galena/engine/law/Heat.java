package galena.engine.law;

/** Temperatures and what follows from them alone. */
public final class Heat {
    /** Boltzmann's constant over the elementary charge, volts per kelvin (both exact in the SI of 2019). */
    public static final double VOLTS_PER_KELVIN = 1.380649e-23 / 1.602176634e-19;

    private static final double ZERO_CELSIUS = 273.15;

    /** Kelvin at which device values are stated: 25 °C. */
    public static final double REFERENCE = ZERO_CELSIUS + 25;

    private Heat() {}

    public static double kelvin(double celsius) {
        return ZERO_CELSIUS + celsius;
    }

    /** kT/q in volts at a temperature in °C. */
    public static double thermalVoltage(double celsius) {
        return VOLTS_PER_KELVIN * kelvin(celsius);
    }
}
