package galena.desk;

import galena.desk.console.Terminal;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * What the start script runs once to record which classes the commands load. Everything is computed and thrown away; a command
 * that fails here fails later in front of the builder, and is not this class's concern.
 */
public final class Rehearsal {
    private Rehearsal() {}

    public static void main(String[] arguments) {
        Terminal.ofProcess();
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
        Terminal terminal = new Terminal(nowhere, nowhere, StandardCharsets.UTF_8, false, false, 80);
        Galena.run(terminal, "--help");
    }
}
