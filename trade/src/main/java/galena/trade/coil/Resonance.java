package galena.trade.coil;

import galena.trade.wire.OutOfRange;

/**
 * What resonances with known capacitors tell of a coil: f = 1/(2π√(L(C + C₀))). Intervals take each input to its ends
 * in turn and add up what that does: the worst that the uncertainties allow.
 *
 * @param inductance free of self-capacitance (H)
 * @param selfCapacitance C₀, with whatever the jig adds (F); its low end may fall below zero when readings are coarse
 */
public record Resonance(Interval inductance, Interval selfCapacitance) {
    /** Inductance from resonance with one capacitance that includes every stray (H). */
    public static Interval inductance(Interval capacitance, Interval frequency) {
        positive(capacitance, frequency);
        return new Interval(
                inductance(capacitance.value(), frequency.value()),
                inductance(capacitance.high(), frequency.high()),
                inductance(capacitance.low(), frequency.low()));
    }

    /**
     * Inductance and self-capacitance from two resonances.
     *
     * @param capacitance1 the larger capacitor (F)
     * @param frequency1 where it resonates (Hz), the lower
     * @param capacitance2 the smaller capacitor (F)
     * @param frequency2 where it resonates (Hz)
     * @throws OutOfRange when capacitors or frequencies are too close to tell the two apart
     */
    public static Resonance ofTwo(
            Interval capacitance1, Interval frequency1, Interval capacitance2, Interval frequency2) {
        positive(capacitance1, frequency1);
        positive(capacitance2, frequency2);
        String apart = "Take capacitors at least 3 to 1 apart, or read more finely.";
        OutOfRange.require(
                "least of capacitor 1 over most of capacitor 2",
                capacitance1.low() / capacitance2.high(),
                1.1,
                Double.MAX_VALUE,
                apart);
        OutOfRange.require(
                "least of frequency 2 over most of frequency 1",
                frequency2.low() / frequency1.high(),
                1.02,
                Double.MAX_VALUE,
                apart);
        Interval[] inputs = {capacitance1, frequency1, capacitance2, frequency2};
        return new Resonance(worst(inputs, Resonance::twoInductance), worst(inputs, Resonance::twoCapacitance));
    }

    /** Inductance that a bridge or resonance would show at a frequency, L/(1 − (f/f₀)²) (H). */
    public static double apparentInductance(double inductance, double selfResonance, double frequency) {
        OutOfRange.require(
                "frequency over self-resonance", frequency / selfResonance, 0, 0.95, "There the coil is a capacitor.");
        double ratio = frequency / selfResonance;
        return inductance / (1 - ratio * ratio);
    }

    private static double inductance(double farads, double hertz) {
        double omega = 2 * Math.PI * hertz;
        return 1 / (omega * omega * farads);
    }

    private static double twoInductance(double... v) {
        return (1 / (v[1] * v[1]) - 1 / (v[3] * v[3])) / (4 * Math.PI * Math.PI * (v[0] - v[2]));
    }

    private static double twoCapacitance(double... v) {
        double square1 = v[1] * v[1], square2 = v[3] * v[3];
        return (v[0] * square1 - v[2] * square2) / (square2 - square1);
    }

    @FunctionalInterface
    private interface OfFour {
        double at(double... values);
    }

    private static Interval worst(Interval[] inputs, OfFour function) {
        double[] values = new double[inputs.length];
        for (int i = 0; i < inputs.length; i++) values[i] = inputs[i].value();
        double value = function.at(values), low = value, high = value;
        for (int i = 0; i < inputs.length; i++) {
            double[] ends = values.clone();
            ends[i] = inputs[i].low();
            double one = function.at(ends) - value;
            ends[i] = inputs[i].high();
            double other = function.at(ends) - value;
            low += Math.min(0, Math.min(one, other));
            high += Math.max(0, Math.max(one, other));
        }
        return new Interval(value, low, high);
    }

    private static void positive(Interval capacitance, Interval frequency) {
        OutOfRange.requirePositive("low end of the capacitance (F)", capacitance.low());
        OutOfRange.requirePositive("low end of the frequency (Hz)", frequency.low());
    }
}
