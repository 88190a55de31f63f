package galena.bench.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.bench.capture.Overrides;
import galena.bench.capture.UnreadableCapture;
import galena.signal.Estimate;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whole files through the door: what a builder would drop in, and the figures, findings and sentence that come out. */
class MeasureTest {
    private static final double CARRIER = 998_700;

    @TempDir
    Path folder;

    private final Random random = new Random(11);

    /** A scope's text: 8 bits, noise of half a step, one or two channels. */
    private Path scope(double rate, double seconds, DoubleUnaryOperator rf, DoubleUnaryOperator audio)
            throws IOException {
        StringBuilder text = new StringBuilder("Sample Rate," + rate + "\nTime (s),CH1 (V),CH2 (V)\n");
        int count = (int) (rate * seconds);
        for (int k = 0; k < count; k++) {
            double t = k / rate;
            text.append(String.format(
                    Locale.ROOT,
                    "%.9e,%.4f,%.4f%n",
                    t,
                    quantised(rf.applyAsDouble(t), 4),
                    quantised(audio.applyAsDouble(t), 1)));
        }
        Path file = folder.resolve("scope.csv");
        Files.writeString(file, text);
        return file;
    }

    private double quantised(double x, double half) {
        double step = half / 128;
        double noisy = Math.rint((x + 0.5 * step * random.nextGaussian()) / step) * step;
        return Math.max(-half, Math.min(half - step, noisy));
    }

    private static double tone(double t) {
        return Math.cos(2 * Math.PI * 1000 * t);
    }

    private static DoubleUnaryOperator am(double depth, double swing) {
        return t -> 1.5
                * (1 + depth * tone(t))
                * Math.cos(2 * Math.PI * CARRIER * t + swing / 1000 * Math.sin(2 * Math.PI * 1000 * t));
    }

    private static Estimate known(Report report, String key) {
        Figure figure = report.figure(key).orElseThrow(() -> new AssertionError(key + " in " + report.figures()));
        assertThat(figure.reading()).as("%s: %s", key, figure.words()).isInstanceOf(Reading.Known.class);
        return ((Reading.Known) figure.reading()).estimate();
    }

    @Test
    void a_clean_capture_gives_every_figure_and_a_good_word() throws IOException {
        Report r = Measure.file(
                scope(10e6, 0.008, am(0.8, 0), t -> 0.5 * tone(t)),
                Overrides.none(),
                Expected.nothing().withCarrier(1e6));
        assertThat(known(r, "carrier.frequency").covers(CARRIER)).isTrue();
        assertThat(known(r, "carrier.amplitude").covers(1.5)).isTrue();
        for (String key :
                new String[] {"depth.positive", "depth.negative", "depth", "depth.sidebands", "depth.trapezoid"}) {
            assertThat(known(r, key).value()).as(key).isCloseTo(80, within(0.5));
        }
        assertThat(known(r, "sideband.lower").value()).isCloseTo(-7.96, within(0.1));
        assertThat(r.figure("harmonic.2").orElseThrow().words()).startsWith("below");
        assertThat(r.figure("hum").orElseThrow().words()).contains("less than two periods");
        assertThat(r.verdict()).contains("nothing wrong");
        assertThat(r.figures()).allSatisfy(f -> assertThat(f.quantity()).isNotEmpty());
        assertThat(r.pictures().trapezoid()).isNotEmpty();
    }

    @Test
    void pulling_by_the_modulator_is_named_with_its_remedy() throws IOException {
        Report r = Measure.file(scope(10e6, 0.006, am(0.5, 3000), t -> 0), Overrides.none(), Expected.nothing());
        assertThat(known(r, "swing").value()).isCloseTo(3000, within(30.0));
        assertThat(r.found(Finding.Kind.SWING)).isTrue();
        assertThat(r.verdict()).contains("pulls the oscillator").contains("buffer");
    }

    @Test
    void overmodulation_is_measured_past_one_hundred_per_cent() throws IOException {
        Report r = Measure.file(scope(10e6, 0.006, am(1.3, 0), t -> 0), Overrides.none(), Expected.nothing());
        assertThat(known(r, "depth.negative").value()).isCloseTo(130, within(1.0));
        assertThat(known(r, "depth.positive").value()).isCloseTo(130, within(1.0));
        assertThat(r.found(Finding.Kind.OVERMODULATED)).isTrue();
    }

