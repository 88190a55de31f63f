package galena.engine.part;

/**
 * A pn junction: Shockley's law, depletion charge and diffusion charge. Current i = saturationCurrent · (exp(v / (emission ·
 * V_T)) − 1) + leakage · v. Depletion capacitance C₀ / (1 − v/φ)^m up to v = forwardFraction · φ, continued above by its
 * tangent: the law is singular at φ, where no depletion region is left, and above φ/2 measured capacitance leaves it; the
 * tangent keeps charge and capacitance continuous and errs by less than 4 % of C₀ at 0.6 φ for m = 1/2. Diffusion charge
 * transitTime · i.
 *
 * @param saturationCurrent amperes at 25 °C
 * @param emission coefficient, 1 to 2 for silicon
 * @param zeroBiasCapacitance farads, zero or above
 * @param builtIn φ, volts
 * @param grading m
 * @param transitTime seconds
 * @param leakage siemens across the junction, a property of the device
 * @param forwardFraction of φ where the tangent takes over
 * @param energyGap electronvolts, for the temperature law of the saturation current
 * @param temperatureExponent of the saturation current, XTI in I_S ∝ T^(XTI/n)
 */
public record Junction(
        double saturationCurrent,
        double emission,
        double zeroBiasCapacitance,
        double builtIn,
        double grading,
        double transitTime,
        double leakage,
        double forwardFraction,
        double energyGap,
        double temperatureExponent) {
    /** Leakage where the sheet gives none: far below what any printed reverse current allows. */
    public static final double USUAL_LEAKAGE = 1e-12;

    /** Band gap of silicon, eV, at 300 K. */
    public static final double SILICON_GAP = 1.11;

    public Junction {
        Require.positive("junction", "saturation current", saturationCurrent, "A");
        Require.within("junction", "emission coefficient", emission, 0.5, 4, "");
        Require.notNegative("junction", "zero-bias capacitance", zeroBiasCapacitance, "F");
        Require.within("junction", "built-in potential", builtIn, 0.1, 5, "V");
        Require.within("junction", "grading", grading, 0, 2, "");
        Require.notNegative("junction", "transit time", transitTime, "s");
        Require.notNegative("junction", "leakage", leakage, "S");
        Require.within("junction", "forward fraction", forwardFraction, 0, 0.95, "");
        Require.within("junction", "energy gap", energyGap, 0.1, 4, "eV");
        Require.finite("junction", "temperature exponent", temperatureExponent, "");
    }

    /** Silicon with the usual leakage, gap and exponent 3, tangent from φ/2. */
    public static Junction silicon(
            double saturationCurrent,
            double emission,
            double zeroBiasCapacitance,
            double builtIn,
            double grading,
            double transitTime) {
        return new Junction(
                saturationCurrent,
                emission,
                zeroBiasCapacitance,
                builtIn,
                grading,
                transitTime,
                USUAL_LEAKAGE,
                0.5,
                SILICON_GAP,
                3);
    }

    /** The same junction with another leakage (S). */
    public Junction withLeakage(double siemens) {
        return new Junction(
                saturationCurrent,
                emission,
                zeroBiasCapacitance,
                builtIn,
                grading,
                transitTime,
                siemens,
                forwardFraction,
                energyGap,
                temperatureExponent);
    }
}
