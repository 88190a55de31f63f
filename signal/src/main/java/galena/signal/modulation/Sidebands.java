package galena.signal.modulation;

import galena.signal.Estimate;
import galena.signal.fit.RiceInterval;
import galena.signal.fit.SeriesFit;

/**
 * The first pair of sidebands, each over the carrier, from the in-phase and quadrature series. Depth from their sum is a
 * cross-check of the envelope: swing in step with the audio makes the pair unequal.
 *
 * @param lower amplitude of the lower sideband over the carrier, a fraction
 * @param upper amplitude of the upper sideband over the carrier, a fraction
 */
public record Sidebands(Estimate lower, Estimate upper) {
    /**
     * @param along fit of the part of z along the carrier's slow phase
     * @param across fit of the part across it, at the same tone
     * @param gain of the filter at the tone
     */
    static Sidebands of(SeriesFit along, SeriesFit across, double gain) {
        double carrier = Math.hypot(along.trend(0).value(), across.trend(0).value());
        double upper = Math.hypot(along.cosine(1) + across.sine(1), across.cosine(1) - along.sine(1)) / 2;
        double lower = Math.hypot(along.cosine(1) - across.sine(1), across.cosine(1) + along.sine(1)) / 2;
        double sigma = Math.hypot(along.sigmaOfHarmonic(1), across.sigmaOfHarmonic(1)) / 2;
        return new Sidebands(
                RiceInterval.of(lower, sigma).map(a -> a / carrier / gain),
                RiceInterval.of(upper, sigma).map(a -> a / carrier / gain));
    }

    /** Depth of the fundamental that the pair stands for, a fraction. */
    public Estimate depth() {
        double m = Depth.fromSidebands(lower.value(), upper.value(), 1);
        double half = Math.hypot(lower.halfWidth(), upper.halfWidth());
        return new Estimate(m, m - half, m + half);
    }
}
