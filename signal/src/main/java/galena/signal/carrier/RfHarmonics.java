package galena.signal.carrier;

import galena.signal.Estimate;
import galena.signal.fit.RiceInterval;
import galena.signal.spectrum.Fourier;
import galena.signal.spectrum.Window;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Harmonics of the carrier itself in a real capture. Each is taken along n times the carrier's own tracked phase, so that
 * drift and swing do not smear it, under a window that keeps the carrier out of it.
 */
public final class RfHarmonics {
    private RfHarmonics() {}

    /**
     * One harmonic.
     *
     * @param order n ≥ 2
     * @param ratio amplitude over the carrier's, a fraction
     * @param floor what noise alone may show in 95 % of cases, over the carrier's amplitude
     */
    public record Harmonic(int order, Estimate ratio, double floor) {
        /** Whether noise alone explains it. */
        public boolean belowFloor() {
            return ratio.low() <= 0;
        }
    }

    /**
     * Harmonics 2..highest that lie below half the sample rate, by a margin that keeps them clear of their images.
     *
     * @param samples a real capture, read
     * @param z its baseband
     * @param phase of the carrier (rad) at the samples of z, read
     */
    public static List<Harmonic> of(Samples samples, Baseband z, double[] phase, int highest) {
        double f0 = z.mixedWith();
        int top = (int) Math.min(highest, Math.floor(0.98 * samples.rate() / 2 / f0));
        if (top < 2) return List.of();
        double ratio = z.interval() / samples.interval();
        int first = (int) Math.ceil(z.start() / samples.interval());
        int count = (int) Math.floor((z.length() - 1) * ratio);
        double[] re = new double[top + 1], im = new double[top + 1];
        double weights = 0, squares = 0;
        for (int k = 0; k < count; k++) {
            double at = (first + k - z.start() / samples.interval()) / ratio;
            int a = Math.min(z.length() - 2, (int) at);
            double slow = phase[a] + (at - a) * (phase[a + 1] - phase[a]);
            double turns = f0 * samples.interval() * (first + k);
            double angle = 2 * Math.PI * (turns - Math.rint(turns)) + slow;
            double w = Window.BLACKMAN_HARRIS.at(k, count), x = w * samples.re(first + k);
            weights += w;
            squares += w * w;
            double c1 = Math.cos(angle), s1 = -Math.sin(angle), c = 1, s = 0;
            for (int n = 1; n <= top; n++) {
                double next = c * c1 - s * s1;
                s = s * c1 + c * s1;
                c = next;
                re[n] += x * c;
                im[n] += x * s;
            }
        }
        double carrier = 2 * Math.hypot(re[1], im[1]) / weights;
        LocalNoise noise = new LocalNoise(samples);
        List<Harmonic> out = new ArrayList<>();
        for (int n = 2; n <= top; n++) {
            double amplitude = 2 * Math.hypot(re[n], im[n]) / weights;
            double variance = noise.varianceNear(n * f0, z.passband());
            double sigma = Math.sqrt(2 * variance * squares) / weights;
            double floor = RiceInterval.NOISE_95 * sigma / carrier;
            out.add(new Harmonic(n, RiceInterval.of(amplitude, sigma).map(a -> a / carrier), floor));
        }
        return out;
    }

    /** Noise of the raw samples near a frequency, beside the line and its sidebands. */
    private static final class LocalNoise {
        private static final int LONGEST = 1 << 18;
        private static final int SHORT = 1 << 15;

        private final double[] power;
        private final double bin;
        private final double scale;

        LocalNoise(Samples samples) {
            // a long record is cut to a length that transforms fast: the noise is a median over thousands of bins
            // anyway
            int n = samples.length() < SHORT
                    ? samples.length()
                    : Math.min(LONGEST, Integer.highestOneBit(samples.length()));
            double[] x = new double[n];
            for (int k = 0; k < n; k++) x[k] = samples.re(k);
            power = Fourier.power(Fourier.ofReal(Window.BLACKMAN_HARRIS.applied(x), n));
            bin = samples.rate() / n;
            double gain = Window.BLACKMAN_HARRIS.coherentGain();
            scale = n * gain * gain * Window.BLACKMAN_HARRIS.noiseBandwidth();
        }

        /** White-equivalent variance per sample; the median keeps other lines out of it. */
        double varianceNear(double f, double guard) {
            int middle = (int) Math.round(f / bin),
                    inner = (int) Math.max(8, guard / bin),
                    outer = Math.max(inner + 64, 3 * inner);
            double[] near = new double[2 * (outer - inner)];
            int count = 0;
            for (int d = inner; d < outer; d++) {
                if (middle - d > 8) near[count++] = power[middle - d];
                if (middle + d < power.length - 2) near[count++] = power[middle + d];
            }
            if (count == 0) return power[Math.min(middle, power.length - 1)] / scale;
            Arrays.sort(near, 0, count);
            return near[count / 2] / Math.log(2) / scale; // squared magnitudes of noise are exponential
        }
    }
}
