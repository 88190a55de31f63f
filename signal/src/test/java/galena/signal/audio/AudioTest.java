package galena.signal.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.signal.stream.WavHeader;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sound in and out of files, and from rate to rate. */
class AudioTest {
    @TempDir
    Path here;

    /** 100 dB of stopband, its ripple on both sides of the passband. */
    private static final double STOPBAND = 3e-5;

    @ParameterizedTest
    @CsvSource({"2, 0.05", "2, 0.4", "3, 0.3", "7, 0.41"})
    void raising_a_rate_leaves_a_tone_as_it_is(int factor, double share) {
        Interpolator up = new Interpolator(factor);
        double[] in = new double[2000], out = new double[2000 * factor];
        for (int n = 0; n < in.length; n++) in[n] = Math.sin(2 * Math.PI * share * n);
        up.process(in, in.length, out);
        for (int n = 1000 * factor; n < out.length; n++) {
            double expected = Math.sin(2 * Math.PI * share * (n - up.delay()) / factor);
            assertThat(out[n]).as("sample %d", n).isCloseTo(expected, within(STOPBAND));
        }
    }

    @ParameterizedTest
    @CsvSource({"2, 0.05", "2, 0.4", "3, 0.3", "7, 0.41"})
    void lowering_a_rate_leaves_a_tone_and_drops_what_would_fold(int factor, double share) {
        for (boolean folds : new boolean[] {false, true}) {
            double f = (folds ? 1.2 : share) / factor;
            Decimator down = new Decimator(factor);
            double[] in = new double[2100 * factor], out = new double[2100];
            for (int n = 0; n < in.length; n++) in[n] = Math.sin(2 * Math.PI * f * n);
            down.process(in, in.length, out);
            for (int n = 1000; n < out.length; n++) {
                double expected = folds ? 0 : Math.sin(2 * Math.PI * f * (n * factor - down.delay()));
                assertThat(out[n]).as("sample %d", n).isCloseTo(expected, within(STOPBAND));
            }
        }
    }

    @Test
    void what_is_fed_in_pieces_comes_out_the_same() {
        double[] in = new double[600], whole = new double[1200], pieces = new double[1200], part = new double[1200];
        for (int n = 0; n < in.length; n++) in[n] = Math.sin(0.3 * n * n / 100);
        new Interpolator(2).process(in, 600, whole);
        Interpolator up = new Interpolator(2);
        for (int at = 0; at < 600; at += 100) {
            up.process(java.util.Arrays.copyOfRange(in, at, at + 100), 100, part);
            System.arraycopy(part, 0, pieces, 2 * at, 200);
        }
        assertThat(pieces).containsExactly(whole);
    }

    @ParameterizedTest
    @ValueSource(ints = {16, 24})
    void what_is_written_reads_back_to_within_its_dither(int bits) throws IOException {
        Path file = here.resolve("out.wav");
        double step = Math.pow(2, 1 - bits), square = 0;
        int n = 5000;
        double[] left = new double[n], right = new double[n];
        for (int k = 0; k < n; k++) {
            left[k] = 0.7 * Math.sin(0.01 * k);
            right[k] = -0.3 * Math.cos(0.013 * k);
        }
        try (WavSink sink = new WavSink(file, 2, 44_100, bits)) {
            sink.write(left, right, n);
            sink.finish();
            assertThat(sink.cut()).isZero();
        }
        double[] l = new double[n], r = new double[n];
        try (WavSource source = WavSource.open(file)) {
            assertThat(source.rate()).isEqualTo(44_100);
            assertThat(source.channels()).isEqualTo(2);
            assertThat(source.length()).isEqualTo(n);
            int got = 0;
            while (got < n) {
                double[] a = new double[1000], b = new double[1000];
                int more = source.read(a, b, 1000);
                System.arraycopy(a, 0, l, got, more);
                System.arraycopy(b, 0, r, got, more);
                got += more;
            }
            assertThat(source.read(l, r, 1)).isZero();
        }
        for (int k = 0; k < n; k++) {
            assertThat(l[k]).isCloseTo(left[k], within(1.5 * step));
            assertThat(r[k]).isCloseTo(right[k], within(1.5 * step));
            square += (l[k] - left[k]) * (l[k] - left[k]) / (step * step);
        }
        Published.source(
                        "signal",
                        Kind.CLOSED_FORM,
                        "Rounding with triangular dither two steps wide: noise power 1/4 of a step squared (Lipshitz,"
                                + " Wannamaker and Vanderkooy, J. Audio Eng. Soc. 40 (1992) 355)")
                .matches("noise of " + bits + " bits, steps squared", 0.25, square / n, 0.02);
        try (var left2 = Files.list(here)) {
            assertThat(left2).containsExactly(file);
        }
    }

