package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.packet.Packet;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena packet DIR}: what a friend needs to build it too. */
@Command(
        name = "packet",
        description =
                "Write what a friend needs to build it too: schematic, parts, windings, expected readings, alignment,"
                        + " as one page, as PDF and as single files.")
public final class PacketCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Option(
            names = "--into",
            paramLabel = "FOLDER",
            description = "Where the packet goes; packet in the build's folder unless said.")
    private Optional<Path> into = Optional.empty();

    public PacketCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        BuildFolder build = BuildFolder.open(folder);
        Path place = into.orElseGet(() -> Layout.PACKET.in(build.folder()));
        Packet packet;
        try (Attention attention = new Attention(terminal)) {
            packet = Packet.write(build, place, attention);
        }
        for (Path file : packet.files()) terminal.print("written: " + file);
        if (packet.oscillates()) return ExitCode.DONE.number();
        terminal.remark("It does not oscillate as it stands: " + packet.reason()
                + ". The packet holds what can be said all the same.");
        return ExitCode.NO_ANSWER.number();
    }
}
