package galena.desk.command;

import static galena.desk.Shape.valid;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import galena.desk.LaidDemo;
import galena.desk.Screen;
import galena.desk.console.ExitCode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The bench commands as a builder runs them: captures of known content, readings by eye, sums with known answers. */
final class BenchCommandsTest {
    private static final double CARRIER = 987e3;
    private static final double RATE = 5e6;

    @TempDir
    Path here;

    private Path build;
    private Path tone;
    private final Screen screen = new Screen();

    @BeforeEach
    void lay() throws IOException {
        build = LaidDemo.in(here.resolve("a build"));
        tone = here.resolve("tone.csv");
        write(tone, "Time (us),CH1 (V)\n", 16_000, k -> {
            double t = k / RATE, e = 0.8 * (1 + 0.6 * Math.cos(2 * Math.PI * 1000 * t));
            double v = e * (Math.cos(2 * Math.PI * CARRIER * t) + 0.02 * Math.cos(4 * Math.PI * CARRIER * t));
            return String.format(Locale.ROOT, "%.1f,%.3f", 1e6 * t, 0.0125 * Math.rint(v / 0.0125));
        });
    }

    private static void write(Path file, String head, int rows, IntFunction<String> row) throws IOException {
        StringBuilder text = new StringBuilder(head);
        for (int k = 0; k < rows; k++) text.append(row.apply(k)).append('\n');
        Files.writeString(file, text);
    }

    private static JsonNode figure(JsonNode file, String key) {
        for (JsonNode figure : file.at("/figures"))
            if (figure.at("/key").textValue().equals(key)) return figure;
        throw new AssertionError("no figure " + key);
    }

    @Test
    void measure_says_one_sentence_first_then_what_it_understood_and_the_figures() {
        assertThat(screen.run("measure", tone)).isZero();
        String page = screen.answers();
        assertThat(page.lines().skip(1).findFirst().orElseThrow()).contains("A carrier at 987.00 kHz with +60/−60 %");
        assertThat(page)
                .containsSubsequence("Understood", "time in column 1", "Figures: voltage at the probe", "positive peak")
                .containsPattern("carrier +987\\.000 ± 0\\.079 kHz")
                .containsPattern("harmonic 2 +−3[34]\\.")
                .doesNotContain("NaN", "null", "Optional");
        assertThat(page.lines().mapToInt(String::length).max().orElseThrow()).isLessThanOrEqualTo(80);
        assertThat(page.lines()).noneMatch(l -> l.endsWith(" "));
    }

    @Test
    void measure_prints_ascii_where_the_screen_has_no_more() {
        Screen plain = new Screen(StandardCharsets.US_ASCII);
        assertThat(plain.run("measure", tone, "--explain")).isZero();
        assertThat(plain.answers().chars()).allMatch(c -> c < 128);
        assertThat(plain.answers()).doesNotContain("?").contains("phase slope");
    }

    @Test
    void measure_json_keeps_to_its_schema_and_holds_the_truth() throws IOException {
        Path bad = Files.writeString(here.resolve("empty.csv"), "");
        assertThat(screen.run("measure", tone, bad, "--json")).isEqualTo(ExitCode.BAD_INPUT.number());
        JsonNode json = valid("measurement.json", screen.answers());
        JsonNode first = json.at("/files/0");
        assertThat(figure(first, "carrier.frequency").at("/low").doubleValue()).isLessThan(CARRIER);
        assertThat(figure(first, "carrier.frequency").at("/high").doubleValue()).isGreaterThan(CARRIER);
        assertThat(figure(first, "depth.positive").at("/low").doubleValue()).isLessThan(0.6);
        assertThat(figure(first, "depth.positive").at("/high").doubleValue()).isGreaterThan(0.6);
        assertThat(figure(first, "depth.positive").at("/unit").textValue()).isEqualTo("1");
        assertThat(json.at("/files/1/unreadable/cause").textValue()).contains("empty");
    }

