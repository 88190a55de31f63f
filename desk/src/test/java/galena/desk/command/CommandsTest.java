package galena.desk.command;

import static galena.desk.Shape.valid;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import galena.desk.LaidDemo;
import galena.desk.Screen;
import galena.desk.console.ExitCode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands on the demo build, as a builder runs them. */
final class CommandsTest {
    @TempDir
    Path here;

    private Path build;
    private final Screen screen = new Screen();

    @BeforeEach
    void layTheDemo() throws IOException {
        build = LaidDemo.in(here.resolve("a build with blanks"));
    }

    private void change(String from, String to) throws IOException {
        Path file = build.resolve("build.yaml");
        String text = Files.readString(file);
        assertThat(text).contains(from);
        Files.writeString(file, text.replace(from, to));
    }

    @Test
    void the_demo_goes_through_every_step_and_leaves_a_packet() {
        Path fresh = here.resolve("fresh");
        assertThat(screen.run("demo", fresh)).isZero();
        assertThat(screen.answers())
                .contains("Against the intent", "starts by itself", "Ct covers", "999 kHz lies near");
        assertThat(fresh.resolve("build.yaml")).exists();
        assertThat(fresh.resolve("packet/prediction.json")).exists();
        assertThat(fresh.resolve("packet/cover-Ct.svg")).exists();
        assertThat(screen.answers()).contains("what a friend needs to build it too");
        assertThat(fresh.resolve("packet/packet.html")).exists();
        assertThat(fresh.resolve("packet/packet.pdf")).exists();
    }

    @Test
    void the_demo_never_writes_over_a_build() throws IOException {
        change("name: Reading-room sender", "name: My own sender   # mine");
        byte[] before = Files.readAllBytes(build.resolve("build.yaml"));
        assertThat(screen.run("demo", build, "--brief")).isZero();
        assertThat(Files.readAllBytes(build.resolve("build.yaml"))).isEqualTo(before);
        assertThat(screen.answers()).contains("My own sender");
        assertThat(screen.remarks()).contains("is used as it is");
    }

    @Test
    void predict_prints_a_page_with_an_interval_to_every_figure() {
        assertThat(screen.run("predict", build)).isZero();
        String page = screen.answers();
        assertThat(page)
                .contains(
                        "Against the intent", "Start", "Carrier", "Harmonics", "Supply", "Modulation of current in La")
                .containsPattern("frequency +\\d+ kHz \\(\\d+ to \\d+ kHz\\)")
                .containsPattern("current +[\\d.]+ mA \\([\\d.]+ to [\\d.]+ mA\\)")
                .doesNotContain("NaN", "null", "Optional", "E-");
        assertThat(page.lines().mapToInt(String::length).max().orElseThrow()).isLessThanOrEqualTo(80);
    }

    @Test
    void predict_prints_ascii_where_the_screen_has_no_more() {
        Screen plain = new Screen(StandardCharsets.US_ASCII);
        assertThat(plain.run("predict", build)).isZero();
        assertThat(plain.answers().chars()).allMatch(c -> c < 128);
        assertThat(plain.answers()).doesNotContain("?").contains("from 1 uV");
        assertThat(plain.answers().lines().mapToInt(String::length).max().orElseThrow())
                .isLessThanOrEqualTo(80);
    }

    @Test
    void predict_json_keeps_to_its_schema() throws IOException {
        assertThat(screen.run("predict", build, "--json")).isZero();
        JsonNode json = valid("prediction.json", screen.answers());
        assertThat(json.at("/running/carrier/value").doubleValue()).isBetween(950e3, 1050e3);
        assertThat(json.at("/running/carrier/low").doubleValue())
                .isLessThan(json.at("/running/carrier/value").doubleValue());
        assertThat(json.at("/setting/adjustments/Ct").doubleValue()).isEqualTo(0.6);
    }

