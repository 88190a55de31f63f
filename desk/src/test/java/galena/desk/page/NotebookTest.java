package galena.desk.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import galena.desk.server.Reply;
import galena.desk.server.Wire;
import galena.signal.audio.WavSink;
import galena.signal.audio.WavSource;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An opened notebook over HTTP, without a browser. */
final class NotebookTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    private Path temporary;

    private Path folder;
    private OpenedDemo demo;

    @BeforeEach
    void open() throws Exception {
        folder = Files.createDirectory(temporary.resolve("demo"));
        demo = OpenedDemo.in(folder);
    }

    @AfterEach
    void close() {
        demo.close();
        assertThat(demo.faults).isEmpty();
    }

    private static JsonNode json(Wire.Answer answer) throws IOException {
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return MAPPER.readTree(answer.body());
    }

    private JsonNode state() throws IOException {
        return json(demo.page().get("/api/state"));
    }

    private String file() throws IOException {
        return Files.readString(folder.resolve("build.yaml"), StandardCharsets.UTF_8);
    }

    private Wire.Answer write(String path, String seen, String text) throws IOException {
        String body = MAPPER.createObjectNode()
                .put("path", path)
                .put("seen", seen)
                .put("text", text)
                .toString();
        return demo.page().post("/api/write", body);
    }

    private static void keeps(String schema, JsonNode tree) throws IOException {
        try (InputStream in = Notebook.class.getResourceAsStream("/galena/schema/" + schema)) {
            assertThat(in).as(schema).isNotNull();
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                            .getSchema(text, InputFormat.JSON)
                            .validate(tree))
                    .isEmpty();
        }
    }

    @Test
    void says_what_the_build_is_and_does() throws Exception {
        JsonNode state = state();
        keeps("notebook.json", state);
        assertThat(state.at("/name").asText()).isEqualTo("Reading-room sender");
        assertThat(state.at("/intent/0/reason").asText()).startsWith("channel 111");
        JsonNode picture = until("/api/picture", p -> p.path("complete").asBoolean());
        keeps("picture.json", picture);
        assertThat(picture.at("/carrier/value").asDouble()).isBetween(1.0e6, 1.0004e6);
        assertThat(picture.at("/carrier/window").asText()).startsWith("1000 kHz (9");
        assertThat(picture.at("/modulation/state").asText()).isEqualTo("curve");
        assertThat(picture.at("/traces/0/samples")).hasSize(192);
        assertThat(picture.at("/judgements")).hasSize(5);
        JsonNode note = json(demo.page().get("/api/note?of=Lt"));
        keeps("note.json", note);
        assertThat(note.at("/group").asText()).startsWith("Oscillator: grounded-gate Colpitts");
        assertThat(note.at("/above").asText()).isEqualTo("110 µH");
        assertThat(note.at("/moves/0/hertz").asDouble())
                .as("half a percent a percent")
                .isBetween(-5000.0, -4500.0);
    }

    /** A reading changes the notebook, not the circuit: what is being solved meanwhile is still wanted. */
    @Test
    void a_reading_noted_at_once_leaves_the_picture_to_be_completed() throws Exception {
        json(demo.page().post("/api/reading", "{\"what\":\"carrier\",\"text\":\"987.2 kHz ± 50 Hz\",\"at\":\"TP1\"}"));
        until("/api/picture", p -> p.path("complete").asBoolean());
    }

    /** Asks again until an answer is as it shall be; what is computed meanwhile takes its time. */
    private JsonNode until(String path, Predicate<JsonNode> wanted) throws Exception {
        for (int k = 0; k < 600; k++) {
            Wire.Answer answer = demo.page().get(path);
            if (answer.status() == 200) {
                JsonNode json = MAPPER.readTree(answer.body());
                if (wanted.test(json)) return json;
            }
            TimeUnit.MILLISECONDS.sleep(100);
        }
        throw new AssertionError(path + " never became what it shall be");
    }

    @Test
    void a_pencil_mark_moves_the_carrier_and_leaves_the_file() throws IOException {
        String before = file();
        JsonNode picture = json(demo.page().post("/api/lay", "{\"adjustment\":\"Ct\",\"position\":0.7}"));
        assertThat(picture.at("/way").asText()).isEqualTo("warm");
        assertThat(picture.at("/carrier/value").asDouble()).isBetween(989e3, 991e3);
        assertThat(picture.at("/complete").asBoolean()).isFalse();
        assertThat(file()).isEqualTo(before);
        assertThat(state().at("/laid/adjustments/Ct").asDouble()).isEqualTo(0.7);
        json(demo.page().post("/api/lay", "{\"temperature\":\"−10 °C\"}"));
        assertThat(json(demo.page().post("/api/lay", "{\"supply\":\"7.2 V\"}"))
                        .at("/setting/supply")
                        .asDouble())
                .isEqualTo(7.2);
        assertThat(json(demo.page().post("/api/lay", "{}"))
                        .at("/setting/adjustments/Ct")
                        .asDouble())
                .isEqualTo(0.6);
        assertThat(file()).isEqualTo(before);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"adjustment\":\"Ct\",\"position\":1.5}", "{\"adjustment\":\"Ct\",\"text\":\"140 %\"}",
                        "{\"adjustment\":\"Rs\",\"position\":0.5}",
                "{\"temperature\":\"900 °C\"}", "{\"temperature\":\"warm\"}", "{\"supply\":\"9 A\"}"
            })
    void lays_nothing_over_that_cannot_be(String body) throws IOException {
        JsonNode before = state().at("/laid");
        Wire.Answer answer = demo.page().post("/api/lay", body);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(MAPPER.readTree(answer.body()).at("/problems/0/rule").asText())
                .isNotEmpty();
        assertThat(state().at("/laid")).isEqualTo(before);
    }

    @Test
    void a_pencil_mark_trims_to_the_wanted_carrier_and_survives_a_restart() throws Exception {
        JsonNode picture = json(demo.page().post("/api/trim", "{}"));
        assertThat(picture.at("/carrier/value").asDouble()).isBetween(998_999.0, 999_001.0);
        double position = state().at("/laid/adjustments/Ct").asDouble();
        demo.close();
        demo = OpenedDemo.in(folder);
        assertThat(state().at("/laid/adjustments/Ct").asDouble()).isEqualTo(position);
    }

    @Test
    void an_edit_changes_one_value_and_can_be_undone_after_a_restart() throws Exception {
        String before = file();
        JsonNode state = json(write("parts.Rs.resistor", "3.3 kΩ", "2.7 kΩ"));
        assertThat(file()).isEqualTo(before.replace("Rs:  {resistor: 3.3 kΩ", "Rs:  {resistor: 2.7 kΩ"));
        assertThat(state.at("/undo").asText()).isEqualTo("parts.Rs.resistor: 2.7 kΩ → 3.3 kΩ");
        json(write("parts.Pm.set", "90 %", "45 %"));
        demo.close();
        demo = OpenedDemo.in(folder);
        json(demo.page().post("/api/undo", "{}"));
        json(demo.page().post("/api/undo", "{}"));
        assertThat(file()).isEqualTo(before);
        assertThat(demo.page().post("/api/undo", "{}").status()).isEqualTo(409);
        json(demo.page().post("/api/redo", "{}"));
        assertThat(file()).contains("Rs:  {resistor: 2.7 kΩ").contains("set: 90 %");
        assertThat(state().at("/history")).hasSize(5);
    }

    @Test
    void a_bad_value_is_refused_with_its_remedy_and_nothing_is_lost() throws IOException {
        String before = file();
        Wire.Answer answer = write("parts.Ct.trimmer", "5..60 pF", "5..60");
        assertThat(answer.status()).isEqualTo(422);
        JsonNode problem = MAPPER.readTree(answer.body()).at("/problems/0");
        assertThat(problem.at("/remedy").asText()).contains("5..60 pF");
        assertThat(file()).isEqualTo(before);
        assertThat(state().at("/undo").asText()).isEmpty();
    }

    @Test
    void what_another_program_wrote_is_merged_or_asked_about() throws IOException {
        String own = file();
        Files.writeString(folder.resolve("build.yaml"), own.replace("resistor: 3.3 kΩ", "resistor: 3.9 kΩ"));
        json(write("parts.Ct.set", "60 %", "61 %"));
        assertThat(file()).contains("resistor: 3.9 kΩ").contains("set: 61 %");
        Files.writeString(folder.resolve("build.yaml"), file().replace("set: 61 %", "set: 58 %"));
        Wire.Answer refused = write("parts.Ct.set", "61 %", "62 %");
        assertThat(refused.status()).isEqualTo(409);
        JsonNode conflict = MAPPER.readTree(refused.body());
        keeps("conflict.json", conflict);
        assertThat(conflict.at("/theirs").asText()).isEqualTo("58 %");
        assertThat(conflict.at("/seen").asText()).isEqualTo("61 %");
        assertThat(conflict.at("/mine").asText()).isEqualTo("62 %");
        assertThat(file())
                .as("nothing is written before the builder has chosen")
                .contains("set: 58 %");
        json(write("parts.Ct.set", "58 %", "62 %"));
        assertThat(file()).contains("set: 62 %").contains("resistor: 3.9 kΩ");
    }

    @Test
    void a_file_that_another_program_broke_is_told_of_and_waited_for() throws Exception {
        String own = file();
        Files.writeString(folder.resolve("build.yaml"), own.replace("coil: 100 µH", "coil: 100 pounds"));
        JsonNode told = until("/api/state", s -> s.at("/problems").size() == 1);
        assertThat(told.at("/problems/0/path").asText()).isEqualTo("parts.Lt.coil");
        assertThat(write("parts.Ct.set", "60 %", "61 %").status()).isEqualTo(422);
        assertThat(file()).contains("100 pounds").contains("set: 60 %");
        Files.writeString(folder.resolve("build.yaml"), own);
        until("/api/state", s -> s.at("/problems").isEmpty());
        json(write("parts.Ct.set", "60 %", "61 %"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/packet/../build.yaml",
                "/packet/%2e%2e/build.yaml",
                "/packet/..%2fbuild.yaml",
                "/packet/.hidden",
                "/packet/link.txt",
                "/page/../schema/picture.json",
                "/page/%2e%2e/demo/build.yaml",
                "/page//etc/passwd",
                "/build.yaml",
                "/packet/",
                "/api/plot?capture=../build.yaml&which=waveform",
                "/api/capture?name=../build.yaml",
                "/api/beside?capture=../build.yaml&at=TP1",
                "/api/work/1/heard.wav",
                "/api/work/1/..%2f..%2fx.svg"
            })
    void reads_nothing_outside_its_places(String path) throws IOException {
        Path packet = Files.createDirectories(folder.resolve("packet"));
        Files.writeString(packet.resolve(".hidden"), "secret");
        Files.writeString(temporary.resolve("secret.txt"), "secret");
        Files.createSymbolicLink(packet.resolve("link.txt"), temporary.resolve("secret.txt"));
        Wire.Answer answer = demo.page().get(path);
        assertThat(answer.status()).isIn(400, 404, 422);
        assertThat(answer.body())
                .doesNotContain("secret")
                .doesNotContain("Reading-room")
                .doesNotContain("root:");
    }

    @Test
    void shows_what_is_published_without_letting_it_run() throws IOException {
        Path packet = Files.createDirectories(folder.resolve("packet"));
        Files.writeString(packet.resolve("packet.html"), "<h1>packet</h1>");
        Wire.Answer answer = demo.page().get("/packet/packet.html");
        assertThat(answer.body()).contains("<h1>packet</h1>");
        assertThat(answer.header("Content-Security-Policy")).contains("sandbox").contains("default-src 'none'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"../x.csv", "..", "/etc/x", ".hidden", "a/b.csv", "log\u0000.csv", ""})
    void takes_no_capture_with_a_name_that_leads_elsewhere(String name) throws IOException {
        String asked = "/api/capture?name=" + java.net.URLEncoder.encode(name, StandardCharsets.UTF_8);
        assertThat(demo.page()
                        .with("Content-Type", "application/octet-stream")
                        .send("POST", asked, "1,2")
                        .status())
                .isIn(400, 422);
        assertThat(demo.page()
                        .with("Content-Type", "application/octet-stream")
                        .send("POST", asked.replace("capture", "programme") + ".wav", "RIFF")
                        .status())
                .isIn(400, 422);
        assertThat(temporary.resolve("x.csv")).doesNotExist();
        assertThat(temporary.resolve("x.csv.wav")).doesNotExist();
    }

    @Test
    void measures_a_capture_that_is_dropped_and_files_it_once() throws Exception {
        StringBuilder text = new StringBuilder("Time (s),CH1 (V)\n");
        for (int k = 0; k < 40_000; k++) {
            double t = k * 100e-9;
            double v = (1 + 0.5 * Math.sin(2 * Math.PI * 1000 * t)) * Math.sin(2 * Math.PI * 999e3 * t);
            text.append(String.format(java.util.Locale.ROOT, "%.9f,%.6f%n", t, v));
        }
        JsonNode report = json(demo.page().send("POST", "/api/capture?name=bench-1.csv", text.toString()));
        assertThat(report.at("/verdict").asText()).contains("999");
        assertThat(folder.resolve("bench/bench-1.csv")).exists();
        json(demo.page().send("POST", "/api/capture?name=bench-1.csv", text.toString()));
        json(demo.page().send("POST", "/api/capture?name=bench-1.csv", text + "\n"));
        try (var files = Files.list(folder.resolve("bench"))) {
            assertThat(files.map(f -> f.getFileName().toString()))
                    .as("the same again is kept once, another under another name")
                    .containsExactlyInAnyOrder("bench-1.csv", "bench-1-2.csv");
        }
        String file = "{\"capture\":\"bench-1.csv\",\"at\":\"TP2\",\"audio\":\"200 mV\"}";
        assertThat(json(demo.page().post("/api/file", file)).at("/count").asInt())
                .isGreaterThan(0);
        assertThat(json(demo.page().post("/api/file", file)).at("/count").asInt())
                .isZero();
        assertThat(demo.page()
                        .get("/api/plot?capture=bench-1.csv&which=waveform")
                        .body())
                .contains("<svg");
        until("/api/picture", p -> p.path("complete").asBoolean());
        JsonNode beside = json(demo.page().get("/api/beside?capture=bench-1.csv&at=TP2&audio=200%20mV"));
        keeps("beside.json", beside);
        assertThat(beside.at("/times")).hasSameSizeAs(beside.at("/samples"));
        assertThat(beside.at("/envelope/predicted")).hasSameSizeAs(beside.at("/envelope/measured"));
        assertThat(beside.at("/envelope/measured/0").asDouble())
                .as("half of full modulation about its mean")
                .isBetween(0.4, 1.6);
        assertThat(beside.at("/strips/0/label").asText()).isEqualTo("carrier");
        assertThat(demo.page().get("/api/beside?capture=bench-1.csv&at=TP7").status())
                .isEqualTo(422);
        int before = state().at("/readings").asInt();
        json(demo.page().post("/api/reading", "{\"what\":\"carrier\",\"text\":\"987.2 kHz ± 50 Hz\",\"at\":\"TP1\"}"));
        assertThat(state().at("/readings").asInt()).isEqualTo(before + 1);
        assertThat(demo.page()
                        .post("/api/reading", "{\"what\":\"carrier\",\"text\":\"987 mV\"}")
                        .status())
                .isEqualTo(422);
    }

    @Test
    void what_is_sent_and_what_is_heard_can_be_played_one_beside_the_other() throws Exception {
        JsonNode offered = json(demo.page().get("/api/programmes"));
        keeps("programmes.json", offered);
        assertThat(offered.at("/recordings")).isEmpty();
        try (WavSink sink = new WavSink(folder.resolve("hum.wav"), 1, 8000, 16)) {
            double[] tone = new double[24_000];
            for (int k = 0; k < tone.length; k++) tone[k] = 0.7 * Math.sin(2 * Math.PI * 500 * k / 8000);
            sink.write(tone, tone.length);
            sink.finish();
        }
        assertThat(json(demo.page().get("/api/programmes")).at("/recordings/0").asText())
                .isEqualTo("hum.wav");
        JsonNode job = json(
                demo.page().post("/api/work", "{\"word\":\"listen\",\"programme\":\"hum.wav\",\"set\":\"table\"}"));
        String work = "/api/work/" + job.at("/id").asLong();
        JsonNode slip = until(work, s -> true);
        keeps("slip.json", slip);
        assertThat(slip.at("/sounds/0/caption").asText()).contains("hum.wav");
        List<Double> levels = new java.util.ArrayList<>();
        for (String name : List.of("sent", "heard")) {
            Path kept = folder.resolve(".cache/" + name + ".wav");
            double most = 0, power = 0;
            double[] left = new double[24_000], right = new double[24_000];
            try (WavSource wav = WavSource.open(kept)) {
                assertThat(wav.read(left, right, left.length)).isEqualTo(24_000);
            }
            for (int k = 8000; k < 23_000; k++) {
                most = Math.max(most, Math.abs(left[k]));
                power += left[k] * left[k] / 15_000;
            }
            assertThat(most).as("peak of what is %s", name).isLessThanOrEqualTo(SideBySide.MOST + 1e-3);
            levels.add(Math.sqrt(power));
            Wire.Answer answer = demo.page().get(work + "/" + name + ".wav");
            assertThat(answer.header("Content-Type")).isEqualTo("audio/wav");
            assertThat(answer.body()).startsWith("RIFF");
        }
        assertThat(20 * Math.log10(levels.get(0) / levels.get(1)))
                .as("levels of both, dB apart")
                .isBetween(-0.5, 0.5);
        assertThat(levels.get(0)).isGreaterThan(0.1);
        Wire.Answer unknown = demo.page().post("/api/work", "{\"word\":\"listen\",\"programme\":\"../x.wav\"}");
        long id = json(unknown).at("/id").asLong();
        until("/api/state", s -> find(s, id).at("/state").asText().equals("failed"));
    }

    @Test
    void long_work_outlives_the_page_and_can_be_stopped() throws Exception {
        JsonNode job = json(demo.page().post("/api/work", "{\"word\":\"align\"}"));
        keeps("job.json", job);
        JsonNode slip = until("/api/work/" + job.at("/id").asLong(), s -> true);
        keeps("slip.json", slip);
        assertThat(slip.at("/lead").asText()).startsWith("Ct sets the carrier: it covers");
        assertThat(demo.page()
                        .get("/api/work/" + job.at("/id").asLong() + "/cover-Ct.svg")
                        .body())
                .contains("<svg");
        JsonNode spread = json(demo.page().post("/api/work", "{\"word\":\"spread\"}"));
        long id = spread.at("/id").asLong();
        assertThat(demo.page().send("DELETE", "/api/work/" + id, "").status()).isEqualTo(200);
        JsonNode state =
                until("/api/state", s -> find(s, id).at("/state").asText().equals("stopped"));
        assertThat(find(state, id).at("/answered").asBoolean()).isFalse();
        assertThat(demo.page().post("/api/work", "{\"word\":\"nothing\"}").status())
                .isEqualTo(404);
    }

    private static JsonNode find(JsonNode state, long id) {
        for (JsonNode job : state.at("/jobs")) if (job.at("/id").asLong() == id) return job;
        return MAPPER.createObjectNode();
    }

    @Test
    void two_pages_hear_of_every_change() throws Exception {
        BlockingQueue<String> one = new LinkedBlockingQueue<>(), other = new LinkedBlockingQueue<>();
        for (BlockingQueue<String> queue : List.of(one, other)) {
            Thread page = new Thread(() -> listen(queue));
            page.setDaemon(true);
            page.start();
        }
        assertThat(one.poll(20, TimeUnit.SECONDS)).startsWith("again");
        assertThat(other.poll(20, TimeUnit.SECONDS)).startsWith("again");
        json(write("parts.Ct.set", "60 %", "61 %"));
        for (BlockingQueue<String> queue : List.of(one, other)) {
            String heard = queue.poll(20, TimeUnit.SECONDS);
            while (heard != null && !(heard.startsWith("state") && heard.contains("61 %")))
                heard = queue.poll(20, TimeUnit.SECONDS);
            assertThat(heard).isNotNull();
        }
    }

    private void listen(BlockingQueue<String> queue) {
        try {
            demo.shelf.notebook().listeners().listen(new Reply.Sink() {
                @Override
                public void event(String name, String data) {
                    queue.add(name + " " + data);
                }

                @Override
                public void beat() {
                    // nothing is said
                }
            });
        } catch (IOException | InterruptedException ended) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void takes_nothing_but_json_where_json_is_due() throws IOException {
        assertThat(demo.page()
                        .with("Content-Type", "text/plain")
                        .send("POST", "/api/undo", "{}")
                        .status())
                .isEqualTo(415);
        assertThat(demo.page().post("/api/undo", "{").status()).isEqualTo(400);
        assertThat(demo.page().post("/api/undo", "[]").status()).isEqualTo(400);
        assertThat(demo.page()
                        .post("/api/write", "{\"x\":\"" + "a".repeat(70_000) + "\"}")
                        .status())
                .isEqualTo(413);
        assertThat(write("", null, null).status()).isIn(200, 422);
    }
}