    @Test
    void every_guess_can_be_stated() throws IOException {
        Path odd = here.resolve("odd.txt");
        write(odd, "", 16_000, k -> {
            double t = k / RATE, e = 0.08 * (1 + 0.6 * Math.cos(2 * Math.PI * 1000 * t));
            return "7;"
                    + String.format(Locale.ROOT, "%.5f", e * Math.cos(2 * Math.PI * CARRIER * t))
                            .replace('.', ',') + ";" + k % 3;
        });
        assertThat(screen.run(
                        "measure",
                        odd,
                        "--separator",
                        "semicolon",
                        "--decimal",
                        "comma",
                        "--time-column",
                        "0",
                        "--columns",
                        "2",
                        "--rate",
                        "5 MHz",
                        "--ratio",
                        "10x",
                        "--kind",
                        "waveform",
                        "--json",
                        "--clock",
                        "1",
                        "--gain",
                        "1 %",
                        "--of",
                        "tank",
                        "--carrier",
                        "999 kHz"))
                .as(screen.remarks())
                .isZero();
        JsonNode file = valid("measurement.json", screen.answers()).at("/files/0");
        JsonNode carrier = figure(file, "carrier.frequency"), amplitude = figure(file, "carrier.amplitude");
        assertThat(carrier.at("/value").doubleValue()).isBetween(CARRIER - 2, CARRIER + 2);
        assertThat(carrier.at("/high").doubleValue() - carrier.at("/low").doubleValue())
                .isBetween(1.9, 2.2); // 1 ppm either way
        assertThat(carrier.at("/quantity").textValue()).isEqualTo("tank voltage");
        assertThat(amplitude.at("/value").doubleValue()).isBetween(0.79, 0.81);
    }

    @Test
    void an_aliased_capture_is_unfolded_when_the_carrier_is_known_and_the_intent_knows_it() throws IOException {
        Path slow = here.resolve("slow.csv");
        write(slow, "Time (us),CH1 (V)\n", 8000, k -> {
            double t = k / 700e3;
            return String.format(Locale.ROOT, "%.6f,%.3f", 1e6 * t, Math.cos(2 * Math.PI * CARRIER * t));
        });
        assertThat(screen.run("measure", slow, "--into", build, "--when", "2026-03-07"))
                .isZero();
        assertThat(screen.answers())
                .contains("true frequency is 987.0 kHz", "Expected carrier: 999 kHz, from the build's intent");
        assertThat(build.resolve("bench/log.yaml")).content().contains("{carrier: 987.00");
    }

    @Test
    void plots_are_written_where_asked() {
        Path plots = here.resolve("plots");
        assertThat(screen.run("measure", tone, "--svg", plots)).isZero();
        assertThat(plots.resolve("tone.csv-waveform.svg")).content().startsWith("<svg ");
        assertThat(plots.resolve("tone.csv-spectrum.svg")).content().startsWith("<svg ");
        assertThat(plots.resolve("tone.csv-trapezoid.svg")).doesNotExist();
    }

    @Test
    void readings_are_filed_once_with_their_circumstances() throws IOException {
        Object[] line = {
            "measure",
            tone,
            "--into",
            build,
            "--at",
            "TP2",
            "--when",
            "2026-03-07 19:30",
            "--instrument",
            "8-bit scope",
            "--set",
            "Ct=55%",
            "--temperature",
            "22 °C",
            "--supply",
            "8.4 V"
        };
        assertThat(screen.run(line)).isZero();
        String log = Files.readString(build.resolve("bench/log.yaml"));
        assertThat(log)
                .contains("{carrier: 987.00 kHz, uncertainty: 79 Hz, at: TP2, when: \"2026-03-07 19:30\"")
                .contains("probe: 10x, set: {Ct: 55 %, Pm: 90 %, Co: 50 %}, temperature: 22 °C, supply: 8.4 V")
                .contains("{second_harmonic: ", "{positive_peak: 60", "capture: tone.csv}");
        assertThat(screen.run(line)).isZero();
        assertThat(screen.remarks()).contains("readings are in the log already");
        assertThat(Files.readString(build.resolve("bench/log.yaml"))).isEqualTo(log);
    }

    @Test
    void readings_by_eye_are_noted_with_the_digits_they_have() throws IOException {
        assertThat(screen.run(
                        "note",
                        build,
                        "carrier=987.2 kHz ± 0.1 %",
                        "voltage=2.31 V",
                        "second-harmonic=-31 dB",
                        "--at",
                        "TP1",
                        "--when",
                        "2026-03-07",
                        "--how",
                        "set's dial"))
                .as(screen.remarks())
                .isZero();
        assertThat(Files.readString(build.resolve("bench/log.yaml")))
                .contains("{carrier: 987.2 kHz, uncertainty: 987.2 Hz, at: TP1, when: 2026-03-07, how: \"set's dial\"")
                .contains("{voltage: 2.31 V, uncertainty: 5 mV,")
                .contains("{second_harmonic: -31 dB, uncertainty: 0.5 dB,");
        assertThat(screen.run("predict", build, "--live")).isZero();
    }

