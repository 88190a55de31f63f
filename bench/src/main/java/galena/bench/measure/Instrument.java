package galena.bench.measure;

/**
 * What an instrument adds to every reading, as 95 % limits. Defaults are common practice for an 8-bit scope, not a claim
 * about anybody's.
 *
 * @param clockPpm error of the time base (parts per million)
 * @param gainPercent error of the vertical gain, probe included (%)
 * @param bendPercent how far its scale is from straight (% of full scale, taken as the largest envelope)
 * @param trustDbc harmonics of the carrier below this (dBc) may be the converter's own
 */
public record Instrument(double clockPpm, double gainPercent, double bendPercent, double trustDbc) {
    /** A scope nobody has checked: 50 ppm, 3 %, 0.5 % (about one step of 8 bits), −50 dBc without a null capture. */
    public static final Instrument USUAL = new Instrument(50, 3, 0.5, -50);

    public Instrument {
        if (!(clockPpm >= 0)
                || !(gainPercent >= 0)
                || !(bendPercent >= 0)
                || !(trustDbc < 0)
                || Double.isInfinite(clockPpm + gainPercent + bendPercent + trustDbc)) {
            throw new IllegalArgumentException("Errors are not negative, the trust limit is below 0 dBc");
        }
    }
}
