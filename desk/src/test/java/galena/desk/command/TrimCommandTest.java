package galena.desk.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import galena.desk.LaidDemo;
import galena.desk.Screen;
import galena.desk.console.ExitCode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code galena trim} on the demo build: what it says is what predict then finds there. */
final class TrimCommandTest {
    @TempDir
    Path here;

    private Path build = Path.of("");

    @BeforeEach
    void layTheDemo() throws IOException {
        build = LaidDemo.in(here.resolve("build"));
    }

    private JsonNode trim(int code, String... more) throws IOException {
        Object[] arguments = new Object[more.length + 3];
        arguments[0] = "trim";
        arguments[1] = build;
        System.arraycopy(more, 0, arguments, 2, more.length);
        arguments[arguments.length - 1] = "--json";
        Screen screen = new Screen();
        assertThat(screen.run(arguments)).isEqualTo(code);
        try (InputStream in = DemoCommand.class.getResourceAsStream("/galena/schema/trim.json")) {
            assertThat(in).isNotNull();
            JsonNode tree = new ObjectMapper().readTree(screen.answers());
            var schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(new String(in.readAllBytes(), StandardCharsets.UTF_8), InputFormat.JSON);
            assertThat(schema.validate(tree)).isEmpty();
            return tree;
        }
    }

    private JsonNode predicted(String setting) throws IOException {
        Screen screen = new Screen();
        assertThat(screen.run("predict", build, "--json", "--set", setting)).isZero();
        return new ObjectMapper().readTree(screen.answers());
    }

    private static double percent(JsonNode answer) {
        return 100 * answer.at("/position").doubleValue();
    }

    @Test
    void the_carrier_at_the_position_found_is_the_wanted_one() throws IOException {
        JsonNode answer = trim(0, "Ct", "--carrier", "1020 kHz");
        assertThat(answer.at("/end").textValue()).isEqualTo("met");
        double carrier = predicted("Ct=" + percent(answer) + "%")
                .at("/running/carrier/value")
                .doubleValue();
        assertThat(carrier).isCloseTo(1020e3, within(2.0));
    }

    /** The preset is turned until the static negative peak is half; the modulation curve there, solved point by point, agrees. */
    @Test
    void the_depth_at_the_position_found_is_the_wanted_one() throws IOException {
        JsonNode answer = trim(0, "Pm", "--modulation", "50 %");
        assertThat(answer.at("/end").textValue()).isEqualTo("met");
        double peak = predicted("Pm=" + percent(answer) + "%")
                .at("/modulation/negativePeak/value")
                .doubleValue();
        assertThat(peak).isCloseTo(0.5, within(0.006));
    }

    @Test
    void a_depth_beyond_the_travel_and_a_carrier_beyond_it_end_at_a_stop() throws IOException {
        JsonNode depth = trim(ExitCode.NO_ANSWER.number(), "Pm", "--modulation", "95 %");
        assertThat(depth.at("/end").textValue()).isEqualTo("out_of_range");
        assertThat(depth.at("/position").doubleValue()).isEqualTo(1);
        assertThat(depth.at("/found/value").doubleValue())
                .isCloseTo(
                        predicted("Pm=100%")
                                .at("/modulation/negativePeak/value")
                                .doubleValue(),
                        within(0.006));
        JsonNode carrier = trim(ExitCode.NO_ANSWER.number(), "Ct", "--carrier", "1500 kHz");
        assertThat(carrier.at("/end").textValue()).isEqualTo("out_of_range");
        assertThat(carrier.at("/position").doubleValue()).isZero();
    }

    @Test
    void an_output_tank_gives_its_largest_current_at_its_peak_and_no_more() throws IOException {
        JsonNode much = trim(ExitCode.NO_ANSWER.number(), "Co", "--current", "La=1 A");
        assertThat(much.at("/end").textValue()).isEqualTo("turns_back");
        double most = much.at("/found/value").doubleValue();
        JsonNode less = trim(0, "Co", "--current", "La=" + 800 * most + " mA");
        assertThat(less.at("/found/value").doubleValue()).isCloseTo(0.8 * most, within(1e-3 * most));
    }

    @Test
    void writes_one_value_and_only_when_told_to() throws IOException {
        Path file = build.resolve("build.yaml");
        String before = Files.readString(file);
        assertThat(new Screen().run("trim", build, "Ct", "--carrier", "1005kHz"))
                .isZero();
        assertThat(file).hasContent(before);
        Screen screen = new Screen();
        assertThat(screen.run("trim", build, "Ct", "--carrier", "1005kHz", "--write"))
                .isZero();
        assertThat(screen.answers()).contains("Set Ct to", "carrier");
        assertThat(screen.remarks()).contains("build.yaml: Ct is set to");
        String after = Files.readString(file);
        String[] old = before.split("\n"), changed = after.split("\n");
        assertThat(changed).hasSameSizeAs(old);
        int different = 0;
        for (int k = 0; k < old.length; k++) if (!old[k].equals(changed[k])) different++;
        assertThat(different).isEqualTo(1);
        assertThat(new Screen().run("trim", build, "Ct", "--carrier", "1005kHz", "--write"))
                .isZero();
        assertThat(file).hasContent(after);
    }

    @Test
    void a_slip_is_told_with_its_remedy() {
        Screen screen = new Screen();
        for (Object[] slip : new Object[][] {
            {"trim", build, "Ct"},
            {"trim", build, "Q1", "--carrier", "1 MHz"},
            {"trim", build, "Ct", "--carrier", "5 V"},
            {"trim", build, "Ct", "--voltage", "Lx=3 V"},
            {"trim", build, "Ct", "--voltage", "3 V"},
            {"trim", build, "Pm", "--modulation", "120 %"}
        }) assertThat(screen.run(slip)).isEqualTo(ExitCode.BAD_INPUT.number());
        assertThat(screen.remarks())
                .contains("one thing is wanted", "has no position", "no coil and no net", "names no place", "no depth")
                .doesNotContain("\tat ");
    }
}
