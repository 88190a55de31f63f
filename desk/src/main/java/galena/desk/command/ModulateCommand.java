package galena.desk.command;

import galena.build.depth.Modulate;
import galena.build.depth.ModulationReport;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.modulation.Modulated;
import galena.build.modulation.Modulator;
import galena.build.quantity.Unit;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.ModulationJson;
import galena.desk.writing.ModulationText;
import galena.packet.chart.Chart;
import galena.packet.modulation.ModulationCharts;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena modulate DIR}: what the programme does to the carrier. */
@Command(
        name = "modulate",
        description =
                "Modulate the carrier with a tone: depth, peaks, distortion and swing, the audio response and what"
                        + " sets its ends, where swing comes from and which cure is worth most.")
public final class ModulateCommand implements Callable<Integer> {
    private static final double LOWEST_TONE = 10;
    private static final double HIGHEST_TONE = 50e3;
    private static final double HIGHEST_LEVEL = 100;
    private static final double LOWEST_LEVEL = 1e-4;

    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", description = "The build's folder, or its build.yaml.")
    private Path folder = Path.of("");

    @Mixin
    private Conditions conditions = new Conditions();

    @Option(
            names = "--level",
            paramLabel = "V",
            description = "Peak voltage of the audio source; the build's own unless said.")
    private Optional<String> level = Optional.empty();

    @Option(names = "--audio", paramLabel = "F", description = "Frequency of the tone; 1 kHz unless said.")
    private Optional<String> audio = Optional.empty();

    @Option(names = "--sweep", description = "Other levels too, from a tenth to one and a half of it.")
    private boolean sweep;

    @Option(
            names = "--svg",
            paramLabel = "FOLDER",
            description = "Where response and envelope are drawn; packet in the build's folder unless said.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--json", description = "Print everything as JSON instead, and draw only if --svg names a folder.")
    private boolean json;

    public ModulateCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Asked asked = new Asked();
        OptionalDouble volts = asked.quantity("--level", level, Unit.VOLT, LOWEST_LEVEL, HIGHEST_LEVEL);
        OptionalDouble tone = asked.quantity("--audio", audio, Unit.HERTZ, LOWEST_TONE, HIGHEST_TONE);
        asked.done();
        BuildFolder build = BuildFolder.open(folder);
        ModulationReport report;
        try (Attention attention = new Attention(terminal)) {
            Modulate.Question question = new Modulate.Question(volts, tone.orElse(Modulator.USUAL_TONE), sweep);
            report = Modulate.of(build, conditions.over(build), question, attention);
        } catch (Modulate.NoAudio none) {
            terminal.remark("No modulation: " + none.getMessage() + ".");
            return ExitCode.NO_ANSWER.number();
        }
        Chart response = ModulationCharts.response(report.response());
        if (json) terminal.printDocument(ModulationJson.of(report));
        else ModulationText.print(report, response, terminal);
        if (!json || svg.isPresent()) draw(report, response, svg.orElseGet(() -> Layout.PACKET.in(build.folder())));
        return ExitCode.DONE.number();
    }

    private void draw(ModulationReport report, Chart response, Path target) throws java.io.IOException {
        Drawings.draw(response, target, "audio-response.svg", terminal);
        if (report.tone() instanceof Modulated tone) {
            Drawings.draw(ModulationCharts.envelope(tone), target, "tone-envelope.svg", terminal);
        }
    }
}