    @Test
    void a_screen_export_is_seen_to_be_aliased_and_unfolded() throws IOException {
        double rate = 640e3;
        Report r = Measure.file(
                scope(rate, 0.03, am(0.6, 0), t -> 0),
                Overrides.none(),
                Expected.nothing().withCarrier(1e6));
        assertThat(r.found(Finding.Kind.ALIASED)).isTrue();
        assertThat(known(r, "carrier.frequency").covers(CARRIER)).isTrue();
        assertThat(known(r, "depth.negative").value()).isCloseTo(60, within(1.0));
        assertThat(r.figure("harmonics").orElseThrow().words()).contains("aliased");
        Report wrong = Measure.file(
                scope(rate, 0.03, am(0.6, 0), t -> 0),
                Overrides.none(),
                Expected.nothing().withCarrier(1.45e6));
        assertThat(wrong.found(Finding.Kind.WRONG_TIME_BASE)).isTrue();
    }

    @Test
    void clipping_no_carrier_and_too_short_records_are_said() throws IOException {
        Report clipped = Measure.file(
                scope(10e6, 0.004, t -> 4 * am(0.8, 0).applyAsDouble(t), t -> 0), Overrides.none(), Expected.nothing());
        assertThat(clipped.found(Finding.Kind.CLIPPED)).isTrue();
        assertThat(clipped.verdict()).contains("cut off");
        Report none = Measure.file(scope(10e6, 0.004, t -> 0, t -> 0), Overrides.none(), Expected.nothing());
        assertThat(none.found(Finding.Kind.NO_CARRIER)).isTrue();
        Report brief = Measure.file(scope(10e6, 4e-6, am(0.5, 0), t -> 0), Overrides.none(), Expected.nothing());
        assertThat(brief.found(Finding.Kind.TOO_SHORT) || brief.found(Finding.Kind.NO_CARRIER))
                .isTrue();
    }

    @Test
    void carrier_harmonics_and_hum_are_told_with_floor_and_trust_limit() throws IOException {
        DoubleUnaryOperator rf = t -> {
            double a = 2 * Math.PI * CARRIER * t;
            return 2
                    * (1 + 0.02 * Math.cos(2 * Math.PI * 100 * t))
                    * (Math.cos(a) + 0.1 * Math.cos(2 * a) + 0.002 * Math.cos(3 * a));
        };
        Report r = Measure.file(
                scope(8e6, 0.045, rf, t -> 0),
                Overrides.none(),
                Expected.nothing().withMains(50));
        assertThat(known(r, "harmonic.2").value()).isCloseTo(-20, within(0.1));
        assertThat(r.figure("harmonic.3").orElseThrow().how())
                .contains("below the trust limit")
                .contains("noise floor");
        assertThat(known(r, "hum.100").value()).isCloseTo(-34, within(0.3));
        assertThat(r.found(Finding.Kind.HUM)).isTrue();
        assertThat(r.found(Finding.Kind.HARMONICS)).isTrue();
    }

    @Test
    void iq_gives_the_carrier_on_the_air() throws IOException {
        int rate = 250_000, count = 100_000;
        ByteBuffer out = ByteBuffer.allocate(2 * count);
        for (int k = 0; k < count; k++) {
            double t = k / (double) rate, a = 2 * Math.PI * 18_700 * t, e = 60 * (1 + 0.7 * tone(t));
            out.put((byte) Math.round(127.5 + e * Math.cos(a) + random.nextGaussian()));
            out.put((byte) Math.round(127.5 + e * Math.sin(a) + random.nextGaussian()));
        }
        Path file = folder.resolve("air_980kHz_250ksps.iq");
        Files.write(file, out.array());
        Report r = Measure.file(file, Overrides.none(), Expected.nothing().withQuantity(Quantity.AFTER_RECEIVER));
        assertThat(known(r, "carrier.frequency").covers(998_700)).isTrue();
        assertThat(known(r, "depth").value()).isCloseTo(70, within(0.5));
        assertThat(r.figure("depth").orElseThrow().quantity()).isEqualTo("after a receiver's filter");
    }

