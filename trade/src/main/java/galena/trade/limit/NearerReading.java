package galena.trade.limit;

/**
 * Readings nearer than the stated distance, below 30 MHz, as 47 CFR 15.31(f)(2) carries them over: 40 dB per decade of
 * distance. A convention of that rule. A small loop's own field falls by 60 dB per decade in H and 40 in E well inside
 * λ/2π, which {@link galena.trade.field.Radiator} tells exactly.
 */
public final class NearerReading {
    private NearerReading() {}

    /**
     * What may be read nearer by.
     *
     * @param limit at the stated distance, any unit of field
     * @param stated distance of the limit (m)
     * @param reading distance of the reading (m)
     * @return the limit at the reading's distance, in the unit of {@code limit}
     */
    public static double allowed(double limit, double stated, double reading) {
        if (!(stated > 0) || !(reading > 0)) throw new IllegalArgumentException("distances are positive");
        double ratio = stated / reading;
        return limit * ratio * ratio;
    }
}