    @Test
    void set_moves_the_trimmer_for_one_question_only() throws IOException {
        byte[] before = Files.readAllBytes(build.resolve("build.yaml"));
        assertThat(screen.run("predict", build, "--json", "--live", "--set", "Ct=20%"))
                .isZero();
        Screen other = new Screen();
        assertThat(other.run("predict", build, "--json", "--live", "--set", "Ct=80 %"))
                .isZero();
        JsonNode less = valid("prediction.json", screen.answers()), more = valid("prediction.json", other.answers());
        assertThat(less.at("/running/carrier/value").doubleValue())
                .isGreaterThan(more.at("/running/carrier/value").doubleValue() + 10e3);
        assertThat(less.at("/digest").textValue())
                .isNotEqualTo(more.at("/digest").textValue());
        assertThat(Files.readAllBytes(build.resolve("build.yaml"))).isEqualTo(before);
    }

    @Test
    void all_problems_of_a_file_come_at_once_with_place_and_remedy() throws IOException {
        change("{jfet: BF256B,", "{jfett: BF256B,");
        change("{trimmer: 5..60 pF, set", "{trimmer: 5..60, set");
        assertThat(screen.run("predict", build)).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.answers()).isEmpty();
        assertThat(screen.remarks())
                .containsPattern("build\\.yaml:\\d+:\\d+  parts\\.Ct\\.trimmer: \"5\\.\\.60\" has no unit")
                .contains("Nearest: 5..60 pF", "Nearest: jfet")
                .doesNotContain("\tat ");
    }

    @Test
    void options_are_checked_like_files() {
        assertThat(screen.run("predict", build, "--set", "Cx=3%")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("predict", build, "--temperature", "200 °C")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("predict", build, "--temperature", "5")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("predict", build, "--probe", "TP9")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("cover", build, "Q1")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("cover", build, "Ct", "--steps", "0")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("predict", here.resolve("nowhere"))).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks())
                .contains(
                        "--set: Cx: no part is named",
                        "\"200 °C\" is out of range",
                        "Nearest: 5 °C",
                        "Test points: TP1, TP2.",
                        "Adjustments: Ct, Pm, Co.",
                        "The travel is divided into",
                        "there is no such folder")
                .doesNotContain("\tat ");
        assertThat(screen.answers()).isEmpty();
    }

    @Test
    void an_oscillator_without_gain_is_an_answer_with_its_own_code() throws IOException {
        change("Rs:  {resistor: 3.3 kΩ", "Rs:  {resistor: 330 kΩ");
        assertThat(screen.run("predict", build)).isEqualTo(ExitCode.NO_ANSWER.number());
        assertThat(screen.answers()).contains("starts by itself  no", "None: no steady oscillation");
        Screen json = new Screen();
        assertThat(json.run("predict", build, "--json")).isEqualTo(ExitCode.NO_ANSWER.number());
        assertThat(valid("prediction.json", json.answers()).at("/running/state").textValue())
                .isEqualTo("silent");
        Screen cover = new Screen();
        assertThat(cover.run("cover", build, "Ct")).isEqualTo(ExitCode.NO_ANSWER.number());
        assertThat(cover.remarks()).contains("does not oscillate");
    }

    @Test
    void strict_leaves_with_its_own_code_when_the_intent_is_not_met() throws IOException {
        change("carrier: 999 kHz", "carrier: 1413 kHz");
        assertThat(screen.run("predict", build, "--live")).isZero();
        assertThat(screen.run("predict", build, "--live", "--strict")).isEqualTo(ExitCode.NOT_MET.number());
        assertThat(screen.answers()).contains("FAILS");
    }

    @Test
    void cover_draws_a_carrier_that_falls_as_the_trimmer_closes() throws IOException {
        assertThat(screen.run("cover", build, "Ct", "--steps", "10")).isZero();
        assertThat(screen.answers()).contains("Ct covers", "wanted 999 kHz", "position");
        assertThat(build.resolve("packet/cover-Ct.svg"))
                .content()
                .startsWith("<svg ")
                .endsWith("</svg>\n");

        Screen other = new Screen();
        assertThat(other.run("cover", build, "Ct", "--steps", "10", "--json")).isZero();
        List<Double> carriers = new ArrayList<>();
        valid("coverage.json", other.answers())
                .at("/points")
                .forEach(p -> carriers.add(p.at("/frequency").doubleValue()));
        assertThat(carriers).hasSize(11).isSortedAccordingTo((a, b) -> Double.compare(b, a));
    }
}