    @Test
    void an_unfinished_file_leaves_nothing() throws IOException {
        Path file = here.resolve("out.wav");
        try (WavSink sink = new WavSink(file, 1, 48_000, 16)) {
            sink.write(new double[100], 100);
        }
        try (var left = Files.list(here)) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void beyond_full_scale_is_cut_and_counted() throws IOException {
        try (WavSink sink = new WavSink(here.resolve("out.wav"), 1, 48_000, 16)) {
            sink.write(new double[] {2, -2, 0}, 3);
            sink.finish();
            assertThat(sink.cut()).isEqualTo(2);
        }
    }

    @Test
    void one_channel_is_heard_on_both_sides_and_what_is_no_number_is_silence() throws IOException {
        Path file = here.resolve("floats.wav");
        ByteBuffer b = ByteBuffer.allocate(44 + 12).order(ByteOrder.LITTLE_ENDIAN);
        b.put("RIFF".getBytes(StandardCharsets.US_ASCII))
                .putInt(48)
                .put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII));
        b.putInt(16).putShort((short) 3).putShort((short) 1).putInt(8000).putInt(32_000);
        b.putShort((short) 4).putShort((short) 32);
        b.put("data".getBytes(StandardCharsets.US_ASCII))
                .putInt(12)
                .putFloat(0.5f)
                .putFloat(Float.NaN)
                .putFloat(-1);
        Files.write(file, b.array());
        try (WavSource source = WavSource.open(file)) {
            double[] l = new double[8], r = new double[8];
            assertThat(source.read(l, r, 8)).isEqualTo(3);
            assertThat(l).startsWith(0.5, 0, -1);
            assertThat(r).startsWith(0.5, 0, -1);
            assertThat(source.notNumbers()).isEqualTo(1);
        }
    }

    @Test
    void what_is_no_wav_is_said_to_be_none() throws IOException {
        Path file = Files.writeString(here.resolve("notes.wav"), "RIFF");
        assertThatThrownBy(() -> WavSource.open(file)).isInstanceOf(WavHeader.BadHeader.class);
    }

    @Test
    void the_invented_programme_is_the_same_every_time_and_stays_within_full_scale() {
        InventedProgramme one = new InventedProgramme(16_000), two = new InventedProgramme(16_000);
        double[] l = new double[3000], r = new double[3000], l2 = new double[3000], r2 = new double[3000];
        long frames = 0;
        double most = 0, apart = 0, last = 0;
        for (int n = one.read(l, r, 3000); n > 0; n = one.read(l, r, 3000)) {
            assertThat(two.read(l2, r2, 3000)).isEqualTo(n);
            assertThat(l).containsExactly(l2);
            for (int k = 0; k < n; k++) {
                most = Math.max(most, Math.max(Math.abs(l[k]), Math.abs(r[k])));
                apart = Math.max(apart, Math.abs(l[k] - r[k]));
                last = l[k];
            }
            frames += n;
        }
        assertThat(frames).isEqualTo(one.length()).isEqualTo(24 * 16_000);
        assertThat(most).isBetween(0.6, 1.0);
        assertThat(apart).as("stereo").isGreaterThan(0.1);
        assertThat(last).isZero();
    }
}
