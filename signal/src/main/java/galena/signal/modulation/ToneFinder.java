package galena.signal.modulation;

import galena.signal.carrier.CarrierFinder;
import galena.signal.carrier.Samples;
import galena.signal.fit.SeriesFit;
import java.util.List;
import java.util.Optional;

/**
 * Finds the steady tone in an envelope. A transform finds it in a long record; in a record of a few periods, where the
 * tone hides under the mean's skirt, single tones are fitted one after another instead.
 */
final class ToneFinder {
    /** Periods below which the transform is not trusted alone. */
    private static final double FEW = 12;
    /** Fewest periods of a tone that can be told from a slow change. */
    static final double FEWEST = 2.5;

    private ToneFinder() {}

    /** A refined single-tone fit; empty if none can be made. */
    static Optional<SeriesFit> find(double[] envelope, double interval, double top) {
        double span = envelope.length * interval;
        Optional<SeriesFit> best = CarrierFinder.strongest(Samples.real(envelope, interval), 0, top)
                .flatMap(line -> single(envelope, interval, top, line.frequency(), true));
        if (best.isPresent() && best.get().frequency().value() * span > FEW) return best;
        double bestAmplitude = best.map(ToneFinder::amplitude).orElse(0.0), start = 0;
        for (double f = FEWEST / span; f < FEW / span && f < top; f += 0.2 / span) {
            Optional<SeriesFit> fit = single(envelope, interval, top, f, false);
            if (fit.isPresent() && amplitude(fit.get()) > bestAmplitude) {
                bestAmplitude = amplitude(fit.get());
                start = f;
            }
        }
        return start == 0 ? best : single(envelope, interval, top, start, true);
    }

    private static Optional<SeriesFit> single(double[] y, double interval, double top, double f, boolean refined) {
        return SeriesFit.of(y, null, interval, top, new SeriesFit.Model(f, refined, 1, List.of(), 0));
    }

    static double amplitude(SeriesFit fit) {
        return Math.hypot(fit.cosine(1), fit.sine(1));
    }
}
