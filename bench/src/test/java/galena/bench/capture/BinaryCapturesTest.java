package galena.bench.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.signal.stream.SampleFormat;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BinaryCapturesTest {
    private static final int FRAMES = 20000;

    @TempDir
    Path folder;

    /** Interleaved I and Q of a carrier 20 % of the rate above the centre, with a little noise. */
    static double[] iq(double amplitude) {
        Random random = new Random(7);
        double[] out = new double[2 * FRAMES];
        for (int k = 0; k < FRAMES; k++) {
            double e = amplitude * (1 + 0.5 * Math.cos(2 * Math.PI * k / 200.0));
            out[2 * k] = e * Math.cos(2 * Math.PI * 0.2 * k + 1) + 0.01 * amplitude * random.nextGaussian();
            out[2 * k + 1] = e * Math.sin(2 * Math.PI * 0.2 * k + 1) + 0.01 * amplitude * random.nextGaussian();
        }
        return out;
    }

    static byte[] encode(double[] values, SampleFormat format) {
        ByteBuffer out = ByteBuffer.allocate(values.length * format.bytes()).order(ByteOrder.LITTLE_ENDIAN);
        for (double v : values) {
            switch (format) {
                case U8 -> out.put((byte) Math.round(v * 127.5 + 127.5));
                case U8_WAV -> out.put((byte) Math.round(v * 128 + 128));
                case S8 -> out.put((byte) Math.round(v * 128));
                case S16 -> out.putShort((short) Math.round(v * 32768));
                case S24 -> {
                    int x = (int) Math.round(v * 8388608);
                    out.put((byte) x).put((byte) (x >> 8)).put((byte) (x >> 16));
                }
                case S32 -> out.putInt((int) Math.round(v * 2147483648.0));
                case F32 -> out.putFloat((float) v);
                case F64 -> out.putDouble(v);
            }
        }
        return out.array();
    }

    static byte[] wav(double[] values, SampleFormat format, int channels, int rate) {
        byte[] data = encode(values, format);
        ByteBuffer out = ByteBuffer.allocate(44 + data.length).order(ByteOrder.LITTLE_ENDIAN);
        out.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + data.length);
        out.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16);
        out.putShort((short) (format.isFloating() ? 3 : 1))
                .putShort((short) channels)
                .putInt(rate);
        int frame = channels * format.bytes();
        out.putInt(rate * frame).putShort((short) frame).putShort((short) (8 * format.bytes()));
        out.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(data.length).put(data);
        return out.array();
    }

    private Capture read(String name, byte[] bytes, Overrides overrides) throws IOException {
        Path file = folder.resolve(name);
        Files.write(file, bytes);
        return Captures.read(file, overrides);
    }

    private static double step(SampleFormat format) {
        return format.isFloating() ? 1e-6 : Math.pow(2, 1 - format.bits());
    }

    @ParameterizedTest
    @EnumSource(
            value = SampleFormat.class,
            names = {"U8", "S8"},
            mode = EnumSource.Mode.EXCLUDE)
    void wav_of_every_depth_is_read_to_its_last_bit(SampleFormat format) throws IOException {
        double[] values = iq(0.6);
        Capture c = read("a.wav", wav(values, format, 2, 192000), Overrides.none());
        assertThat(c.content()).isInstanceOf(IqRecord.class);
        IqRecord iq = (IqRecord) c.content();
        assertThat(iq.interval()).isCloseTo(1 / 192000.0, within(1e-12));
        for (int k = 0; k < FRAMES; k++) {
            assertThat(iq.inPhase().samples()[k]).isCloseTo(values[2 * k], within(step(format)));
            assertThat(iq.quadrature().samples()[k]).isCloseTo(values[2 * k + 1], within(step(format)));
        }
    }

    @Test
    void two_real_channels_are_not_taken_for_iq_and_audio_is_called_audio() throws IOException {
        double[] stereo = new double[2 * FRAMES];
        for (int k = 0; k < FRAMES; k++)
            stereo[2 * k] = stereo[2 * k + 1] = 0.5 * Math.sin(2 * Math.PI * 1000 * k / 48000);
        Capture c = read("a.wav", wav(stereo, SampleFormat.S16, 2, 48000), Overrides.none());
        assertThat(c.content()).isInstanceOfSatisfying(Waveforms.class, w -> assertThat(w.audio())
                .isTrue());
        Capture stated = read(
                "b.wav",
                wav(stereo, SampleFormat.S16, 2, 48000),
                Overrides.none().withKind(Overrides.Kind.IQ));
        assertThat(stated.content()).isInstanceOf(IqRecord.class);
    }

    @ParameterizedTest
    @EnumSource(
            value = SampleFormat.class,
            names = {"U8", "S8", "S16", "F32"})
    void headerless_iq_is_told_apart_by_its_histogram(SampleFormat format) throws IOException {
        for (double amplitude : new double[] {0.1, 0.3, 0.6}) {
            Capture c = read("999kHz_2.4Msps.iq", encode(iq(amplitude), format), Overrides.none());
            assertThat(c.understanding().encoding())
                    .as("amplitude %s", amplitude)
                    .isEqualTo(format.toString());
            IqRecord iq = (IqRecord) c.content();
            assertThat(1 / iq.interval()).isCloseTo(2.4e6, within(1.0));
            assertThat(iq.centre()).hasValue(999e3);
        }
    }

    @Test
    void headerless_iq_without_a_rate_or_with_a_flat_histogram_is_asked_about() {
        assertThatThrownBy(() -> read("x.iq", encode(iq(0.3), SampleFormat.S16), Overrides.none()))
                .isInstanceOf(UnreadableCapture.class)
                .hasMessageContaining("State the rate");
        byte[] flat = new byte[1 << 16];
        new Random(1).nextBytes(flat);
        assertThatThrownBy(() -> read("x_1Msps.iq", flat, Overrides.none()))
                .isInstanceOf(UnreadableCapture.class)
                .hasMessageContaining("u8, s8, s16 or f32");
    }

    @Test
    void sigmf_is_read_by_its_specification_and_gzip_is_unpacked() throws IOException {
        String meta =
                "{\"global\":{\"core:datatype\":\"ci16_le\",\"core:sample_rate\":250000,\"core:version\":\"1.0.0\"},"
                        + "\"captures\":[{\"core:sample_start\":0,\"core:frequency\":990000}],\"annotations\":[]}";
        Files.writeString(folder.resolve("r.sigmf-meta"), meta);
        Files.write(folder.resolve("r.sigmf-data"), encode(iq(0.5), SampleFormat.S16));
        for (String name : new String[] {"r.sigmf-meta", "r.sigmf-data"}) {
            Capture c = Captures.read(folder.resolve(name), Overrides.none());
            assertThat(c.content()).isInstanceOfSatisfying(IqRecord.class, iq -> assertThat(iq.centre())
                    .hasValue(990e3));
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(wav(iq(0.5), SampleFormat.S16, 2, 96000));
        }
        assertThat(read("a.wav.gz", packed.toByteArray(), Overrides.none()).content())
                .isInstanceOf(IqRecord.class);
    }

    @Test
    void one_port_text_is_read_in_every_form() throws IOException {
        String[] forms = {
            "# MHz S RI R 50\n! remark\n1.0 0.5 0\n1.1 0 0.5\n1.2 -0.5 0\n",
            "# KHZ S MA R 50\n1000 0.5 0\n1100 0.5 90\n1200 0.5 180\n",
            "# Hz S DB R 50\n1e6 -6.0206 0\n1.1e6 -6.0206 90 ! here\n1.2e6 -6.0206 180\n",
            "# MHZ Z RI R 50\n1.0 3 0\n1.1 0.6 0.8\n1.2 0.333333333 0\n"
        };
        for (String form : forms) {
            Capture c = read("sweep.s1p", form.getBytes(StandardCharsets.US_ASCII), Overrides.none());
            assertThat(c.content()).isInstanceOfSatisfying(OnePort.class, sweep -> {
                assertThat(sweep.hertz().get(1)).isCloseTo(1.1e6, within(1e-6));
                assertThat(sweep.real().get(0)).isCloseTo(0.5, within(1e-5));
                assertThat(sweep.imaginary().get(1)).isCloseTo(0.5, within(1e-5));
                assertThat(sweep.real().get(2)).isCloseTo(-0.5, within(1e-5));
            });
        }
    }

    @Test
    void logs_with_clock_times_and_with_seconds_are_read() throws IOException {
        String clock =
                "time;frequency (kHz);supply (V)\n23:59:58;999,120;9,01\n23:59:59;999,118;9,01\n00:00:00;999,117;9,00\n00:00:01,5;999,116;9,00\n";
        Capture a = read("log.csv", clock.getBytes(StandardCharsets.UTF_8), Overrides.none());
        assertThat(a.content()).isInstanceOfSatisfying(FrequencyLog.class, log -> {
            assertThat(log.seconds()).containsExactly(0.0, 1.0, 2.0, 3.5);
            assertThat(log.hertz().get(0)).isCloseTo(999120, within(1e-6));
            assertThat(log.others().get("supply (V)")).startsWith(9.01);
        });
        String dated =
                "# counter\n2026-03-01 23:59:30,999120.5\n2026-03-02T00:00:30,999121.5\n2026-03-02 00:01:30,999121.0\n";
        Capture b = read("log2.csv", dated.getBytes(StandardCharsets.UTF_8), Overrides.none());
        assertThat(b.content()).isInstanceOfSatisfying(FrequencyLog.class, log -> assertThat(log.seconds())
                .containsExactly(0.0, 60.0, 120.0));
        String seconds = "time [min],freq [MHz]\n0,0.99912\n1,0.999121\n2,0.999122\n3,0.999123\n";
        Capture c = read("log3.csv", seconds.getBytes(StandardCharsets.UTF_8), Overrides.none());
        assertThat(c.content()).isInstanceOfSatisfying(FrequencyLog.class, log -> {
            assertThat(log.seconds().get(1)).isEqualTo(60);
            assertThat(log.hertz().get(3)).isCloseTo(999123, within(1e-6));
        });
    }
}
