package galena.build;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.folder.BuildFolder;
import galena.build.source.BadInputException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** The demo build laid into a folder, with values changed. */
public final class DemoBuild {
    private DemoBuild() {}

    /** @param changes pairs of what stands there and what is to stand there */
    public static BuildFolder in(Path folder, String... changes) throws IOException, BadInputException {
        Files.createDirectories(folder);
        try (InputStream demo = BuildFolder.class.getResourceAsStream("/galena/demo/build.yaml")) {
            assertThat(demo).isNotNull();
            String text = new String(demo.readAllBytes(), StandardCharsets.UTF_8);
            for (int k = 0; k < changes.length; k += 2) {
                assertThat(text).contains(changes[k]);
                text = text.replace(changes[k], changes[k + 1]);
            }
            Files.writeString(folder.resolve("build.yaml"), text);
        }
        return BuildFolder.open(folder);
    }
}
