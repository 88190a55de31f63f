package galena.desk.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.pattern.Pattern;
import galena.desk.Shape;
import galena.desk.server.Wire;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A folder without a build, and one with several. */
final class ShelfTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    private Path folder;

    private static JsonNode json(Wire.Answer answer) throws IOException {
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return MAPPER.readTree(answer.body());
    }

    private String file() throws IOException {
        return Files.readString(folder.resolve("build.yaml"), StandardCharsets.UTF_8);
    }

    private static String begin(String carrier, String supply) {
        return MAPPER.createObjectNode()
                .put("pattern", "grounded-gate-colpitts")
                .put("name", "Attic sender")
                .put("intent.carrier", carrier)
                .put("intent.distance", "3 m")
                .put("supply.battery", supply)
                .toString();
    }

    @Test
    void an_empty_folder_offers_patterns_and_begins_a_build_as_the_command_does() throws Exception {
        try (OpenedDemo page = OpenedDemo.as(folder)) {
            assertThat(page.page().get("/").body()).contains("Begin a build");
            assertThat(page.page().get("/api/state").status()).isEqualTo(404);
            JsonNode start = json(page.page().get("/api/start"));
            Shape.valid("start.json", start.toString());
            assertThat(start.at("/patterns")).hasSameSizeAs(Pattern.all());
            json(page.page().post("/api/begin", begin("828 kHz", "6xAA-NiMH")));
            assertThat(file())
                    .isEqualTo(Pattern.named("grounded-gate-colpitts")
                            .text()
                            .replace("name: Tram-shelter sender", "name: Attic sender"));
            JsonNode state = json(page.page().get("/api/state"));
            assertThat(state.at("/name").asText()).isEqualTo("Attic sender");
            assertThat(state.at("/jobs"))
                    .as("the pattern stands for this intent")
                    .isEmpty();
            assertThat(page.page().post("/api/begin", begin("828 kHz", "9 V")).status())
                    .as("a build that is there is not begun again")
                    .isEqualTo(404);
            assertThat(page.faults).isEmpty();
        }
    }

    @Test
    void another_intent_is_written_and_its_values_are_asked_for_at_once() throws Exception {
        try (OpenedDemo page = OpenedDemo.as(folder)) {
            json(page.page().post("/api/begin", begin("999 kHz", "9 V")));
            assertThat(file())
                    .contains("carrier: 999 kHz\n")
                    .contains("supply: {voltage: 9 V, resistance: 0 Ω}")
                    .doesNotContain("channel 92");
            JsonNode job = json(page.page().get("/api/state")).at("/jobs/0");
            assertThat(job.at("/work").asText()).isEqualTo("propose");
            page.page().send("DELETE", "/api/work/" + job.at("/id").asLong(), "");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"999 parsecs", "}", "1 MHz, rules: cept"})
    void a_wish_that_cannot_stand_is_refused_and_nothing_is_written(String carrier) throws Exception {
        try (OpenedDemo page = OpenedDemo.as(folder)) {
            assertThat(page.page().post("/api/begin", begin(carrier, "9 V")).status())
                    .isEqualTo(422);
            assertThat(folder).isEmptyDirectory();
        }
    }

    @Test
    void drawings_that_come_with_the_program_are_of_its_patterns() throws Exception {
        for (Pattern pattern : Pattern.all()) {
            Pattern.write(pattern.name(), folder.resolve(pattern.name()));
            Build build = BuildFolder.open(folder.resolve(pattern.name())).build();
            Optional<String> svg = Drawn.ready(build);
            if (pattern.equals(Pattern.all().get(0))) assertThat(svg).isPresent();
            if (svg.isEmpty()) continue; // it is placed when the build is begun
            for (String part : build.parts().keySet()) assertThat(svg.get()).contains("data-part=\"" + part + "\"");
        }
    }

    @Test
    void a_proposal_beside_is_taken_in_as_one_edit_and_given_back() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        String own = file(), other = own.replace("coil: 100 µH", "coil: 91 µH").replace("3.3 kΩ", "2.7 kΩ");
        Files.writeString(Files.createDirectory(folder.resolve("proposed")).resolve("build.yaml"), other);
        try (OpenedDemo page = OpenedDemo.in(folder)) {
            json(page.page().post("/api/take", "{\"build\":\"proposed\"}"));
            assertThat(file()).isEqualTo(other);
            JsonNode state = json(page.page().get("/api/state"));
            assertThat(state.at("/undo").asText()).contains("as in proposed").contains("as it was");
            assertThat(json(page.page().post("/api/undo", "{}")).at("/redo").asText())
                    .contains("as in proposed");
            assertThat(file()).isEqualTo(own);
            json(page.page().post("/api/redo", "{}"));
            assertThat(file()).isEqualTo(other);
        }
        try (OpenedDemo again = OpenedDemo.in(folder)) {
            json(again.page().post("/api/undo", "{}"));
            assertThat(file()).as("also after a restart").isEqualTo(own);
            Files.writeString(
                    folder.resolve("build.yaml"), own.replace("5 ppm", "6 ppm").replace("3.3 kΩ", "3.6 kΩ"));
            assertThat(again.page().post("/api/redo", "{}").status())
                    .as("another program has written meanwhile")
                    .isEqualTo(422);
            assertThat(file()).contains("3.6 kΩ");
        }
    }

    @Test
    void a_crash_between_the_history_and_the_file_leaves_neither_half_done() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        String own = file();
        Files.writeString(
                Files.createDirectory(folder.resolve("proposed")).resolve("build.yaml"),
                own.replace("3.3 kΩ", "2.7 kΩ"));
        try (OpenedDemo page = OpenedDemo.in(folder)) {
            json(page.page().post("/api/take", "{\"build\":\"proposed\"}"));
        }
        Files.writeString(folder.resolve("build.yaml"), own); // as if the line was written and the file was not
        try (OpenedDemo again = OpenedDemo.in(folder)) {
            assertThat(json(again.page().get("/api/state")).at("/undo").asText())
                    .isEmpty();
            json(again.page().post("/api/take", "{\"build\":\"proposed\"}"));
            json(again.page().post("/api/undo", "{}"));
            assertThat(file()).isEqualTo(own);
        }
    }

    @Test
    void what_does_not_fit_the_bench_log_is_not_taken_in() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        String own = file();
        Files.writeString(
                Files.createDirectory(folder.resolve("proposed")).resolve("build.yaml"), own.replace("TP1", "TP9"));
        Files.createDirectory(folder.resolve("bench"));
        Files.writeString(
                folder.resolve("bench/log.yaml"),
                "galena: 1\nreadings:\n  - {carrier: 999 kHz, uncertainty: 50 Hz, at: TP1}\n");
        try (OpenedDemo page = OpenedDemo.in(folder)) {
            Wire.Answer refused = page.page().post("/api/take", "{\"build\":\"proposed\"}");
            assertThat(refused.status()).as(refused.body()).isEqualTo(422);
            assertThat(refused.body()).contains("TP1");
            assertThat(file()).isEqualTo(own);
            assertThat(json(page.page().get("/api/state")).at("/undo").asText()).isEmpty();
        }
    }

    @Test
    void another_build_of_the_folder_is_shown_and_nothing_outside_it() throws Exception {
        OpenedDemo.lay(folder.resolve("build.yaml"));
        Path other = Files.createDirectory(folder.resolve("proposed")).resolve("build.yaml");
        Files.writeString(other, file().replace("name: Reading-room sender", "name: The other one"));
        try (OpenedDemo page = OpenedDemo.in(folder)) {
            JsonNode shelf = json(page.page().get("/api/shelf"));
            Shape.valid("shelf.json", shelf.toString());
            assertThat(shelf.at("/builds/0").asText()).isEqualTo("proposed");
            json(page.page().post("/api/show", "{\"build\":\"proposed\"}"));
            assertThat(json(page.page().get("/api/state")).at("/name").asText()).isEqualTo("The other one");
            for (String out : new String[] {"..", "../x", "/etc", "packet", ".cache"})
                assertThat(page.page()
                                .post("/api/show", "{\"build\":\"" + out + "\"}")
                                .status())
                        .as(out)
                        .isEqualTo(422);
            assertThat(page.page()
                            .with("Content-Type", "text/plain")
                            .send("POST", "/api/show", "{}")
                            .status())
                    .isEqualTo(415);
            json(page.page().post("/api/show", "{\"build\":\"\"}"));
            assertThat(json(page.page().get("/api/state")).at("/name").asText()).isEqualTo("Reading-room sender");
        }
    }
}
