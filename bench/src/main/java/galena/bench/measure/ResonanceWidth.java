package galena.bench.measure;

import galena.signal.Estimate;

/** Q from the two frequencies at which a resonance has fallen by 3 dB (to 0.707 of the voltage). */
public final class ResonanceWidth {
    private ResonanceWidth() {}

    /**
     * @param lower frequency 3 dB down (Hz)
     * @param upper frequency 3 dB down (Hz)
     * @return √(lower·upper)/(upper − lower), loaded by whatever hangs on the circuit
     */
    public static Estimate q(Estimate lower, Estimate upper) {
        if (!(lower.low() > 0) || !(upper.low() > lower.high())) {
            throw new IllegalArgumentException(
                    "The upper frequency must lie above the lower by more than their uncertainty");
        }
        return Propagation.of(f -> Math.sqrt(f[0] * f[1]) / (f[1] - f[0]), lower, upper);
    }
}
