package galena.desk;

import static org.assertj.core.api.Assertions.assertThat;

import galena.desk.command.DemoCommand;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** The demo's build file laid into a folder of a test's own. */
public final class LaidDemo {
    private LaidDemo() {}

    /** @return the folder, made where it was not there */
    public static Path in(Path folder) throws IOException {
        Files.createDirectories(folder);
        try (InputStream demo = DemoCommand.class.getResourceAsStream("/galena/demo/build.yaml")) {
            assertThat(demo).isNotNull();
            Files.copy(demo, folder.resolve("build.yaml"));
        }
        return folder;
    }
}
