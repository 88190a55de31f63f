package galena.desk.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import galena.desk.Screen;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code galena packet} of a small oscillator, and of one that is too weak. */
class PacketCommandTest {
    private static final String SMALL =
            """
            galena: 1
            name: Broom-cupboard sender
            intent: {carrier: 999 kHz, rules: cept, distance: 2 m}
            supply: {voltage: 9 V, resistance: 2 Ω}
            parts:
              Lt: {coil: 100 µH, q: 60 @ 1 MHz, tolerance: 5 %, from: rail, to: drain}
              Ct: {trimmer: 5..60 pF, set: 60 %, from: drain, to: ground}
              Cp: {capacitor: 120 pF, tolerance: 2 %, tempco: NP0, from: drain, to: ground}
              Cf: {capacitor: 100 pF, tolerance: 2 %, from: drain, to: source}
              Cs: {capacitor: 1 nF, tolerance: 5 %, from: source, to: ground}
              Rs: {resistor: 3.3 kΩ, from: source, to: ground}
              Q1: {jfet: BF256B, drain: drain, gate: ground, source: source}
            points:
              TP1: {at: source, probe: 10x}
            """;

    @TempDir
    private Path folder;

    private final Screen screen = new Screen();

    private JsonNode packet() throws Exception {
        try (InputStream in = PacketCommand.class.getResourceAsStream("/galena/schema/packet.json")) {
            assertThat(in).isNotNull();
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            JsonNode tree = new ObjectMapper()
                    .readTree(folder.resolve("packet/packet.json").toFile());
            var schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text, InputFormat.JSON);
            assertThat(schema.validate(tree)).isEmpty();
            return tree;
        }
    }

    private Map<String, String> written() throws Exception {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.list(folder.resolve("packet"))) {
            for (Path file : all.toList())
                if (!file.toString().endsWith(".pdf"))
                    files.put(file.getFileName().toString(), Files.readString(file));
        }
        return files;
    }

    @Test
    void a_packet_keeps_to_its_schema_and_comes_out_the_same_from_the_cache_or_without_it() throws Exception {
        Files.writeString(folder.resolve("build.yaml"), SMALL);
        assertThat(screen.run("packet", folder)).isZero();
        JsonNode packet = packet();
        assertThat(packet.get("oscillates").asBoolean()).isTrue();
        assertThat(packet.get("faults")).isNotEmpty();
        assertThat(packet.get("substitutes").get("devices")).isNotEmpty();
        Map<String, String> first = written();
        assertThat(first).containsKeys("packet.html", "parts.csv", "schematic.svg", "summary.txt");
        try (Stream<Path> kept = Files.list(folder.resolve(".cache"))) {
            for (Path file : kept.filter(f -> f.getFileName().toString().startsWith("faults"))
                    .toList()) Files.writeString(file, "spoilt");
        }
        assertThat(screen.run("packet", folder)).isZero();
        assertThat(written()).isEqualTo(first);
        try (Stream<Path> kept = Files.list(folder.resolve(".cache"))) {
            assertThat(kept.toList())
                    .allSatisfy(file -> assertThat(file).content().doesNotContain("spoilt"));
        }
    }

    @Test
    void what_does_not_oscillate_has_no_answer_but_a_packet_all_the_same() throws Exception {
        Files.writeString(folder.resolve("build.yaml"), SMALL.replace("q: 60 @ 1 MHz", "q: 1 @ 1 MHz"));
        assertThat(screen.run("packet", folder)).isEqualTo(3);
        assertThat(screen.remarks()).contains("does not oscillate").doesNotContain("\tat ");
        JsonNode packet = packet();
        assertThat(packet.get("oscillates").asBoolean()).isFalse();
        assertThat(packet.get("standing_voltages")).isNotEmpty();
        assertThat(written().get("packet.html")).contains("does not oscillate", "First power-up", "Lt, 100 µH ±5 %");
    }
}
