package galena.bench.measure;

import galena.bench.capture.Waveforms;
import galena.signal.carrier.CarrierFinder;
import galena.signal.carrier.Samples;
import galena.signal.modulation.ModulatedCarrier;
import galena.signal.modulation.Trapezoid;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The trapezoid from a capture that holds the audio in a second channel. */
final class TwoChannels {
    private static final double HIGHEST_AUDIO = 20e3;
    private static final int POINTS = 600;

    private TwoChannels() {}

    /** Points to draw. */
    record Drawn(List<Double> points, List<Double> curve) {}

    static Optional<Drawn> trapezoid(Sheet sheet, Waveforms waves, int rf, ModulatedCarrier.Found found) {
        for (int c = 0; c < waves.channels().size(); c++) {
            if (c == rf) continue;
            double[] samples = waves.channels().get(c).samples();
            // an audio period is long against the search's head, so the line is sought in the thinned channel
            double[] audio = thinned(samples, waves.interval(), found);
            Optional<CarrierFinder.Line> line = CarrierFinder.strongest(Samples.real(audio, found.envelopeInterval()));
            if (line.isEmpty() || line.get().frequency() > HIGHEST_AUDIO) continue;
            double[] envelope = found.envelopeSamples();
            Optional<Trapezoid> shape = Trapezoid.of(audio, envelope, found.envelopeInterval());
            if (shape.isEmpty()) continue;
            Trapezoid t = shape.get();
            sheet.addShare(
                    "depth.trapezoid",
                    "depth by trapezoid",
                    t.depth(),
                    String.format(
                            Locale.ROOT,
                            "envelope against channel \"%s\"; bend %.1f %% of the carrier, envelope %.3g µs behind the audio",
                            waves.channels().get(c).name(),
                            100 * t.bend(),
                            t.delay() * 1e6));
            return Optional.of(new Drawn(points(audio, envelope), t.curve()));
        }
        return Optional.empty();
    }

    /** The channel averaged about each envelope sample. */
    private static double[] thinned(double[] samples, double interval, ModulatedCarrier.Found found) {
        int count = found.envelopeSamples().length;
        double[] out = new double[count];
        int half = Math.max(0, (int) (found.envelopeInterval() / interval / 2));
        for (int k = 0; k < count; k++) {
            int middle = (int) Math.round((found.envelopeStart() + k * found.envelopeInterval()) / interval);
            int from = Math.max(0, middle - half), to = Math.min(samples.length - 1, middle + half);
            double sum = 0;
            for (int n = from; n <= to; n++) sum += samples[n];
            out[k] = sum / Math.max(1, to - from + 1);
        }
        return out;
    }

    private static List<Double> points(double[] audio, double[] envelope) {
        List<Double> out = new ArrayList<>();
        int stride = Math.max(1, envelope.length / POINTS);
        for (int k = 0; k < envelope.length; k += stride) {
            out.add(audio[k]);
            out.add(envelope[k]);
        }
        return out;
    }
}
