package galena.trade.device;

/**
 * Capacitance of a tuning diode, C0/(1 + VR/φ)^m. For the steep junctions of medium-wave types φ and m describe the
 * printed curve and are no junction constants, so the law holds inside the printed voltages alone.
 *
 * @param type type number
 * @param capacitance C0 (F), the law carried to zero bias
 * @param potential φ (V)
 * @param grading m
 * @param seriesResistance (Ω)
 * @param lowestReverse least reverse voltage the fit stands on (V)
 * @param highestReverse greatest one (V)
 */
public record TuningDiodeModel(
        String type,
        double capacitance,
        double potential,
        double grading,
        double seriesResistance,
        double lowestReverse,
        double highestReverse) {
    /**
     * Capacitance (F) at {@code reverse} volts.
     *
     * @throws IllegalArgumentException outside the printed voltages
     */
    public double capacitanceAt(double reverse) {
        if (!(reverse >= lowestReverse && reverse <= highestReverse)) {
            throw new IllegalArgumentException(type + " is printed from " + lowestReverse + " to " + highestReverse
                    + " V of reverse bias, not at " + reverse + " V");
        }
        return Depletion.capacitance(capacitance, potential, grading, -reverse);
    }

    TuningDiodeModel scaled(double factor) {
        return new TuningDiodeModel(
                type, capacitance * factor, potential, grading, seriesResistance, lowestReverse, highestReverse);
    }
}
