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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guard, spread and drift on the demo build, as a builder runs them. */
final class SpoilCommandsTest {
    @TempDir
    Path here;

    private Path build;
    private final Screen screen = new Screen();

    @BeforeEach
    void layTheDemo() throws IOException {
        build = LaidDemo.in(here.resolve("demo"));
    }

    private void fits(Screen screen) {
        assertThat(screen.answers()).doesNotContain("NaN", "null", "Optional", "E-");
        assertThat(screen.answers().lines().mapToInt(String::length).max().orElseThrow())
                .isLessThanOrEqualTo(80);
    }

    @Test
    void guard_advises_ranks_and_lists() {
        assertThat(screen.run("guard", build)).isZero();
        assertThat(screen.answers())
                .contains("At the bench", "wiring of drain", "A 10:1 probe may touch", "At TP1 your 10x probe")
                .contains("What moves the carrier", "One percent of", "Lt inductance", "One picofarad between")
                .contains("Ten nanohenries", "k = 0.001", "Metal near a coil", "Heat and supply", "has trimmed");
        fits(screen);
        assertThat(build.resolve("packet/guard.svg"))
                .content()
                .startsWith("<svg ")
                .endsWith("</svg>\n");
    }

    @Test
    void guard_keeps_to_ascii_and_shows_more_rows_at_fixed_trim() {
        Screen plain = new Screen(StandardCharsets.US_ASCII);
        assertThat(plain.run("guard", build, "--rows", "40", "--fixed")).isZero();
        assertThat(plain.answers().chars()).allMatch(c -> c < 128);
        assertThat(plain.answers()).contains("all at fixed trim", "Q2 emitter built in");
        fits(plain);
    }

    @Test
    void guard_json_keeps_to_its_schema_and_draws_only_when_told_where() throws IOException {
        assertThat(screen.run("guard", build, "--json")).isZero();
        JsonNode json = valid("guard.json", screen.answers());
        assertThat(json.at("/parts/0/carrier").doubleValue()).isBetween(-6e3, -3e3);
        assertThat(json.at("/parts/0/value").textValue()).isEqualTo("Lt inductance");
        assertThat(json.at("/trimmer").textValue()).isEqualTo("Ct");
        assertThat(build.resolve("packet")).doesNotExist();
        assertThat(new Screen().run("guard", build, "--json", "--svg", here.resolve("drawn")))
                .isZero();
        assertThat(here.resolve("drawn/guard.svg")).exists();
    }

    @Test
    void spread_counts_shows_and_draws() {
        assertThat(screen.run("spread", build, "--count", "30")).isZero();
        assertThat(screen.answers())
                .contains("30 copies, seed 1", "Yield", "meet the intent", "Where 95 % lie", "carrier before trimming")
                .contains("wanted 999 kHz", "Mean voltages", "calls one back");
        fits(screen);
        assertThat(build.resolve("packet/spread-as-set.svg")).content().contains("wanted 999 kHz");
        assertThat(build.resolve("packet/spread-distortion.svg")).exists();
    }

    @Test
    void spread_json_keeps_to_its_schema_and_a_copy_is_called_back() throws IOException {
        Files.writeString(
                build.resolve("build.yaml"),
                Files.readString(build.resolve("build.yaml")).replace("carrier: 999 kHz", "carrier: 1044 kHz"));
        assertThat(screen.run("spread", build, "--count", "40", "--seed", "5", "--json"))
                .isZero();
        JsonNode json = valid("spread.json", screen.answers());
        assertThat(json.at("/count").intValue()).isEqualTo(40);
        assertThat(json.at("/windows/as_set/low").doubleValue())
                .isLessThan(json.at("/windows/as_set/value").doubleValue());
        String worst = json.at("/worst/0/number").textValue();
        Screen back = new Screen();
        assertThat(back.run("spread", build, "--seed", "5", "--copy", worst, "--json"))
                .isZero();
        JsonNode copy = valid("copy.json", back.answers());
        assertThat(copy.at("/values")).isEqualTo(json.at("/worst/0/values"));
        assertThat(copy.at("/failures")).isEqualTo(json.at("/worst/0/failures"));
        Screen page = new Screen();
        assertThat(page.run("spread", build, "--seed", "5", "--copy", worst)).isZero();
        assertThat(page.answers()).contains("copy " + worst + " of seed 5");
        fits(page);
    }

    @Test
    void spread_draws_at_the_temperature_asked_for() throws IOException {
        assertThat(screen.run("spread", build, "--copy", "3", "--temperature", "5 °C", "--flattest", "100 %", "--json"))
                .isZero();
        JsonNode copy = valid("copy.json", screen.answers());
        assertThat(copy.at("/temperature").doubleValue()).isEqualTo(5);
        assertThat(copy.at("/charge").doubleValue()).isEqualTo(1);
    }

    @Test
    void drift_runs_and_draws() {
        assertThat(screen.run("drift", build, "--warmed", "35 °C", "--over", "30min"))
                .isZero();
        assertThat(screen.answers())
                .contains(
                        "How long", "leaves its channel", "loses depth   ", "supply pushing", "Carrier from switch-on")
                .contains("Modulation from switch-on", "Carrier against temperature", "35 °C", "The audio is set");
        fits(screen);
        for (String name : List.of("carrier", "depth", "temperature"))
            assertThat(build.resolve("packet/drift-" + name + ".svg")).exists();
    }

    @Test
    void drift_json_keeps_to_its_schema() throws IOException {
        assertThat(screen.run("drift", build, "--json", "--within", "100 Hz")).isZero();
        JsonNode json = valid("drift.json", screen.answers());
        List<Double> seconds = new ArrayList<>();
        json.at("/run").forEach(m -> seconds.add(m.at("/seconds").doubleValue()));
        assertThat(seconds).isSorted().hasSizeGreaterThan(20);
        assertThat(json.at("/leaves/value").doubleValue()).isPositive();
        assertThat(build.resolve("packet")).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "guard|--rows|0|1 to 1000 rows",
                "spread|--count|0|Draw 1 to",
                "spread|--copy|-1|numbered 0 to",
                "spread|--coldest|80 °C|lies below the warmest",
                "spread|--coldest|5|Nearest: 5 °C",
                "spread|--warmest|200 °C|out of range",
                "spread|--flattest|120 %|0 % to 100 %",
                "drift|--within|0 Hz|above zero",
                "drift|--over|5 kg|",
                "drift|--warmed|warm|A temperature is written",
                "drift|--temperature|5 V|A temperature is written"
            })
    void options_are_checked_with_place_and_remedy(String step, String option, String value, String remedy) {
        assertThat(screen.run(step, build, option, value)).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks()).contains(option).doesNotContain("\tat ");
        if (remedy != null) assertThat(screen.remarks()).contains(remedy);
        assertThat(screen.answers()).isEmpty();
        assertThat(build.resolve("packet")).doesNotExist();
    }

    @Test
    void what_does_not_oscillate_has_no_answer_and_its_own_code() throws IOException {
        Files.writeString(
                build.resolve("build.yaml"),
                Files.readString(build.resolve("build.yaml"))
                        .replace("Rs:  {resistor: 3.3 kΩ", "Rs:  {resistor: 330 kΩ"));
        for (String step : List.of("guard", "spread", "drift")) {
            Screen one = new Screen();
            assertThat(one.run(step, build)).as(step).isEqualTo(ExitCode.NO_ANSWER.number());
            assertThat(one.remarks()).contains("no steady oscillation").doesNotContain("\tat ");
            assertThat(one.answers()).isEmpty();
        }
    }
}
