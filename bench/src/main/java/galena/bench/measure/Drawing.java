package galena.bench.measure;

import galena.signal.carrier.Samples;
import galena.signal.modulation.ModulatedCarrier;
import galena.signal.spectrum.Fourier;
import galena.signal.spectrum.Window;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Thins a capture to what a plot can show, extremes kept. */
final class Drawing {
    private static final int COLUMNS = 600;
    private static final int LONGEST = 1 << 18;
    /** Periods of the tone, or this time (s) without one, are drawn. */
    private static final double PERIODS = 3;

    private Drawing() {}

    static Pictures of(
            Samples samples, ModulatedCarrier.Found found, String unit, Optional<TwoChannels.Drawn> trapezoid) {
        double span = found.envelope().map(e -> PERIODS / e.tone().value()).orElse(5e-3);
        int shown = (int) Math.min(samples.length(), Math.max(64, span / samples.interval()));
        List<Double> times = new ArrayList<>(), low = new ArrayList<>(), high = new ArrayList<>();
        int per = Math.max(1, shown / COLUMNS);
        for (int k = 0; k + per <= shown && !samples.isComplex(); k += per) {
            double least = samples.re(k), most = least;
            for (int n = k; n < k + per; n++) {
                least = Math.min(least, samples.re(n));
                most = Math.max(most, samples.re(n));
            }
            times.add((k + per / 2.0) * samples.interval());
            low.add(least);
            high.add(most);
        }
        List<Double> envelopeTimes = new ArrayList<>(), envelope = new ArrayList<>();
        double[] e = found.envelopeSamples();
        int stride = Math.max(1, (int) (span / found.envelopeInterval() / COLUMNS));
        for (int k = 0; k < e.length && found.envelopeStart() + k * found.envelopeInterval() <= span; k += stride) {
            envelopeTimes.add(found.envelopeStart() + k * found.envelopeInterval());
            envelope.add(e[k]);
        }
        Spectrum spectrum = Spectrum.of(samples);
        return new Pictures(
                times,
                low,
                high,
                envelopeTimes,
                envelope,
                spectrum.frequencies,
                spectrum.levels,
                spectrum.floor,
                trapezoid.map(TwoChannels.Drawn::points).orElse(List.of()),
                trapezoid.map(TwoChannels.Drawn::curve).orElse(List.of()),
                unit);
    }

    private record Spectrum(List<Double> frequencies, List<Double> levels, double floor) {
        static Spectrum of(Samples samples) {
            int n = Math.min(LONGEST, samples.length());
            double[] re = new double[n], im = new double[n];
            for (int k = 0; k < n; k++) {
                double w = Window.BLACKMAN_HARRIS.at(k, n);
                re[k] = w * samples.re(k);
                im[k] = w * samples.im(k);
            }
            double[] power = Fourier.power(samples.isComplex() ? Fourier.ofComplex(re, im, n) : Fourier.ofReal(re, n));
            double[] sorted = power.clone();
            Arrays.sort(sorted);
            double top = Math.max(sorted[sorted.length - 1], 1e-300),
                    median = Math.max(sorted[sorted.length / 2], top * 1e-20);
            List<Double> frequencies = new ArrayList<>(), levels = new ArrayList<>();
            int per = Math.max(1, power.length / COLUMNS), shift = samples.isComplex() ? n / 2 + 1 : 0;
            for (int k = 0; k + per <= power.length; k += per) {
                double most = 0;
                for (int j = k; j < k + per; j++) most = Math.max(most, power[(j + shift) % power.length]);
                double bin = samples.isComplex() ? k + per / 2.0 + shift - n : k + per / 2.0;
                frequencies.add(bin * samples.rate() / n);
                levels.add(Math.max(-160, 10 * Math.log10(Math.max(most, 1e-300) / top)));
            }
            return new Spectrum(frequencies, levels, 10 * Math.log10(median / Math.log(2) / top));
        }
    }
}
