package galena.desk;

import galena.bench.invented.InventedBench;
import galena.desk.console.Terminal;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/**
 * What the start script runs once to record which classes the commands load. Everything is computed and thrown away; a command
 * that fails here fails later in front of the builder, and is not this class's concern.
 */
public final class Rehearsal {
    private Rehearsal() {}

    public static void main(String[] arguments) throws IOException {
        Terminal.ofProcess();
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        Terminal terminal = new Terminal(nowhere, nowhere, StandardCharsets.UTF_8, true, true, 80);
        Path stage = Files.createTempDirectory("galena-rehearsal");
        try {
            String demo = stage.toString();
            Galena.run(terminal, "--help");
            Galena.run(terminal, "demo", demo);
            Galena.run(terminal, "predict", demo);
            Galena.run(terminal, "predict", demo, "--json");
            Galena.run(terminal, "cover", demo, "Ct", "--steps", "4");
            Galena.run(terminal, "measure", demo + "/bench/" + InventedBench.TONE);
            Galena.run(terminal, "no such step");
        } finally {
            clear(stage);
        }
    }

    private static void clear(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) Files.delete(path);
        }
    }
}
