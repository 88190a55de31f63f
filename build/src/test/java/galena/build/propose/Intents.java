package galena.build.propose;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** The intents among the test resources, laid into folders. */
final class Intents {
    private Intents() {}

    static Path lay(String name, Path folder) throws IOException {
        Files.createDirectories(folder);
        copy(name + "/build.yaml", folder.resolve("build.yaml"), true);
        copy(name + "/drawer.yaml", folder.resolve("drawer.yaml"), false);
        return folder;
    }

    private static void copy(String from, Path to, boolean needed) throws IOException {
        try (InputStream in = Intents.class.getResourceAsStream("/intents/" + from)) {
            if (needed) assertThat(in).as(from).isNotNull();
            if (in != null) Files.copy(in, to);
        }
    }
}
