package galena.desk.command;

import static galena.desk.Shape.valid;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import galena.desk.LaidDemo;
import galena.desk.Screen;
import galena.desk.console.ExitCode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Modulate and deepen on the demo build, as a builder runs them. */
final class ModulationCommandsTest {
    @TempDir
    Path here;

    private Path build;
    private final Screen screen = new Screen();

    @BeforeEach
    void layTheDemo() throws IOException {
        build = LaidDemo.in(here.resolve("demo"));
    }

    @Test
    void modulate_says_depth_and_swing_side_by_side_with_cause_and_cure() {
        assertThat(screen.run("modulate", build)).isZero();
        assertThat(screen.answers())
                .contains("depth and swing", "Swing", "at a depth of", "Main cause", "Worth most")
                .contains("lower −3 dB point", "set by Ca capacitance", "upper −3 dB point", "Ro resistance")
                .contains("Ripple on the supply")
                .doesNotContain("NaN", "null", "Optional", "E-");
        assertThat(screen.answers().lines().mapToInt(String::length).max().orElseThrow())
                .isLessThanOrEqualTo(80);
        assertThat(build.resolve("packet/audio-response.svg")).content().startsWith("<svg ");
        assertThat(build.resolve("packet/tone-envelope.svg")).content().startsWith("<svg ");
    }

    @Test
    void modulate_json_keeps_to_its_schema_and_a_cure_lowers_the_swing() throws IOException {
        assertThat(screen.run("modulate", build, "--json", "--level", "200 mV", "--audio", "800 Hz"))
                .isZero();
        JsonNode report = valid("modulation.json", screen.answers());
        JsonNode tone = report.get("tone");
        assertThat(tone.get("level").asDouble()).isEqualTo(0.2);
        assertThat(tone.get("audio").asDouble()).isEqualTo(800);
        double swing = tone.get("swing").get("value").asDouble();
        assertThat(report.get("cures").get(0).get("swing").asDouble()).isLessThan(swing);
        // the coupling capacitor into the audio's load is a high pass of first order: its corner goes with 1/C
        JsonNode low = report.get("lowSetBy").get(0);
        assertThat(low.get("what").asText()).isEqualTo("Ca capacitance");
        assertThat(low.get("share").asDouble()).isCloseTo(-1, within(0.03));
    }

    @Test
    void modulate_refuses_what_is_no_level() {
        assertThat(screen.run("modulate", build, "--level", "3 Hz")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.run("modulate", build, "--audio", "1 MHz")).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks()).contains("--level", "--audio", "Allowed");
    }

    @Test
    void modulate_says_when_there_is_no_audio() throws IOException {
        Path file = build.resolve("build.yaml");
        String text = Files.readString(file, StandardCharsets.UTF_8);
        Files.writeString(file, text.replaceAll("(?m)^  (S1|Ca|Pm):.*$", ""), StandardCharsets.UTF_8);
        assertThat(screen.run("modulate", build)).isEqualTo(ExitCode.NO_ANSWER.number());
        assertThat(screen.remarks()).contains("no audio source");
    }

    @Tag("long")
    @Test
    void deepen_finds_a_level_that_every_condition_bears() throws IOException {
        assertThat(screen.run("deepen", build, "--json")).isZero();
        JsonNode found = valid("deepen.json", screen.answers());
        JsonNode best = found.get("settings").get(0);
        for (JsonNode c : best.get("conditions")) {
            assertThat(c.get("distortion").asDouble()).isLessThanOrEqualTo(0.05);
            assertThat(c.get("most").asDouble())
                    .isGreaterThanOrEqualTo(best.get("level").asDouble());
        }
        assertThat(found.get("binding").asText()).isNotBlank();
    }
}
