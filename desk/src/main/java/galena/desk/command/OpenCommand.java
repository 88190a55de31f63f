package galena.desk.command;

import galena.desk.console.ExitCode;
import galena.desk.console.Interrupt;
import galena.desk.console.Terminal;
import galena.desk.page.Shelf;
import galena.desk.server.PageServer;
import java.awt.Desktop;
import java.io.IOException;
import java.net.BindException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena open DIR}: the build as a notebook page in the browser. */
@Command(
        name = "open",
        description =
                "Open a build as a page in the browser: turn a trimmer, change a value, and see the carrier move. The page is"
                        + " served to this machine alone, until Ctrl-C.")
public final class OpenCommand implements Callable<Integer> {
    private static final int MOST_PORT = 65_535;
    private static final int LOOK_MILLISECONDS = 200;

    private final Terminal terminal;
    private final Clock clock;

    @Parameters(
            paramLabel = "DIR",
            description = "The build's folder, or its build.yaml; in a folder without one the page begins it.")
    private Path folder = Path.of("");

    @Option(names = "--port", paramLabel = "PORT", description = "Port to listen on; any free one unless said.")
    private int port;

    @Option(names = "--no-browser", description = "Print the address and open no browser.")
    private boolean noBrowser;

    public OpenCommand(Terminal terminal, Clock clock) {
        this.terminal = terminal;
        this.clock = clock;
    }

    @Override
    public Integer call() throws Exception {
        if (port < 0 || port > MOST_PORT)
            throw Written.bad("--port", port + " is no port", "A port is a number from 0 to " + MOST_PORT + ".");
        Consumer<Exception> faults = fault -> {
            terminal.remark("This is a fault in Galena, not in your build. Please report it with the lines below.");
            terminal.stack(fault);
        };
        try (Interrupt interrupt = Interrupt.listen();
                Shelf shelf = Shelf.open(folder, clock, faults);
                PageServer server = start(shelf, faults)) {
            if (!shelf.hasBuild())
                terminal.remark("There is no build in this folder yet: the page offers patterns to begin one from.");
            terminal.print("The notebook is open at " + server.address());
            terminal.remark(
                    "Whoever has this address can change the build; it holds until this program ends. Ctrl-C ends it.");
            if (!noBrowser && !show(server.address()))
                terminal.remark("No browser could be opened: copy the address into one.");
            while (!interrupt.getAsBoolean()) TimeUnit.MILLISECONDS.sleep(LOOK_MILLISECONDS);
        }
        return ExitCode.DONE.number();
    }

    private PageServer start(Shelf shelf, Consumer<Exception> faults) throws Exception {
        try {
            return PageServer.start(port, shelf, faults);
        } catch (IOException taken) {
            if (!(taken instanceof BindException) && !(taken.getCause() instanceof BindException)) throw taken;
            throw Written.bad("--port", "port " + port + " is in use", "Leave --port out, and a free one is taken.");
        }
    }

    /** Asks the desktop, else the system's own opener. */
    private static boolean show(String address) {
        try {
            if (Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.BROWSE)) {
                Desktop.getDesktop().browse(URI.create(address));
                return true;
            }
        } catch (IOException | RuntimeException noDesktop) {
            // the system's opener is tried next
        }
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        List<String> opener = system.contains("mac")
                ? List.of("open", address)
                : system.contains("win")
                        ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                        : List.of("xdg-open", address);
        try {
            Process started = new ProcessBuilder(opener)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return !started.waitFor(1, TimeUnit.SECONDS) || started.exitValue() == 0;
        } catch (IOException none) {
            return false;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
