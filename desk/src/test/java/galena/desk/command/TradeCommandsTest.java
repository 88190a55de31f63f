package galena.desk.command;

import static galena.desk.Shape.valid;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import galena.desk.LaidDemo;
import galena.desk.Screen;
import galena.desk.console.ExitCode;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The trade's commands as a person types them. */
final class TradeCommandsTest {
    @TempDir
    private Path folder;

    private Screen screen = new Screen();

    /** The exit code; what was printed before is gone. */
    private int run(String... arguments) {
        screen = new Screen();
        return screen.run((Object[]) arguments);
    }

    private String said() {
        return screen.answers();
    }

    private String remarked() {
        return screen.remarks();
    }

    private JsonNode json() throws Exception {
        return new ObjectMapper().readTree(said());
    }

    private void demo() throws Exception {
        LaidDemo.in(folder);
    }

    @Test
    void reach_says_what_is_heard_and_how_the_field_stands_with_the_caution_beside() throws Exception {
        demo();
        assertThat(run("reach", folder.toString(), "--neighbour", "9 m", "--indoors", "5 dB"))
                .isZero();
        assertThat(said())
                .contains("rod coil of 21 turns", "neighbour, 9 m", "Rules: Europe (CEPT)", "unverified")
                .contains("Read the rules in force", "Your regulator's text and licensed", "harmonic 2");
        assertThat(Files.readString(folder.resolve("packet/reach-field.svg"))).startsWith("<svg");
        assertThat(Files.readString(folder.resolve("packet/reach-listening.svg")))
                .contains("rod set");
    }

    @Test
    void reach_hands_every_figure_on_as_json_and_draws_nothing_then() throws Exception {
        demo();
        assertThat(run("reach", folder.toString(), "--json")).isZero();
        JsonNode reach = valid("reach.json", said());
        assertThat(reach.path("kind").asText()).isEqualTo("reach");
        JsonNode moment = reach.path("moment");
        assertThat(moment.path("low").asDouble())
                .isLessThan(moment.path("value").asDouble());
        assertThat(moment.path("unit").asText()).isEqualTo("A·m²");
        assertThat(reach.path("hearing")).hasSize(3);
        assertThat(reach.at("/rules/routes/0/lines/0/crestMargin/unit").asText())
                .isEqualTo("dB");
        assertThat(folder.resolve("packet")).doesNotExist();
    }

    @Test
    void a_build_without_an_aerial_reaches_nowhere_and_says_why() throws Exception {
        demo();
        Path file = folder.resolve("build.yaml");
        String without = Files.readString(file)
                .replaceFirst(
                        "loopstick: (47 µH, q: 120 @ 1 MHz, tolerance: 5 %, from: rail, to: out)[^}]*", "coil: $1");
        Files.writeString(file, without);
        assertThat(run("reach", folder.toString())).isEqualTo(ExitCode.NO_ANSWER.number());
        assertThat(remarked()).contains("No reach: the build has no aerial").doesNotContain("\tat ");
    }

    @Test
    void slips_behind_the_options_of_reach_are_told_at_once() throws Exception {
        demo();
        int code = run(
                "reach",
                folder.toString(),
                "--around",
                "moon",
                "--neighbour",
                "8",
                "--noise",
                "3 dB",
                "--indoors",
                "1 dB");
        assertThat(code).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(remarked())
                .contains("--around: no surroundings are called \"moon\"", "--neighbour: \"8\" has no unit")
                .contains("--noise: \"3 dB\" is a level", "--indoors: is given beside a reading");
    }

