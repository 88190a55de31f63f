package galena.build.source;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Files made from texts. */
final class Texts {
    private Texts() {}

    static SourceFile file(String text) throws BadInputException {
        return SourceFile.of(Path.of("build.yaml"), "build.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    static String text(SourceFile file) {
        return new String(file.bytes(), StandardCharsets.UTF_8);
    }
}
