package galena.desk.command;

import static org.assertj.core.api.Assertions.assertThat;

import galena.desk.Galena;
import galena.desk.LaidDemo;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A process of its own is asked to stop in the middle of long work. */
final class StopTest {
    @Test
    @DisabledOnOs(OS.WINDOWS) // a process cannot be asked there, only ended
    void long_work_stops_when_asked_and_says_so(@TempDir Path build) throws Exception {
        LaidDemo.in(build);
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Galena.class.getName(),
                        "spread",
                        build.toString(),
                        "--count",
                        "1000000")
                .redirectError(build.resolve("remarks").toFile())
                .start();
        try {
            assertThat(process.waitFor(12, TimeUnit.SECONDS))
                    .as("ended by itself")
                    .isFalse();
            process.destroy();
            assertThat(process.waitFor(20, TimeUnit.SECONDS)).as("stopped").isTrue();
            assertThat(Files.readString(build.resolve("remarks"), StandardCharsets.UTF_8))
                    .contains("stopped")
                    .doesNotContain("\tat ");
            assertThat(build.resolve("packet")).doesNotExist();
        } finally {
            process.destroyForcibly();
        }
    }
}
