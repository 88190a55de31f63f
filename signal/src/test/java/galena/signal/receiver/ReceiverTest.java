package galena.signal.receiver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import galena.proof.Kind;
import galena.proof.Published;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The parts of a set against the closed forms of their trade. */
class ReceiverTest {
    private static final double RATE = 96_000;
    private static final int BLOCK = 1920;

    /** Warping of the bilinear transform, (πδ/rate)²/3 of the offset, at 10 kHz of 2 MHz. */
    private static final double WARPED = 1e-3;

    private static final Published FILTER = Published.source(
            "signal",
            Kind.CLOSED_FORM,
            "Maximally flat filter of n circuits, S. Butterworth, Exp. Wireless 7 (1930) 536");

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5})
    void a_filter_falls_as_its_circuits_say(int circuits) {
        TunedFilter filter = new TunedFilter(circuits, 9000, 2e6);
        for (double offset : new double[] {0, 1000, 4500, -4500, 7000, 10_000}) {
            double[] b = filter.response(offset);
            double expected = 1 / Math.sqrt(1 + Math.pow(offset / 4500, 2 * circuits));
            FILTER.matches(
                    circuits + " circuits, " + offset + " Hz off the middle", expected, Math.hypot(b[0], b[1]), WARPED);
        }
        double sum = 0, step = 20;
        for (double offset = -400e3; offset <= 400e3; offset += step) {
            double[] b = filter.response(offset);
            sum += step * (b[0] * b[0] + b[1] * b[1]);
        }
        // one circuit's skirts reach beyond the sum, 2/π · 4.5/400 of the whole, and end at half the rate
        double skirts = circuits == 1 ? 0.012 : 2e-3;
        FILTER.matchesRelative("noise bandwidth of " + circuits + " circuits", filter.noiseBandwidth(), sum, skirts);
    }

    @Test
    void what_comes_out_of_a_filter_is_its_response() {
        for (double offset : new double[] {-3000, 700, 6000}) {
            TunedFilter filter = new TunedFilter(3, 9000, RATE);
            double[] i = new double[9600], q = new double[9600];
            for (int n = 0; n < i.length; n++) {
                i[n] = Math.cos(2 * Math.PI * offset * n / RATE);
                q[n] = Math.sin(2 * Math.PI * offset * n / RATE);
            }
            filter.process(i, q, i.length);
            double[] b = filter.response(offset);
            double angle = 2 * Math.PI * offset * 9599 / RATE;
            assertThat(i[9599]).isCloseTo(b[0] * Math.cos(angle) - b[1] * Math.sin(angle), within(1e-9));
            assertThat(q[9599]).isCloseTo(b[1] * Math.cos(angle) + b[0] * Math.sin(angle), within(1e-9));
        }
    }

    /** Envelope 1 + m sin, through a detector; whether it ever hung, and the lowest voltage. */
    private static final class Trial implements DiodeDetector.Listener {
        private boolean hung;
        private double lowest = 2;

        Trial(double depth, double tone, double timeConstant, double share) {
            DiodeDetector detector = new DiodeDetector(timeConstant, share, RATE, this);
            double[] envelope = new double[96_000], audio = new double[96_000];
            for (int n = 0; n < envelope.length; n++) envelope[n] = 1 + depth * Math.sin(2 * Math.PI * tone * n / RATE);
            detector.process(envelope, envelope.length, audio);
            for (int n = 48_000; n < audio.length; n++) lowest = Math.min(lowest, 1 + audio[n]);
        }

        @Override
        public void hangs(long sample) {
            hung = true;
        }

        @Override
        public void follows(long sample) {
            // how often is of no interest here
        }
    }

    @ParameterizedTest
    @CsvSource({"0.3, 1000", "0.5, 3000", "0.8, 1000", "0.9, 400"})
    void a_detector_follows_up_to_the_largest_time_constant(double depth, double tone) {
        Published diagonal = Published.source(
                "signal",
                Kind.CLOSED_FORM,
                "No diagonal clipping while RC ≤ √(1 − m²)/(2πf·m): the envelope's steepest fall against a discharge");
        double greatest = DiodeDetector.greatestTimeConstant(depth, tone);
        String what = "m = " + depth + " at " + tone + " Hz";
        boolean below = new Trial(depth, tone, 0.97 * greatest, 1).hung;
        boolean above = new Trial(depth, tone, 1.4 * greatest, 1).hung;
        diagonal.holds("follows at 0.97 of it, " + what, !below, below ? "hung" : "followed");
        diagonal.holds("hangs at 1.4 of it, " + what, above, above ? "hung" : "followed");
        assertThat(DiodeDetector.highestTone(depth, greatest)).isCloseTo(tone, within(1e-9 * tone));
    }

    @Test
    void a_trough_is_cut_where_the_audio_load_is_lower_than_the_direct_one() {
        Published trough = Published.source(
                "signal",
                Kind.CLOSED_FORM,
                "Deepest modulation that a detector passes: audio over direct load resistance");
        Trial cut = new Trial(0.9, 2000, 10e-6, 0.7), whole = new Trial(0.6, 2000, 10e-6, 0.7);
        // the coupling capacitor holds the mean of what is left, which the cut itself lifts
        trough.matches("lowest voltage, m = 0.9 on 0.7", 1 - 0.7 * meanOfCut(0.9, 0.7), cut.lowest, 0.01);
        trough.matches("lowest voltage, m = 0.6 on 0.7", 0.4, whole.lowest, 0.01);
    }

    /** c = mean of max(1 + m sin, (1 − share) c). */
    private static double meanOfCut(double depth, double share) {
        double c = 1;
        for (int pass = 0; pass < 50; pass++) {
            double sum = 0;
            for (int k = 0; k < 3600; k++)
                sum += Math.max(1 + depth * Math.sin(2 * Math.PI * k / 3600), (1 - share) * c) / 3600;
            c = sum;
        }
        return c;
    }

    @Test
    void gain_settles_by_its_closed_form() {
        Published agc = Published.source(
                "signal", Kind.CLOSED_FORM, "d ln g/dt = (1 − v)/τ after a step: 1/v = 1 + (1/v0 − 1) e^(−t/τ)");
        double tau = 0.2;
        for (double level : new double[] {3, 0.25}) {
            GainControl control = new GainControl(tau, 20_000);
            for (int n = 1; n <= 20_000; n++) {
                control.follow(level * control.gain());
                double t = n / 20_000.0;
                if (n % 4000 != 0) continue;
                double expected = 1 / (1 + (1 / level - 1) * Math.exp(-t / tau));
                agc.matches("voltage " + t + " s after a step to " + level, expected, level * control.gain(), 1e-3);
            }
        }
    }

    @Test
    void noise_is_gaussian_and_the_same_every_time() {
        Noise noise = new Noise(7), again = new Noise(7);
        int n = 1_000_000, beyond3 = 0;
        double sum = 0, square = 0, fourth = 0;
        for (int k = 0; k < n; k++) {
            double x = noise.next();
            assertThat(again.next()).isEqualTo(x);
            sum += x;
            square += x * x;
            fourth += x * x * x * x;
            if (Math.abs(x) > 3) beyond3++;
        }
        // four standard errors of each
        Published normal = Published.source(
                "signal", Kind.CLOSED_FORM, "Normal distribution: moments 0, 1, 3; 2.6998e-3 beyond 3");
        normal.matches("mean", 0, sum / n, 4e-3);
        normal.matches("variance", 1, square / n, 6e-3);
        normal.matches("fourth moment", 3, fourth / n, 0.04);
        normal.matches("share beyond 3", 2.6998e-3, beyond3 / (double) n, 2.1e-4);
    }

    private static final ReceiverSettings WIDE = new ReceiverSettings(3, 9000, 0, 1e-6, 1, Double.POSITIVE_INFINITY);

    @Test
    void audio_stands_over_noise_as_depth_times_carrier_over_noise() {
        Published snr = Published.source(
                "signal",
                Kind.CLOSED_FORM,
                "Envelope detector well above its threshold: audio signal-to-noise m·E/En in the filter's bandwidth");
        double ratio = 0.02, depth = 0.5;
        Receiver set = new Receiver(WIDE, RATE, BLOCK, ratio, 3, DiodeDetector.UNHEARD);
        double[] i = new double[BLOCK], q = new double[BLOCK], audio = new double[BLOCK];
        double re = 0, im = 0, square = 0;
        long count = 0;
        for (int block = 0; block < 400; block++) {
            for (int n = 0; n < BLOCK; n++) {
                i[n] = 1 + depth * Math.sin(2 * Math.PI * 1000 * n / RATE);
                q[n] = 0;
            }
            set.process(i, q, BLOCK, audio);
            if (block < 20) continue;
            for (int n = 0; n < BLOCK; n++) {
                double angle = 2 * Math.PI * 1000 * n / RATE;
                re += audio[n] * Math.cos(angle);
                im += audio[n] * Math.sin(angle);
                square += audio[n] * audio[n];
                count++;
            }
        }
        double signal = 2 * (re * re + im * im) / ((double) count * count), noise = square / count - signal;
        double found = 10 * Math.log10(signal / noise), expected = 20 * Math.log10(depth / ratio);
        // a twentieth: 4 s of 9 kHz hold 36000 independent values; the ideal diode favours noise peaks a little
        snr.matches("signal-to-noise, dB", expected, found, 0.35);
    }

    @Test
    void mistuning_lets_one_sideband_through_and_loses_treble_and_gain_control_makes_up() {
        double[] level = new double[2];
        for (int k = 0; k < 2; k++) {
            ReceiverSettings settings = new ReceiverSettings(3, 9000, k * 4000, 1e-6, 1, 0.1);
            Receiver set = new Receiver(settings, RATE, BLOCK, 0, 3, DiodeDetector.UNHEARD);
            double[] i = new double[BLOCK], q = new double[BLOCK], audio = new double[BLOCK];
            for (int block = 0; block < 50; block++) {
                for (int n = 0; n < BLOCK; n++) {
                    i[n] = 1 + 0.3 * Math.sin(2 * Math.PI * 1000 * n / RATE);
                    q[n] = 0;
                }
                set.process(i, q, BLOCK, audio);
            }
            for (double a : audio) level[k] = Math.max(level[k], Math.abs(a));
        }
        assertThat(level[0]).isCloseTo(0.3, within(0.01));
        assertThat(level[1]).isBetween(0.15, 0.45);
    }

    @Test
    void blocks_allocate_nothing() {
        Receiver set = new Receiver(WIDE.mistunedBy(500), RATE, BLOCK, 0.01, 3, DiodeDetector.UNHEARD);
        double[] i = new double[BLOCK], q = new double[BLOCK], audio = new double[BLOCK];
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long self = Thread.currentThread().getId(), least = Long.MAX_VALUE;
        for (int round = 0; round < 6; round++) {
            long before = threads.getThreadAllocatedBytes(self);
            for (int k = 0; k < 20; k++) {
                java.util.Arrays.fill(i, 1);
                set.process(i, q, BLOCK, audio);
            }
            least = Math.min(least, threads.getThreadAllocatedBytes(self) - before);
        }
        assertThat(least).isZero();
    }

    @Test
    void the_guard_fades_in_and_never_passes_its_ceiling() {
        OutputGuard guard = new OutputGuard(48_000);
        double[] loud = new double[48_000];
        java.util.Arrays.fill(loud, 5);
        loud[30_000] = 0.3;
        guard.process(loud, loud.length);
        assertThat(loud[0]).isZero();
        assertThat(loud[2400]).isLessThan(0.2);
        assertThat(loud[30_000]).isEqualTo(0.3);
        for (double x : loud) assertThat(x).isLessThanOrEqualTo(OutputGuard.CEILING);
        assertThat(guard.bent()).isPositive();
    }

    @Test
    void what_no_set_has_is_refused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new TunedFilter(0, 9000, RATE));
        assertThatIllegalArgumentException().isThrownBy(() -> new TunedFilter(3, 90_000, RATE));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new DiodeDetector(1e-5, 1.2, RATE, DiodeDetector.UNHEARD))
                .withMessageContaining("share");
        assertThatIllegalArgumentException().isThrownBy(() -> new GainControl(0, 1));
    }
}