    @Test
    void channel_ranks_and_tries_the_drawer() throws Exception {
        demo();
        Files.writeString(
                folder.resolve("stations.yaml"),
                """
                galena: 1
                stations:
                  - {carrier: 999 kHz, heard: night, name: the far one}
                """);
        Files.writeString(
                folder.resolve("drawer.yaml"),
                """
                galena: 1
                crystals: [10 MHz, 14.31818 MHz]
                counters: [2, 4]
                """);
        assertThat(run("channel", folder.toString())).isZero();
        assertThat(said())
                .contains("Wanted: 999 kHz", "points by night: the far one is on the channel", "Best channels")
                .contains("540 kHz", "(crystal 14.31818 MHz − crystal 10 MHz) /2 /4; pull the");
        assertThat(run("channel", folder.toString(), "--json", "--when", "day")).isZero();
        assertThat(valid("channels.json", said()).path("ranked")).hasSize(120);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--when noon | --when: \"noon\" is no time",
                "--most 0 | --most: 0 lines",
                "--intermediate 455 | --intermediate: \"455\" has no unit"
            })
    void slips_behind_the_options_of_channel_are_told(String option, String said) throws Exception {
        demo();
        String[] words = option.split(" ");
        assertThat(run("channel", folder.toString(), words[0], words[1])).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(remarked()).contains(said);
    }

    @Test
    void value_goes_both_ways() throws Exception {
        assertThat(run("value", "4.83k")).isZero();
        assertThat(said()).contains("4.87 kΩ", "yellow violet red gold", "472");
        assertThat(run("value", "--bands", "yellow violet red gold", "--json")).isZero();
        assertThat(valid("value.json", said()).at("/readings/0/value").asDouble())
                .isEqualTo(4700);
        demo();
        Files.writeString(folder.resolve("drawer.yaml"), "galena: 1\nresistors: [4.7k, 120 Ω, 100k]\n");
        assertThat(run("value", "4.83k", "--drawer", folder.toString(), "--json"))
                .isZero();
        assertThat(valid("value.json", said()).path("made")).isNotEmpty();
        assertThat(run("value", "--marking", "104K", "--part", "capacitor")).isZero();
        assertThat(said()).contains("100 nF", "90 nF to 110 nF");
    }

    @Test
    void value_takes_one_question_at_a_time() {
        assertThat(run("value")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(run("value", "1k", "--marking", "472")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(remarked()).contains("one thing is asked at a time");
        assertThat(run("value", "1k", "--part", "valve")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(remarked()).contains("no part is called \"valve\"");
    }

    @Test
    void wind_gives_turns_and_judges_a_trial() throws Exception {
        assertThat(run(
                        "wind",
                        "180 µH",
                        "--rod",
                        "140x10mm",
                        "--core",
                        "4B1",
                        "--wire",
                        "0.3mm",
                        "--svg",
                        folder.toString()))
                .isZero();
        assertThat(said()).contains("turns for 180 µH", "self-capacitance", "unverified", "Q");
        assertThat(Files.readString(folder.resolve("q.svg"))).startsWith("<svg");
        assertThat(run(
                        "wind",
                        "180 µH",
                        "--rod",
                        "140x10 mm",
                        "--wire",
                        "AWG 29",
                        "--measured",
                        "212u",
                        "--turns",
                        "60",
                        "--json"))
                .isZero();
        assertThat(valid("winding.json", said()).path("change").asInt()).isNegative();
        assertThat(json().at("/slide/value").asDouble()).isBetween(0.01, 0.07);
        assertThat(run("wind", "180 µH", "--tube", "20mm", "--wire", "0.3mm", "--json"))
                .isZero();
        valid("winding.json", said());
        assertThat(run("wind", "180 µH", "--rod", "140x10mm", "--core", "250", "--wire", "0.3mm", "--json"))
                .isZero();
        valid("winding.json", said());
        assertThat(run(
                        "wind",
                        "180 µH",
                        "--rod",
                        "140x10 mm",
                        "--wire",
                        "AWG 29",
                        "--measured",
                        "212u",
                        "--turns",
                        "60"))
                .isZero();
        assertThat(said()).contains("or slide it", "until its middle is");
        assertThat(run(
                        "wind",
                        "--rod",
                        "140x10 mm",
                        "--wire",
                        "AWG 29",
                        "--measured",
                        "212u",
                        "--turns",
                        "60",
                        "--json"))
                .isZero();
        assertThat(json().at("/permeability/value").asDouble()).isBetween(20.0, 100.0);
    }

    @Test
    void wind_tells_all_slips_at_once_and_what_does_not_fit_without_a_stack() {
        assertThat(run("wind", "180", "--rod", "140mm", "--core", "iron", "--wire", "3", "--flat"))
                .isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(remarked())
                .contains(
                        "INDUCTANCE: \"180\" has no unit",
                        "--core: \"iron\" is no permeability",
                        "--wire: \"3\" has no unit");
        assertThat(run("wind", "1 H", "--tube", "20mm", "--wire", "0.2mm")).isEqualTo(ExitCode.NO_ANSWER.number());
        assertThat(remarked()).contains("No coil: the ", "turns that fit give").doesNotContain("\tat ");
    }
}
