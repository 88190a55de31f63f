package galena.bench.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

/** Every layout and every trap that builders have met, each read back to the samples that it was written from. */
class TextLayoutsTest {
    private static final int ROWS = 2000;
    private static final double STEP = 1e-7;

    private static double volts(int k) {
        return 0.02
                * Math.rint(50
                        * (1 + 0.5 * Math.cos(2 * Math.PI * 1e3 * k * STEP))
                        * Math.cos(2 * Math.PI * 1e6 * k * STEP));
    }

    private static String f(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    private static String rows(IntFunction<String> row) {
        StringBuilder out = new StringBuilder();
        for (int k = 0; k < ROWS; k++) out.append(row.apply(k)).append('\n');
        return out.toString();
    }

    private static double t(int k) {
        return (k - 1000) * STEP;
    }

    private static Capture read(String text) throws IOException {
        return read(text.getBytes(StandardCharsets.UTF_8), Overrides.none());
    }

    private static Capture read(String text, Overrides overrides) throws IOException {
        return read(text.getBytes(StandardCharsets.UTF_8), overrides);
    }

    private static Capture read(byte[] bytes, Overrides overrides) throws IOException {
        return Captures.read(
                "x.csv", "x.csv", new BufferedInputStream(new ByteArrayInputStream(bytes), 1 << 18), overrides);
    }

    private static Waveforms check(Capture capture, int channels) {
        assertThat(capture.content()).isInstanceOf(Waveforms.class);
        Waveforms waves = (Waveforms) capture.content();
        assertThat(waves.interval()).isCloseTo(STEP, within(STEP * 1e-3));
        assertThat(waves.channels()).hasSize(channels);
        double[] samples = waves.channels().get(0).samples();
        assertThat(samples).hasSize(ROWS);
        for (int k = 0; k < ROWS; k++) assertThat(samples[k]).as("sample %d", k).isCloseTo(volts(k), within(1e-9));
        return waves;
    }

    @Test
    void p1_plain_table_without_any_heading() throws IOException {
        check(read(rows(k -> f("%.9g,%.4f", t(k), volts(k)))), 1);
    }

    @Test
    void p1_plain_table_with_one_row_of_names_and_a_trailing_comma() throws IOException {
        Waveforms w = check(read("time,volts,\n" + rows(k -> f("%.9e,%.4f,", t(k), volts(k)))), 1);
        assertThat(w.channels().get(0).name()).isEqualTo("volts");
        assertThat(w.start()).isCloseTo(-1e-4, within(1e-12));
    }

    @Test
    void p2_names_over_units_in_brackets_over_a_blank_row() throws IOException {
        String text = "Time;Channel A;Channel B\n(us);(mV);(V)\n\n"
                + rows(k -> f("%.4f;%.3f;%.2f", t(k) * 1e6, volts(k) * 1e3, -volts(k))
                        .replace('.', ','));
        Waveforms w = check(read(text), 2);
        assertThat(w.channels().get(0).unit()).isEqualTo("V");
        assertThat(w.channels().get(1).name()).isEqualTo("Channel B");
    }

    @Test
    void p3_units_inside_the_names() throws IOException {
        check(read("\"Time [ms]\",\"Channel 1 (V)\"\n" + rows(k -> f("%.7f,%.4f", t(k) * 1e3, volts(k)))), 1);
    }

    @Test
    void p4_preamble_with_the_sample_interval_and_no_time_column() throws IOException {
        for (int lines : new int[] {1, 2, 3, 5, 6, 7, 16, 20, 22}) {
            StringBuilder preamble = new StringBuilder();
            for (int k = 1; k < lines; k++)
                preamble.append("Setting ")
                        .append((char) ('A' + k))
                        .append(",value ")
                        .append(k)
                        .append('\n');
            preamble.append("Sample Interval,0.10us\n");
            check(read(preamble + "CH1\n" + rows(k -> f("%.4f", volts(k)))), 1);
        }
    }

    @Test
    void p4_preamble_with_a_rate_in_one_cell() throws IOException {
        check(read("Model:none\nSample Rate:10.0MSa/s\nVolt\n" + rows(k -> f("%.4f", volts(k)))), 1);
        check(read("Sampling Period = 100 ns\n" + rows(k -> f("%.4f", volts(k)))), 1);
        check(
                read("Record Length,2000,Points\nSample rate,1e7,Hz\nSource,CH1\n"
                        + rows(k -> f("%.9g,%.4f", t(k), volts(k)))),
                1);
    }

    @Test
    void p5_metadata_beside_the_first_rows() throws IOException {
        String[] side = {
            "Record Length,2000,Points",
            "Sample Interval,1e-07,s",
            "Trigger Point,1000,Samples",
            ",,",
            "Source,CH1,",
            "Vertical Units,V,",
            "Vertical Scale,0.5,",
            "Vertical Offset,0,",
            "Horizontal Units,s,",
            "Horizontal Scale,5e-06,"
        };
        String text = rows(k -> (k < side.length ? side[k] : ",,") + f(",%.9f,%.5f", t(k), volts(k)));
        check(read(text), 1);
    }

    @Test
    void p6_start_and_increment_in_the_units_row() throws IOException {
        String text = "X,CH1,CH2,Start,Increment\nSequence,Volt,Volt,-1.000e-04,1.000e-07\n"
                + rows(k -> f("%d,%.3e,%.3e,,", k, volts(k), -volts(k)));
        Waveforms w = check(read(text), 2);
        assertThat(w.start()).isCloseTo(-1e-4, within(1e-9));
    }

    @Test
    void p7_values_alone() throws IOException {
        check(
                read(
                        "[samples]\n" + rows(k -> f("%.4f", volts(k))),
                        Overrides.none().withInterval(STEP)),
                1);
        StringBuilder line = new StringBuilder("Sample rate: 10 MSa/s\n");
        for (int k = 0; k < ROWS; k++) line.append(k == 0 ? "" : ",").append(f("%.4f", volts(k)));
        check(read(line.toString()), 1);
        assertThatThrownBy(() -> read(rows(k -> f("%.4f", volts(k)))))
                .isInstanceOf(UnreadableCapture.class)
                .hasMessageContaining("State the interval");
    }

    @Test
    void p8_raw_codes_with_volts_per_division() throws IOException {
        String text = "Volts/div,0.5V\nCodes per div,25\nVertical Offset,0\nSample Interval,100ns\nCode\n"
                + rows(k -> f("%.0f", volts(k) / 0.02));
        Waveforms w = check(read(text), 1);
        assertThat(w.channels().get(0).unit()).isEqualTo("V");
        String both = "index,codes,volts\n" + rows(k -> f("%d,%.0f,%.4f", k, volts(k) / 0.02, volts(k)));
        check(read(both, Overrides.none().withInterval(STEP)), 1);
    }

    @Test
    void p9_time_repeated_for_each_channel() throws IOException {
        check(read("time1,ch1,time2,ch2\n" + rows(k -> f("%.9g,%.4f,%.9g,%.4f", t(k), volts(k), t(k), -volts(k)))), 2);
    }

    @Test
    void p10_lowest_and_highest_share_a_stamp() throws IOException {
        Capture c = read("s,V\n" + rows(k -> f("%.7f,%.4f", k / 2 * 1e-5, k % 2 == 0 ? -volts(k) : volts(k))));
        Waveforms w = (Waveforms) c.content();
        assertThat(w.pairs()).isTrue();
        assertThat(w.interval()).isCloseTo(1e-5, within(1e-9));
        assertThat(c.understanding().has(Note.Kind.MIN_MAX_PAIRS)).isTrue();
    }

    @Test
    void p11_segments_one_after_another() throws IOException {
        Capture c = read("500,500,500,500\ns,V\n" + rows(k -> f("%.8f,%.4f", k % 500 * STEP, volts(k))));
        Waveforms w = (Waveforms) c.content();
        assertThat(c.understanding().has(Note.Kind.SEGMENTS)).isTrue();
        assertThat(w.channels().get(0).samples()).hasSize(500);
        assertThat(w.interval()).isCloseTo(STEP, within(1e-12));
    }

    @Test
    void p12_rows_that_name_the_fields_of_the_next_row() throws IOException {
        StringBuilder head = new StringBuilder();
        for (int k = 0; k < 7; k++) head.append(f("Alpha%d,Beta%d,Gamma%d\n%d,text,1.5\n", k, k, k, k));
        head.append("Channel,Sample Rate,Coupling\n1,1.0E+07,DC\n");
        check(read(head + rows(k -> f("%.4f", volts(k)))), 1);
    }

    @Test
    void p13_remarks_and_padded_columns() throws IOException {
        check(
                read("# taken in the shed\n# second remark, with 3 numbers 4 5\n\n"
                        + rows(k -> f("%14.8f %10.4f", t(k), volts(k)))),
                1);
        check(read("; a remark\n;another; one\nTime (s)\tV\n" + rows(k -> f("%.9g\t%.4f", t(k), volts(k)))), 1);
    }

    @Test
    void encodings_line_ends_and_the_micro_sign() throws IOException {
        String text = "Time (µs);V\r\n"
                + rows(k -> f("%.4f;%.4f", t(k) * 1e6, volts(k))).replace("\n", "\r\n");
        for (Charset charset : new Charset[] {
            StandardCharsets.UTF_8, StandardCharsets.ISO_8859_1, StandardCharsets.UTF_16, StandardCharsets.UTF_16LE
        }) {
            check(read(text.getBytes(charset), Overrides.none()), 1);
        }
        check(read(("\uFEFF" + text).getBytes(StandardCharsets.UTF_8), Overrides.none()), 1);
        check(read(text.replace("µ", "μ").replace("\r\n", "\r").getBytes(StandardCharsets.UTF_8), Overrides.none()), 1);
    }

    @Test
    void rounded_stamps_are_seen_and_the_ends_give_the_interval() throws IOException {
        StringBuilder text = new StringBuilder("s,V\n");
        for (int k = 0; k < 10 * ROWS; k++) text.append(f("%.5e,%.4f%n", 0.1 + k * STEP, volts(k)));
        Capture c = read(text.toString());
        assertThat(c.understanding().has(Note.Kind.ROUNDED_STAMPS)).isTrue();
        assertThat(c.understanding().has(Note.Kind.DROPPED_SAMPLES)).isFalse();
        Waveforms w = (Waveforms) c.content();
        assertThat(w.interval()).isCloseTo(STEP, within(STEP * c.understanding().intervalError()));
        assertThat(w.channels().get(0).samples()).hasSize(10 * ROWS);
    }

    @Test
    void stamps_counted_in_whole_nanoseconds_contradict_the_heading() {
        String text = "Sample Interval,16.67ns\n"
                + rows(k -> f("%d,%.4f", k * 17L, volts(k))).replaceAll("(?m)^(\\d+),", "$1e-9,");
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(UnreadableCapture.class)
                .hasMessageContaining("x.csv:1")
                .hasMessageContaining("1.66700e-08");
    }

    @Test
    void suffixes_and_exponents_mix() throws IOException {
        check(
                read("t;v\n"
                        + rows(k -> k % 2 == 0
                                ? f("%.4fu;%.1fm", t(k) * 1e6, volts(k) * 1e3)
                                : f("%.9e;%.4f V", t(k), volts(k)))),
                1);
        Capture suffixed = read("t;v\n" + rows(k -> f("%.4fu;%.4f", t(k) * 1e6, volts(k))));
        check(suffixed, 1);
        assertThat(suffixed.understanding().intervalError()).isLessThan(0.02);
    }

    @Test
    void a_comma_for_everything_is_refused_and_a_decimal_comma_is_not() throws IOException {
        String both =
                rows(k -> f("%.7f,%.4f", k * STEP, Math.abs(volts(k)) + 1.5).replace('.', ','));
        assertThatThrownBy(() -> read(both))
                .isInstanceOf(UnreadableCapture.class)
                .hasMessageContaining("both separator and decimal");
        check(
                read("Sampling rate;10 MSa/s\nVolt\n"
                        + rows(k -> f("%.4f", volts(k)).replace('.', ','))),
                1);
        Capture nines = read("V\n" + rows(k -> "9,99"), Overrides.none().withInterval(1));
        assertThat(((Waveforms) nines.content()).channels().get(0).samples()[0]).isEqualTo(9.99);
    }

    @Test
    void thousands_marks_are_passed_over() throws IOException {
        Capture c = read(
                "n;mV\n" + rows(k -> f("%d;%,.2f", k, volts(k) * 1e5)),
                Overrides.none().withInterval(STEP));
        assertThat(((Waveforms) c.content()).channels().get(0).samples()[0]).isCloseTo(volts(0) * 100, within(1e-9));
    }

    @Test
    void wrong_record_length_probe_and_gaps_are_said() throws IOException {
        String text = "Record Length,5000\nProbe,10X\n" + rows(k -> f("%.9g,%.4f", t(k < 1200 ? k : k + 50), volts(k)));
        Capture c = read(text);
        assertThat(c.understanding().has(Note.Kind.CONTRADICTION)).isTrue();
        assertThat(c.understanding().has(Note.Kind.PROBE)).isTrue();
        assertThat(c.understanding().has(Note.Kind.DROPPED_SAMPLES)).isTrue();
        assertThat(((Waveforms) c.content()).channels().get(0).samples()).hasSize(1200);
    }

    @Test
    void clipped_tops_are_seen_and_clean_ones_are_not() throws IOException {
        Capture clean = read(rows(k -> f("%.9g,%.4f", t(k), volts(k))));
        assertThat(clean.understanding().has(Note.Kind.CLIPPED)).isFalse();
        Capture cut = read(rows(k ->
                f("%.9g,%.4f", t(k), Math.max(-1, Math.min(1, 1.5 * Math.cos(2 * Math.PI * 1e6 / 7 * k * STEP))))));
        assertThat(cut.understanding().has(Note.Kind.CLIPPED)).isTrue();
    }

    @Test
    void a_spectrum_is_refused() {
        assertThatThrownBy(() -> read("Frequency (Hz),Level (dBm)\n" + rows(k -> f("%d,%.2f", k * 1000, -volts(k)))))
                .isInstanceOf(UnreadableCapture.class)
                .hasMessageContaining("spectrum");
    }

    @Test
    void guesses_can_be_overridden() throws IOException {
        String text = "a,b,c\n" + rows(k -> f("%.9g,%.4f,%.4f", t(k), -volts(k), volts(k) / 10));
        Waveforms w = check(
                read(text, Overrides.none().withColumns(java.util.List.of(3)).withScale(10)), 1);
        assertThat(w.channels().get(0).name()).isEqualTo("c");
    }
}
