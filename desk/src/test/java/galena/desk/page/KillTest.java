package galena.desk.page;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.folder.BuildFolder;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process that writes edits is killed without warning, again and again: what it acknowledged is there, and the rest is whole. */
final class KillTest {
    private static final String BUILD =
            """
            galena: 1
            # kept byte for byte
            supply: {battery: 6xAA-NiMH}
            parts:
              R1: {resistor: 1 kΩ, from: rail, to: ground}   # a load
              Ct: {trimmer: 5..60 pF, set: 50 %, from: rail, to: ground}
            """;

    private static final long SEED = 20261125;
    private static final int LONGEST_MILLISECONDS = 60;

    @TempDir
    private Path folder;

    @Test
    void nothing_acknowledged_is_lost_over_20_kills() throws Exception {
        kill(20);
    }

    @Test
    @Tag("long")
    void nothing_acknowledged_is_lost_over_200_kills() throws Exception {
        kill(200);
    }

    private void kill(int times) throws Exception {
        Path file = folder.resolve("build.yaml");
        Files.writeString(file, BUILD);
        Random random = new Random(SEED);
        for (int n = 0; n < times; n++) {
            List<String> said = killedAfter(random.nextInt(LONGEST_MILLISECONDS));
            String written = Files.readString(file, StandardCharsets.UTF_8);
            String last = said.stream()
                    .filter(l -> l.startsWith("written "))
                    .reduce((a, b) -> b)
                    .orElseThrow()
                    .substring("written ".length());
            String begun = said.stream()
                    .filter(l -> l.startsWith("writing "))
                    .reduce((a, b) -> b)
                    .orElseThrow()
                    .substring("writing ".length());
            assertThat(written)
                    .as("kill %d of seed %d: all of the last acknowledged edit or of the one begun", n, SEED)
                    .isIn(BUILD.replace("50 %", last), BUILD.replace("50 %", begun));
            BuildFolder.open(folder);
            if (n % 5 == 0) undoes(file);
        }
        undoes(file);
    }

    /** Starts a scribe, lets it acknowledge one edit, and kills it a moment later; what it said. */
    private List<String> killedAfter(int milliseconds) throws IOException, InterruptedException {
        Process scribe = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Scribe.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(scribe.getInputStream(), StandardCharsets.UTF_8))) {
            String first = out.readLine(), second = out.readLine();
            assertThat(second).as("the scribe's second line").isNotNull().startsWith("written ");
            TimeUnit.MILLISECONDS.sleep(milliseconds);
            ProcessHandle.of(scribe.pid())
                    .orElseThrow()
                    .destroyForcibly(); // the process's own would close what it has said
            List<String> said = new java.util.ArrayList<>(List.of(first, second));
            out.lines().filter(l -> l.endsWith(" %")).forEach(said::add);
            scribe.waitFor();
            return said;
        }
    }

    /** The history reaches back over the kills. */
    private void undoes(Path file) throws Exception {
        try (Notebook notebook = Notebook.open(folder, Clock.systemUTC(), fault -> {
            throw new AssertionError(fault);
        })) {
            String before = Files.readString(file, StandardCharsets.UTF_8);
            assertThat(notebook.step(true)).isTrue();
            assertThat(Files.readString(file, StandardCharsets.UTF_8)).isNotEqualTo(before);
            assertThat(notebook.step(false)).isTrue();
            assertThat(Files.readString(file, StandardCharsets.UTF_8)).isEqualTo(before);
        }
    }
}
