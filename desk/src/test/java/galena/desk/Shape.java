package galena.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** Holds what commands print as JSON to the published schemas. */
public final class Shape {
    private Shape() {}

    /** Fails unless the text keeps to a schema such as "reach.json". */
    public static JsonNode valid(String schema, String json) throws IOException {
        try (InputStream in = Galena.class.getResourceAsStream("/galena/schema/" + schema)) {
            assertThat(in).isNotNull();
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            JsonNode tree = new ObjectMapper().readTree(json);
            var compiled = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text, InputFormat.JSON);
            assertThat(compiled.validate(tree)).isEmpty();
            return tree;
        }
    }
}
