package galena.signal.modulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.signal.carrier.RingDown;
import galena.signal.carrier.Samples;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class ModulatedCarrierTest {
    private static final double RATE = 10e6;

    private static Samples samples(double seconds, double noise, DoubleUnaryOperator x) {
        Random random = new Random(2);
        double[] out = new double[(int) (seconds * RATE)];
        for (int k = 0; k < out.length; k++) out[k] = x.applyAsDouble(k / RATE) + noise * random.nextGaussian();
        return Samples.real(out, 1 / RATE);
    }

    private static ModulatedCarrier.Found measured(Samples samples, ModulatedCarrier.Known known) {
        ModulatedCarrier.Result result = ModulatedCarrier.of(samples, known);
        assertThat(result).isInstanceOf(ModulatedCarrier.Found.class);
        return (ModulatedCarrier.Found) result;
    }

    private static DoubleUnaryOperator am(double m) {
        return t -> (1 + m * Math.cos(2 * Math.PI * 1000 * t)) * Math.cos(2 * Math.PI * 1e6 * t);
    }

    /** Each sideband of an undistorted tone stands 20 log(m/2) below the carrier. */
    @Test
    void sidebands_stand_where_the_depth_puts_them() {
        Published source = Published.source(
                "signal",
                Kind.CLOSED_FORM,
                "Product of carrier and tone: sidebands at m/2 of the carrier; F. E. Terman, Radio Engineers' Handbook (1943), amplitude modulation (computed)");
        double[][] table = {{0.3, -16.4782}, {0.5, -12.0412}, {0.8, -7.9588}, {0.9, -6.9357}};
        for (double[] row : table) {
            ModulatedCarrier.Found found = measured(samples(0.01, 1e-3, am(row[0])), ModulatedCarrier.Known.nothing());
            Sidebands s = found.sidebands().orElseThrow();
            source.matches(
                    "depth " + row[0] + ", lower sideband, dBc",
                    row[1],
                    20 * Math.log10(s.lower().value()),
                    0.005);
            source.matches("depth " + row[0] + ", definition, dBc", row[1], Depth.sidebandLevel(row[0]), 5e-5);
            assertThat(s.depth().value())
                    .isCloseTo(found.envelope().orElseThrow().harmonic(1).value(), within(1e-3));
        }
    }

    /** D. C. Rife and R. R. Boorstyn, IEEE Trans. Inf. Theory 20 (1974) 591: var(ω) ≥ 12σ²/(A²T²N(N²−1)) for a cisoid with σ² on each part. */
    @Test
    void the_carriers_interval_is_that_of_the_cramer_rao_bound() {
        int n = 50_000;
        double amplitude = 1, sigma = 0.1, interval = 1 / RATE;
        Random random = new Random(4);
        double[] re = new double[n], im = new double[n];
        for (int k = 0; k < n; k++) {
            re[k] = amplitude * Math.cos(0.7 * k) + sigma * random.nextGaussian();
            im[k] = amplitude * Math.sin(0.7 * k) + sigma * random.nextGaussian();
        }
        ModulatedCarrier.Found found = measured(Samples.complex(re, im, interval), ModulatedCarrier.Known.nothing());
        double bound =
                Math.sqrt(12 * sigma * sigma / (amplitude * amplitude * interval * interval * n * ((double) n * n - 1)))
                        / (2 * Math.PI);
        double ours = found.frequency().halfWidth() / 1.96;
        Published.source(
                        "signal",
                        Kind.CLOSED_FORM,
                        "Cramér-Rao bound of a single tone's frequency, after Rife and Boorstyn (1974), formula from memory")
                .liesWithin("our standard deviation over the bound", 0.8, 1.5, ours / bound);
    }

    @Test
    void three_audio_periods_are_enough_and_two_and_a_half_are_not_a_tone() {
        ModulatedCarrier.Found found = measured(samples(0.0032, 1e-3, am(0.6)), ModulatedCarrier.Known.nothing());
        EnvelopeFit e = found.envelope().orElseThrow();
        assertThat(e.positivePeak().covers(0.6)).isTrue();
        assertThat(e.negativePeak().covers(0.6)).isTrue();
        assertThat(e.tone().value()).isCloseTo(1000, within(2.0));
    }

    @Test
    void a_dead_carrier_has_no_depth_and_noise_is_no_carrier() {
        ModulatedCarrier.Found quiet =
                measured(samples(0.01, 1e-3, t -> Math.cos(2 * Math.PI * 1e6 * t)), ModulatedCarrier.Known.nothing());
        assertThat(quiet.programme()).isEqualTo(ModulatedCarrier.Programme.NONE);
        assertThat(quiet.envelope()).isEmpty();
        assertThat(ModulatedCarrier.of(samples(0.01, 1, t -> 0), ModulatedCarrier.Known.nothing()))
                .isInstanceOf(ModulatedCarrier.NotFound.class);
    }

    @Test
    void carrier_shift_is_told_against_the_unmodulated_carrier() {
        ModulatedCarrier.Known known =
                new ModulatedCarrier.Known(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(0.9));
        EnvelopeFit e = measured(samples(0.01, 1e-3, am(0.5)), known).envelope().orElseThrow();
        assertThat(e.carrierIsMean()).isFalse();
        assertThat(e.carrierShift().getAsDouble()).isCloseTo(1 / 0.9 - 1, within(1e-3));
        assertThat(e.positivePeak().value()).isCloseTo(1.5 / 0.9 - 1, within(1e-3));
    }

    @Test
    void two_tones_are_a_programme() {
        ModulatedCarrier.Found found = measured(
                samples(
                        0.02,
                        1e-3,
                        t -> (1 + 0.3 * Math.cos(2 * Math.PI * 700 * t) + 0.3 * Math.cos(2 * Math.PI * 1130 * t))
                                * Math.cos(2 * Math.PI * 1e6 * t)),
                ModulatedCarrier.Known.nothing());
        assertThat(found.programme()).isEqualTo(ModulatedCarrier.Programme.MIXED);
        assertThat(found.reached()[0]).isCloseTo(1.6, within(0.05));
    }

    /** A prediction's definitions and a measurement's are the same figures of the same signal. */
    @Test
    void predicted_and_measured_figures_agree() {
        int n = 256;
        double[] envelope = new double[n], phase = new double[n];
        for (int k = 0; k < n; k++) {
            double a = 2 * Math.PI * k / n;
            envelope[k] = 1.02 + 1.1 * Math.cos(a) + 0.06 * Math.cos(2 * a + 1);
            phase[k] = 0.4 * Math.sin(a + 0.5);
        }
        EnvelopePeriod predicted = new EnvelopePeriod(envelope, 1);
        DoubleUnaryOperator x = t -> {
            double a = 2 * Math.PI * 1000 * t;
            return (1.02 + 1.1 * Math.cos(a) + 0.06 * Math.cos(2 * a + 1))
                    * Math.cos(2 * Math.PI * 1e6 * t + 0.4 * Math.sin(a + 0.5));
        };
        ModulatedCarrier.Found found = measured(
                samples(0.012, 1e-3, x),
                new ModulatedCarrier.Known(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(1)));
        EnvelopeFit e = found.envelope().orElseThrow();
        assertThat(e.positivePeak().value()).isCloseTo(predicted.positivePeak(), within(2e-3));
        assertThat(e.negativePeak().value()).isCloseTo(predicted.negativePeak(), within(2e-3));
        assertThat(predicted.negativePeak()).isGreaterThan(1);
        assertThat(e.distortion().value()).isCloseTo(predicted.distortion(), within(2e-3));
        assertThat(e.carrierShift().getAsDouble()).isCloseTo(predicted.carrierShift(), within(1e-3));
        assertThat(found.swing().orElseThrow().value()).isCloseTo(Swing.ofPeriod(phase, 1000), within(3.0));
        Published.source("signal", Kind.CLOSED_FORM, "Phase modulation of index β at F swings βF")
                .matches("index 0.4 at 1 kHz, Hz", 400, Swing.ofPeriod(phase, 1000), 1e-4);
    }

    @Test
    void a_ring_down_gives_q() {
        double q = 80;
        RingDown r = RingDown.of(
                        samples(0.001, 2e-3, t -> Math.exp(-Math.PI * 1e6 * t / q) * Math.cos(2 * Math.PI * 1e6 * t)))
                .orElseThrow();
        Published.source("signal", Kind.CLOSED_FORM, "Free decay A exp(−π f t/Q)")
                .matchesRelative("Q of 80 at 1 MHz", q, r.q().value(), 0.02);
        assertThat(r.q().covers(q)).isTrue();
    }
}
