package galena.desk.command;

import galena.build.channels.Channels;
import galena.build.folder.BuildFolder;
import galena.build.quantity.Unit;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.ChannelsJson;
import galena.desk.writing.ChannelsText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena channel DIR}: which channel to take. */
@Command(
        name = "channel",
        description = "Rank the channels of the region's raster by what spoils them: stations in stations.yaml, images,"
                + " whistles, own harmonics. Tries what drawer.yaml holds of crystals, resonators and counters.")
public final class ChannelCommand implements Callable<Integer> {
    private static final List<String> TIMES = List.of("day", "night", "both");

    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Option(
            names = "--when",
            paramLabel = "TIME",
            description = "When the transmitter is used: day, night or both; both unless said.")
    private String when = "both";

    @Option(
            names = "--intermediate",
            paramLabel = "FREQUENCY",
            description = "Intermediate frequency of the sets in the room; 455 kHz unless said. Repeat for more.")
    private List<String> intermediates = new ArrayList<>();

    @Option(
            names = "--most",
            paramLabel = "N",
            description = "How many channels and ways are printed, 1 to 200; 12 unless said.")
    private int most = 12;

    @Option(names = "--json", description = "Print every channel as JSON instead.")
    private boolean json;

    public ChannelCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Asked asked = new Asked();
        List<Double> frequencies = new ArrayList<>();
        for (String text : intermediates)
            asked.quantity("--intermediate", Optional.of(text), Unit.HERTZ, 50e3, 30e6)
                    .ifPresent(frequencies::add);
        if (intermediates.isEmpty()) frequencies.add(Channels.Question.USUAL_INTERMEDIATE);
        if (!TIMES.contains(when))
            asked.wrong("--when", '"' + when + "\" is no time", "Known: " + String.join(", ", TIMES) + ".");
        if (most < 1 || most > 200) asked.wrong("--most", most + " lines", "Between 1 and 200 are printed.");
        asked.done();
        Channels channels = Channels.of(BuildFolder.open(folder), Channels.Question.of(when, frequencies));
        if (json) terminal.printDocument(ChannelsJson.of(channels));
        else ChannelsText.print(channels, most, terminal);
        return ExitCode.DONE.number();
    }
}
