package galena.bench.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import galena.signal.stream.SampleFormat;
import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bad files end in one clear line each, and cost bounded memory. */
class BadFilesTest {
    private static final long SEED = 20260301;

    @TempDir
    Path folder;

    private void refused(String name, byte[] bytes, String... words) throws IOException {
        Path file = folder.resolve(name);
        Files.write(file, bytes);
        assertThatThrownBy(() -> Captures.read(file, Overrides.none()))
                .isInstanceOf(UnreadableCapture.class)
                .hasMessageContainingAll(words)
                .satisfies(e -> assertThat(e.getMessage()).doesNotContain("\n").contains(name));
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    @Test
    void empty_missing_and_blank_files() throws IOException {
        refused("a.csv", new byte[0], "empty");
        refused("a.csv", ascii("\n\n\n"), "no rows of numbers");
        refused("a.csv", ascii("nothing but words\nand more words\n"), "no rows of numbers");
        assertThatThrownBy(() -> Captures.read(folder.resolve("none.csv"), Overrides.none()))
                .hasMessageContaining("no such file");
    }

    @Test
    void binary_files_and_archives() throws IOException {
        byte[] noise = new byte[50000];
        new Random(1).nextBytes(noise);
        refused("a.csv", noise, "neither text");
        refused("a.zip", new byte[] {'P', 'K', 3, 4, 0, 0, 0}, "zip archive");
    }

    @Test
    void files_cut_short() throws IOException {
        byte[] wav = BinaryCapturesTest.wav(BinaryCapturesTest.iq(0.5), SampleFormat.S16, 2, 48000);
        for (int length : new int[] {4, 11, 20, 43, 60}) refused("a.wav", Arrays.copyOf(wav, length), "WAV");
        Path cut = folder.resolve("cut.wav");
        Files.write(cut, Arrays.copyOf(wav, wav.length / 2 + 1));
        assertThat(Captures.read(cut, Overrides.none()).understanding().has(Note.Kind.CONTRADICTION))
                .isTrue();
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(wav);
        }
        refused("a.gz", Arrays.copyOf(packed.toByteArray(), 2000), "damaged or cut short");
        refused("b.gz", new byte[] {0x1f, (byte) 0x8b, 1, 2, 3}, "damaged or cut short");
    }

    @Test
    void one_sample_and_no_numbers_at_all() throws IOException {
        refused("a.csv", ascii("time,volts\n0,1\n"), "no rows of numbers");
        refused("a.csv", ascii("time,volts\n0,1\n1e-6,2\n"), "only 2 samples");
        refused("a.csv", ascii("time,volts\n" + "nan,inf\n".repeat(500)), "no rows of numbers");
        refused("a.wav", BinaryCapturesTest.wav(new double[] {0.5}, SampleFormat.S16, 1, 8000), "only 1 sample");
    }

    @Test
    void samples_that_are_not_numbers_break_the_record_where_they_stand() throws IOException {
        StringBuilder text = new StringBuilder("s,V\n");
        for (int k = 0; k < 1000; k++)
            text.append(k * 1e-6)
                    .append(',')
                    .append(k == 300 ? "NaN" : String.valueOf(k % 7 / 10.0))
                    .append('\n');
        Path file = folder.resolve("a.csv");
        Files.writeString(file, text);
        Capture c = Captures.read(file, Overrides.none());
        assertThat(c.understanding().skipped()).isEqualTo(1);
        assertThat(c.understanding().has(Note.Kind.DROPPED_SAMPLES)).isTrue();
        assertThat(((Waveforms) c.content()).channels().get(0).samples()).hasSize(699);
        double[] floats = BinaryCapturesTest.iq(0.5);
        floats[2001] = Double.NaN;
        Path wav = folder.resolve("a.wav");
        Files.write(wav, BinaryCapturesTest.wav(floats, SampleFormat.F32, 2, 48000));
        assertThat(Captures.read(wav, Overrides.none()).understanding().has(Note.Kind.DROPPED_SAMPLES))
                .isTrue();
    }

    @Test
    void huge_lines_cost_no_memory() throws IOException {
        byte[] letters = new byte[30 << 20];
        Arrays.fill(letters, (byte) 'x');
        refused("a.csv", letters, "no rows of numbers");
        byte[] mixed = letters.clone();
        byte[] rows = ascii("0,1\n1,2\n2,1\n3,2\n4,1\n5,2\n6,1\n7,2\n8,1\n9,2\n");
        System.arraycopy(rows, 0, mixed, 0, rows.length);
        refused("b.csv", mixed, "longer than");
        byte[] cells = letters.clone();
        byte[] numbers = ascii("Sample Interval,1us\n" + "0.5,0.25,".repeat(300));
        System.arraycopy(numbers, 0, cells, 0, numbers.length);
        refused("c.csv", cells, "longer than");
    }

    @Test
    void wrong_sigmf_descriptions() throws IOException {
        Files.write(
                folder.resolve("r.sigmf-data"),
                BinaryCapturesTest.encode(BinaryCapturesTest.iq(0.5), SampleFormat.S16));
        refused("r.sigmf-meta", ascii("{ not json"), "not JSON");
        refused("r.sigmf-meta", ascii("[]"), "\"global\"");
        refused("r.sigmf-meta", ascii("{\"global\":{\"core:datatype\":\"ci12\"}}"), "core:datatype");
        refused(
                "r.sigmf-meta",
                ascii("{\"global\":{\"core:datatype\":\"ci16_le\",\"core:sample_rate\":-1}}"),
                "core:sample_rate");
        refused(
                "r.sigmf-meta",
                ascii("{\"global\":{\"core:datatype\":\"ci16_le\",\"core:sample_rate\":1e6,\"core:num_channels\":99}}"),
                "core:num_channels");
        refused("alone.sigmf-meta", ascii("{}"), "missing");
    }

