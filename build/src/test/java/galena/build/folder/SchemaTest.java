package galena.build.folder;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import galena.build.source.BadInputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** The published schema and the reader agree, judged by a validator of the general kind. */
class SchemaTest {
    private static final SchemaRegistry REGISTRY =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);

    private static String published(String name) throws IOException {
        try (InputStream in = Schemas.class.getResourceAsStream("/galena/schema/" + name)) {
            assertThat(in).as("resource %s", name).isNotNull();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static List<String> complaints(String schema, String yaml) throws IOException {
        Object tree = new Load(LoadSettings.builder().build()).loadFromString(yaml);
        JsonNode json = new ObjectMapper().valueToTree(tree);
        Schema compiled = REGISTRY.getSchema(published(schema), InputFormat.JSON);
        return compiled.validate(json).stream().map(Object::toString).toList();
    }

    private static boolean reads(String yaml) {
        try {
            Builds.read(yaml);
            return true;
        } catch (BadInputException bad) {
            return false;
        }
    }

    @Test
    void the_published_schemas_are_those_of_the_forms() throws IOException {
        for (Map.Entry<String, String> schema : Schemas.all().entrySet())
            assertThat(published(schema.getKey()))
                    .as("galena/schema/%s is out of date: run SchemaFiles on the resources folder", schema.getKey())
                    .isEqualTo(schema.getValue());
    }

    @Test
    void the_schemas_are_valid_themselves() throws IOException {
        Schema meta = REGISTRY.getSchema(
                com.networknt.schema.SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        for (String name : Schemas.all().keySet())
            assertThat(meta.validate(published(name), InputFormat.JSON))
                    .as(name)
                    .isEmpty();
    }

    @Test
    void good_builds_pass_both() throws IOException {
        for (String good : List.of(Builds.EVERYTHING, Builds.STAGE)) {
            assertThat(reads(good)).isTrue();
            assertThat(complaints("build.json", good)).isEmpty();
        }
    }

    /** Replaces a text in the stage: what neither reader nor schema may pass. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "galena: 1          | galena: 7",
                "galena: 1          | name: x",
                "resistor: 1k       | resistor: 1 kF",
                "resistor: 1k       | resistor: 100",
                "resistor: 1k       | resistor: [1k]",
                "resistor: 1k       | resistor:",
                "resistor: 1k       | resisttor: 1k",
                "resistor: 1k       | resistor: 1k, capacitor: 1n",
                "resistor: 1k       | tolerance: 5 %",
                "resistor: 1k       | resistor: 4,7k",
                "5..60 pF           | 60 pF",
                "5..60 pF           | 5..60",
                "set: 40 %          | set: 40",
                "85 @ 1 MHz         | 85",
                "from: rail, to: drain | from: rail",
                "from: rail, to: drain | from: rail, to: drain, colour: red",
                "'[Lt, La]'         | '[Lt]'",
                "k: 0.1             | k: close",
                "probe: 10x         | probe: 20x",
                "voltage: 9 V       | voltage: 9",
                "'parts:\n'         | 'parts: 1\nnot_parts:\n'",
                "capacitance: 3 pF  | capacity: 3 pF",
                "BF256B             | {pinch_off: -2 V}",
                "Rs:                | R s:",
                "from: source       | from: 5",
            })
    void what_is_wrong_by_itself_fails_both(String old, String now) throws IOException {
        assertThat(Builds.STAGE).contains(old);
        String bad = Builds.STAGE.replaceFirst(
                java.util.regex.Pattern.quote(old), java.util.regex.Matcher.quoteReplacement(now));
        assertThat(reads(bad)).as("reader: %s", now).isFalse();
        assertThat(complaints("build.json", bad)).as("schema: %s", now).isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "galena: 1\nresistors: [1k, 4k7, 470R]\ncapacitors: [100p, 4n7]\ntrimmers: [5..60 pF]\ncoils: [{coil: 180 µH}]\ncrystals: [4 MHz]\ndevices: [BF256B]\n",
                "galena: 1\n",
            })
    void a_drawer_passes_its_schema(String yaml) throws IOException {
        assertThat(complaints("drawer.json", yaml)).isEmpty();
    }
}