    @Test
    void detected_audio_is_refused_for_depth_with_the_reason() throws IOException {
        int rate = 48_000, count = 96_000;
        ByteBuffer out = ByteBuffer.allocate(44 + 2 * count).order(ByteOrder.LITTLE_ENDIAN);
        out.put("RIFF".getBytes(StandardCharsets.US_ASCII))
                .putInt(36 + 2 * count)
                .put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII))
                .putInt(16);
        out.putShort((short) 1)
                .putShort((short) 1)
                .putInt(rate)
                .putInt(2 * rate)
                .putShort((short) 2)
                .putShort((short) 16);
        out.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(2 * count);
        for (int k = 0; k < count; k++) {
            double t = k / (double) rate;
            out.putShort((short) Math.round(
                    9000 * (tone(t) + 0.03 * Math.cos(4000 * Math.PI * t) + 0.01 * Math.cos(200 * Math.PI * t))
                            + 3 * random.nextGaussian()));
        }
        Path file = folder.resolve("set.wav");
        Files.write(file, out.array());
        Report r = Measure.file(file, Overrides.none(), Expected.nothing());
        assertThat(r.found(Finding.Kind.DETECTED_AUDIO)).isTrue();
        assertThat(r.figure("depth.positive").orElseThrow().reading()).isInstanceOf(Reading.Missing.class);
        assertThat(r.verdict()).contains("detector removes the carrier");
        assertThat(known(r, "audio.distortion.2").value()).isCloseTo(3, within(0.05));
        assertThat(known(r, "audio.hum.100").value()).isCloseTo(-40, within(0.3));
    }

    @Test
    void lowest_and_highest_pairs_give_an_envelope_and_no_spectrum() throws IOException {
        StringBuilder text = new StringBuilder("s,V\n");
        for (int k = 0; k < 3000; k++) {
            double t = k * 2e-6, e = 1.5 * (1 + 0.7 * tone(t));
            text.append(String.format(
                    Locale.ROOT,
                    "%.7f,%.3f%n%.7f,%.3f%n",
                    t,
                    -e + 0.01 * random.nextGaussian(),
                    t,
                    e + 0.01 * random.nextGaussian()));
        }
        Path file = folder.resolve("peak.csv");
        Files.writeString(file, text);
        Report r = Measure.file(file, Overrides.none(), Expected.nothing());
        assertThat(r.found(Finding.Kind.MIN_MAX_PAIRS)).isTrue();
        assertThat(known(r, "depth.positive").value()).isCloseTo(70, within(0.5));
        assertThat(r.figure("harmonics").orElseThrow().reading()).isInstanceOf(Reading.Missing.class);
    }

    @Test
    void a_log_gives_drift_warm_up_and_push() throws IOException {
        StringBuilder text = new StringBuilder("time (s);frequency (Hz);supply (V)\n");
        for (int k = 0; k < 240; k++) {
            double t = 15.0 * k, v = 9 - 0.1 * (k / 24 % 2);
            double f = 999_000 + 400 * Math.exp(-t / 600) - 0.01 * t + 150 * (v - 9) + random.nextGaussian();
            text.append(String.format(Locale.ROOT, "%.1f;%.1f;%.2f%n", t, f, v));
        }
        Path file = folder.resolve("log.csv");
        Files.writeString(file, text);
        Report r = Measure.file(file, Overrides.none(), Expected.nothing());
        assertThat(known(r, "warmup.constant").value()).isCloseTo(600, within(60.0));
        assertThat(known(r, "warmup.excess").value()).isCloseTo(400, within(25.0));
        assertThat(r.figure("push")).isPresent();
    }

    @Test
    void a_figure_is_printed_no_finer_than_its_interval() {
        Figure f = new Figure("k", "l", new Reading.Known(new Estimate(998712.3456, 998680, 998744)), "Hz", "q", "h");
        assertThat(f.words()).isEqualTo("998712 ± 32 Hz");
        Figure g = new Figure("k", "l", new Reading.Known(new Estimate(3.14159, 3.1, 3.3)), "%", "q", "h");
        assertThat(g.words()).isEqualTo("3.14 (3.10 to 3.30) %");
        assertThat(new Figure("k", "l", new Reading.Known(new Estimate(123456, 120000, 126912)), "Hz", "q", "h")
                        .words())
                .isEqualTo("123500 ± 3500 Hz");
    }

    @Test
    void an_unreadable_file_stays_one_clear_line() {
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> Measure.file(folder.resolve("none.csv"), Overrides.none(), Expected.nothing()))
                .isInstanceOf(UnreadableCapture.class);
    }
}
