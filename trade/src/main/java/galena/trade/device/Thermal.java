package galena.trade.device;

/** kT/q at the 25 °C of data sheets. */
final class Thermal {
    /** (V), from the exact constants of the SI: k = 1.380649e-23 J/K, q = 1.602176634e-19 C. */
    static final double VOLTAGE = 1.380649e-23 * 298.15 / 1.602176634e-19;

    private Thermal() {}
}