    @Test
    void a_capacitor_put_across_a_point_is_noted_with_the_reading() throws IOException {
        assertThat(screen.run("note", build, "carrier=975.1 kHz", "--at", "TP2", "--added", "10 pF"))
                .as(screen.remarks())
                .isZero();
        assertThat(Files.readString(build.resolve("bench/log.yaml"))).contains("added: 10 pF");
        Screen wrong = new Screen();
        assertThat(wrong.run("note", build, "carrier=975.1 kHz", "--added", "10 pF"))
                .isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(wrong.remarks()).contains("say --at");
        assertThat(wrong.run("note", build, "carrier=975.1 kHz", "--at", "TP2", "--added", "10 F"))
                .isEqualTo(ExitCode.BAD_INPUT.number());
    }

    @Test
    void a_reading_that_cannot_be_noted_is_told_and_nothing_is_written() {
        assertThat(screen.run("note", build, "carrier=987")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("note", build, "voltag=3 V")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("note", build, "3 V")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("note", build, "voltage=3 V", "--at", "TP9")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("note", build, "voltage=3 V", "--when", "today")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("note", build, "voltage=3 V", "--set", "Ct=140%")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("note", build)).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("measure", tone, "--at", "TP1")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks())
                .contains(
                        "carrier: \"987\" has no unit",
                        "Nearest: voltage",
                        "\"3 V\" has no =",
                        "Test points: TP1, TP2.",
                        "\"today\" is no day or moment",
                        "lies outside the travel",
                        "add --into DIR")
                .doesNotContain("\tat ");
        assertThat(build.resolve("bench/log.yaml")).doesNotExist();
    }

    @Test
    void bad_files_get_one_clear_line_each() throws IOException {
        byte[] noise = new byte[4000];
        new Random(1).nextBytes(noise);
        Path[] files = {
            Files.writeString(here.resolve("empty.csv"), ""),
            Files.write(here.resolve("noise.dat"), noise),
            Files.writeString(here.resolve("one.csv"), "1.0\n"),
            Files.writeString(here.resolve("words.txt"), "these are words\nand no numbers\n"),
            Files.writeString(here.resolve("cut.wav"), "RIFF\0\0\0\0WAVEfmt "),
            Files.writeString(here.resolve("meta.sigmf-meta"), "{\"global\": {\"core:datatype\": \"cx\"}}"),
            Files.writeString(here.resolve("line.csv"), "1".repeat(3_000_000)),
            here.resolve("nowhere.csv"),
            build,
            nan(),
            bomb()
        };
        for (Path file : files) {
            Screen one = new Screen();
            assertThat(one.run("measure", file)).as(file.toString()).isEqualTo(ExitCode.BAD_INPUT.number());
            assertThat(one.answers()).isEmpty();
            assertThat(one.remarks().lines()).as(one.remarks()).hasSize(1);
            assertThat(one.remarks())
                    .contains(file.getFileName().toString(), ". ")
                    .hasSizeLessThan(600);
        }
    }

    private Path nan() throws IOException {
        Path file = here.resolve("nan.csv");
        write(file, "t (us),v (V)\n", 300, k -> String.format(Locale.ROOT, "%.2f,NaN", 0.08 * k));
        return file;
    }

    /** 200 MB of zeros in 200 kB. */
    private Path bomb() throws IOException {
        Path file = here.resolve("bomb.csv.gz");
        byte[] zeros = new byte[1 << 20];
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            for (int k = 0; k < 200; k++) out.write(zeros);
        }
        return file;
    }

    @Test
    void a_capture_without_a_carrier_is_an_answer_with_its_own_code() throws IOException {
        Path quiet = here.resolve("quiet.csv");
        Random random = new Random(2);
        write(
                quiet,
                "Time (us),CH1 (V)\n",
                4000,
                k -> String.format(Locale.ROOT, "%.1f,%.3f", k * 0.2, 0.01 * random.nextGaussian()));
        assertThat(screen.run("measure", quiet)).isEqualTo(ExitCode.NO_ANSWER.number());
        assertThat(screen.answers()).contains("No line stands out of the noise");
    }

    @Test
    void bad_options_are_told_with_what_is_allowed() {
        String[][] lines = {
            {"--rate", "fast"},
            {"--rate", "0 Hz"},
            {"--separator", "dash"},
            {"--decimal", "dot"},
            {"--columns", "0"},
            {"--format", "u9"},
            {"--kind", "scope"},
            {"--mains", "5 kHz"},
            {"--of", "air"},
            {"--clock", "-1"},
            {"--gain", "300 %"},
            {"--trust", "3 dB"},
            {"--ratio", "0"},
            {"--interval", "x"}
        };
        for (String[] line : lines) {
            Screen one = new Screen();
            assertThat(one.run("measure", tone, line[0], line[1])).as(line[0]).isEqualTo(ExitCode.BAD_INPUT.number());
            assertThat(one.remarks()).startsWith(line[0]).doesNotContain("\tat ");
            assertThat(one.answers()).isEmpty();
        }
    }

    /** 100 µH with 250 pF, then with 100 pF more, by f = 1/(2π√(LC)). */
    @Test
    void two_frequencies_give_coil_and_strays() throws IOException {
        double bare = 1 / (2 * Math.PI * Math.sqrt(100e-6 * 250e-12));
        double loaded = 1 / (2 * Math.PI * Math.sqrt(100e-6 * 350e-12));
        assertThat(screen.run(
                        "sum",
                        "added-capacitor",
                        "--bare",
                        hertz(bare),
                        "--loaded",
                        hertz(loaded),
                        "--added",
                        "100 pF +- 2 %",
                        "--fitted",
                        "240 pF ± 1 pF",
                        "--json"))
                .as(screen.remarks())
                .isZero();
        JsonNode json = valid("sum.json", screen.answers());
        assertThat(json.at("/figures/0/value").doubleValue()).isBetween(99.9e-6, 100.1e-6);
        assertThat(json.at("/figures/1/value").doubleValue()).isBetween(249.8e-12, 250.2e-12);
        assertThat(json.at("/figures/2/value").doubleValue()).isBetween(9.8e-12, 10.2e-12);
        assertThat(json.at("/figures/1/high").doubleValue()).isBetween(254.9e-12, 255.4e-12); // 2 % of 250 pF
        assertThat(screen.run("sum", "width", "--lower", "991 kHz", "--upper", "1.008 MHz"))
                .isZero();
        assertThat(screen.answers()).contains("Q, loaded", "59", "half of the last digit written");
    }

    private static String hertz(double f) {
        return String.format(Locale.ROOT, "%.1f Hz", f);
    }

    @Test
    void a_ring_down_gives_q() throws IOException {
        Path ring = here.resolve("ring.csv");
        Random random = new Random(3);
        write(ring, "Time (us),CH1 (V)\n", 5000, k -> {
            double t = (k - 50) / 12.5e6;
            double v = t < 0 ? 0 : Math.exp(-Math.PI * 1e6 * t / 60) * Math.sin(2 * Math.PI * 1e6 * t);
            return String.format(Locale.ROOT, "%.2f,%.5f", k * 0.08, v + 0.002 * random.nextGaussian());
        });
        assertThat(screen.run("sum", "ring-down", ring, "--json"))
                .as(screen.remarks())
                .isZero();
        JsonNode q = valid("sum.json", screen.answers()).at("/figures/0");
        assertThat(q.at("/low").doubleValue()).isLessThan(60);
        assertThat(q.at("/high").doubleValue()).isGreaterThan(60);
        Screen flat = new Screen();
        assertThat(flat.run("sum", "ring-down", tone)).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(flat.remarks().lines()).hasSize(1);
    }

    @Test
    void a_screen_gives_depth_and_four_answers_give_the_hum() {
        assertThat(screen.run("sum", "screen", "--crest", "6", "--trough", "2", "--unmodulated", "4"))
                .isZero();
        assertThat(screen.answers()).contains("modulation depth", "50 %", "positive peak", "negative peak");
        assertThat(screen.run("sum", "hum", "--audio-shorted", "no")).isZero();
        assertThat(screen.answers()).contains("comes in on the audio lead", "Try: ");
        assertThat(screen.run("sum", "hum", "--mains-line", "-40 dB")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("sum", "screen", "--crest", "1", "--trough", "2")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("sum", "width", "--lower", "1 MHz", "--upper", "900 kHz"))
                .isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("sum", "width")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks()).contains("--lower and --upper are missing").doesNotContain("\tat ");
    }

    @Test
    void the_demo_lays_measures_and_compares_an_invented_bench_once() throws IOException {
        Path demo = here.resolve("demo");
        assertThat(screen.run("demo", demo, "--brief")).isZero();
        assertThat(screen.answers())
                .containsSubsequence("Measured (invented", "invented-tone-TP2.csv: A carrier at", "predicted")
                .containsPattern("fits +carrier +TP2");
        String log = Files.readString(demo.resolve("bench/log.yaml"));
        assertThat(log).startsWith("# Every reading here is invented");
        Screen again = new Screen();
        assertThat(again.run("demo", demo, "--brief")).isZero();
        assertThat(again.answers()).doesNotContain("Measured (invented");
        assertThat(Files.readString(demo.resolve("bench/log.yaml"))).isEqualTo(log);
    }
}
