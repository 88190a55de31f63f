package galena.signal.modulation;

import galena.signal.Estimate;
import galena.signal.fit.SeriesFit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * An envelope from peak-detected data, which hold the lowest and the highest value of each interval: E is half their
 * distance. It has no sign, so it folds over past 100 %, and noise widens it a little.
 */
public final class PairedEnvelope {
    private final EnvelopeFit fit;

    private PairedEnvelope(EnvelopeFit fit) {
        this.fit = fit;
    }

    /**
     * @param pairs lowest and highest alternating, in either order, read
     * @param interval between pairs (s)
     * @return empty when there is no steady tone
     */
    public static Optional<PairedEnvelope> of(double[] pairs, double interval) {
        double[] envelope = new double[pairs.length / 2];
        for (int k = 0; k < envelope.length; k++) envelope[k] = Math.abs(pairs[2 * k + 1] - pairs[2 * k]) / 2;
        if (envelope.length < 24) return Optional.empty();
        double top = 0.45 / interval;
        return ToneFinder.find(envelope, interval, top).flatMap(single -> {
            double f = single.frequency().value();
            int harmonics = (int) Math.max(1, Math.min(EnvelopeFit.HARMONICS, top / f));
            SeriesFit.Model model = new SeriesFit.Model(f, true, harmonics, List.of(), 1);
            return SeriesFit.of(envelope, null, interval, top, model)
                    .map(full -> new PairedEnvelope(new EnvelopeFit(full, x -> 1, OptionalDouble.empty())));
        });
    }

    /** Frequency of the tone (Hz). */
    public Estimate tone() {
        return fit.tone();
    }

    /** Emax over the mean envelope less 1, a fraction. */
    public Estimate positivePeak() {
        return fit.positivePeak();
    }

    /** 1 less Emin over the mean envelope, a fraction. */
    public Estimate negativePeak() {
        return fit.negativePeak();
    }

    /** Total distortion of the envelope, a fraction. */
    public Estimate distortion() {
        return fit.distortion();
    }
}