    @Test
    void a_file_that_unpacks_to_absurd_lengths_is_stopped() throws IOException {
        Path bomb = folder.resolve("bomb.csv.gz");
        byte[] block = new byte[1 << 20];
        Arrays.fill(block, (byte) '1');
        for (int k = 9; k < block.length; k += 10) block[k] = '\n';
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(bomb))) {
            for (int k = 0; k < 90; k++) out.write(block);
        }
        assertThatThrownBy(() ->
                        Captures.read(bomb, Overrides.none().withInterval(1e-6).withKeep(1 << 16)))
                .isInstanceOf(UnreadableCapture.class)
                .hasMessageContaining("unpacks to more than");
    }

    @Test
    void ten_thousand_spoilt_inputs_end_in_a_capture_or_in_one_clear_line() {
        fuzz(10_000);
    }

    @Test
    @Tag("long")
    void a_million_spoilt_inputs_end_in_a_capture_or_in_one_clear_line() {
        fuzz(1_000_000);
    }

    private static void fuzz(int inputs) {
        Random random = new Random(SEED);
        byte[][] seeds = seeds();
        int read = 0;
        for (int k = 0; k < inputs; k++) {
            byte[] input = spoil(seeds[random.nextInt(seeds.length)], seeds, random);
            try {
                String name = random.nextInt(4) == 0 ? "x_1Msps.iq" : "x.csv";
                Overrides overrides = Overrides.none().withKeep(1 << 14);
                if (random.nextInt(3) == 0) overrides = overrides.withInterval(1e-6);
                Captures.read("x", name, new BufferedInputStream(new ByteArrayInputStream(input), 1 << 14), overrides);
                read++;
            } catch (UnreadableCapture e) {
                assertThat(e.getMessage())
                        .as("input %d of seed %d", k, SEED)
                        .doesNotContain("\n")
                        .hasSizeLessThan(400);
            } catch (IOException | RuntimeException e) {
                throw new AssertionError(
                        "input " + k + " of seed " + SEED + ": " + new String(input, StandardCharsets.ISO_8859_1), e);
            }
        }
        assertThat(read).as("some still read").isBetween(inputs / 50, inputs);
    }

    private static byte[][] seeds() {
        StringBuilder table = new StringBuilder("Sample Interval,1us\nRecord Length,60\nTime (s),CH1 (V),CH2\n"),
                german = new StringBuilder("Zeit;Kanal\n(ms);(mV)\n\n"),
                log = new StringBuilder("time,freq (kHz)\n"),
                one = new StringBuilder("rate: 1 MSa/s\n");
        for (int k = 0; k < 60; k++) {
            table.append(k * 1e-6)
                    .append(',')
                    .append(Math.rint(100 * Math.sin(k)) / 100)
                    .append(",1\n");
            german.append(("" + k * 0.001).replace('.', ','))
                    .append(";")
                    .append(k % 5)
                    .append(",5\n");
            log.append("12:00:")
                    .append(k < 10 ? "0" : "")
                    .append(k)
                    .append(",999.")
                    .append(100 + k)
                    .append('\n');
            one.append(k % 9 / 10.0).append(',').append("0.1,");
        }
        double[] iq = Arrays.copyOf(BinaryCapturesTest.iq(0.5), 400);
        String sweep = "! x\n# MHz S RI R 50\n1.0 0.5 0\n1.1 0 0.5\n1.2 -0.5 0\n1.3 -0.5 0.1\n";
        return new byte[][] {
            ascii(table.toString()),
            ascii(german.toString()),
            ascii(log.toString()),
            ascii(one.toString()),
            ascii(sweep),
            BinaryCapturesTest.wav(iq, SampleFormat.S16, 2, 48000),
            BinaryCapturesTest.wav(iq, SampleFormat.F32, 1, 48000),
            BinaryCapturesTest.encode(Arrays.copyOf(BinaryCapturesTest.iq(0.5), 4000), SampleFormat.U8)
        };
    }

    private static byte[] spoil(byte[] seed, byte[][] seeds, Random random) {
        byte[] out = seed.clone();
        int changes = 1 + random.nextInt(8);
        for (int k = 0; k < changes && out.length > 2; k++) {
            int at = random.nextInt(out.length), length = Math.min(out.length - at, 1 + random.nextInt(40));
            switch (random.nextInt(6)) {
                case 0 -> out[at] = (byte) random.nextInt(256);
                case 1 -> out = Arrays.copyOf(out, at);
                case 2 -> out = join(Arrays.copyOf(out, at), Arrays.copyOfRange(out, at + length, out.length));
                case 3 -> out = join(out, Arrays.copyOfRange(out, at, out.length));
                case 4 -> {
                    byte[] other = seeds[random.nextInt(seeds.length)];
                    out = join(Arrays.copyOf(out, at), Arrays.copyOf(other, random.nextInt(other.length)));
                }
                default -> {
                    byte[] marks = ascii(",;.-+eE\"\n\r\t#!:|NaN1e999");
                    for (int j = 0; j < length; j++) out[at + j] = marks[random.nextInt(marks.length)];
                }
            }
            if (out.length > 20000) out = Arrays.copyOf(out, 20000);
        }
        return out;
    }

    private static byte[] join(byte[] a, byte[] b) {
        byte[] out = Arrays.copyOf(a, a.length + b.length);
        System.arraycopy(b, 0, out, a.length, b.length);
        return out;
    }
}
