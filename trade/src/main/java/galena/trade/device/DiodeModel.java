package galena.trade.device;

/**
 * Parameters of a diode: I = IS·(exp(V/(n·VT)) − 1) behind a series resistance, depletion charge of C0/(1−V/φ)^m and
 * stored charge TT·I.
 *
 * @param type type number
 * @param saturationCurrent IS (A) at 25 °C
 * @param emission n
 * @param seriesResistance (Ω)
 * @param capacitance C0 at zero bias (F)
 * @param builtInPotential φ (V)
 * @param grading m
 * @param transitTime TT (s)
 */
public record DiodeModel(
        String type,
        double saturationCurrent,
        double emission,
        double seriesResistance,
        double capacitance,
        double builtInPotential,
        double grading,
        double transitTime) {
    /** Forward voltage (V) at a current (A). */
    public double forwardVoltage(double current) {
        return emission * Thermal.VOLTAGE * Math.log1p(current / saturationCurrent) + seriesResistance * current;
    }
}
