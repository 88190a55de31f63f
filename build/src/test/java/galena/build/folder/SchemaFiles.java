package galena.build.folder;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Writes the schemas into a folder: run with {@code build/src/main/resources/galena/schema} after a form changed. */
final class SchemaFiles {
    private SchemaFiles() {}

    public static void main(String[] folder) throws IOException {
        for (Map.Entry<String, String> schema : Schemas.all().entrySet())
            Files.writeString(Path.of(folder[0], schema.getKey()), schema.getValue(), StandardCharsets.UTF_8);
    }
}
