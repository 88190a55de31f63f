package galena.desk.command;

import galena.build.quantity.Unit;
import galena.build.winding.Coil;
import galena.build.winding.CoilAnswer;
import galena.build.winding.Reel;
import galena.build.winding.Shape;
import galena.build.winding.TrialAnswer;
import galena.build.winding.Winder;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.WindingJson;
import galena.desk.writing.WindingText;
import galena.packet.winding.QChart;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena wind}: from an inductance to turns, and from a trial winding to its core. */
@Command(
        name = "wind",
        description =
                "Say how to wind a coil of an inductance on what is at hand: turns, layers, wire, Q, self-capacitance."
                        + " Or judge a trial winding: --measured with --turns tells the core's permeability and the turns to take off.",
        footer = {
            "%nExamples:",
            "  galena wind \"180 µH\" --rod 140x10mm --core 250 --wire 0.3mm",
            "  galena wind \"200 µH\" --frame 60x60cm --wire \"AWG 24\" --pitch 3mm",
            "  galena wind \"180 µH\" --rod 140x10mm --wire 0.3mm --measured \"212 µH\" --turns 60"
        })
public final class WindCommand implements Callable<Integer> {
    private static final double USUAL_FREQUENCY = 1e6;
    private static final double ROOM = 20;
    private static final double ZERO_CELSIUS = 273.15;
    private static final double METER = 0.02;

    private final Terminal terminal;

    @Parameters(
            arity = "0..1",
            paramLabel = "INDUCTANCE",
            description = "The inductance wanted, as in \"180 µH\" or 180u.")
    private Optional<String> inductance = Optional.empty();

    @Mixin
    private Formers formers = new Formers();

    @Option(
            names = "--wire",
            paramLabel = "WIRE",
            description = "Bare diameter or gauge, as in 0.3mm, \"AWG 30\", \"SWG 28\", or 20x0.07mm for litz.")
    private Optional<String> wire = Optional.empty();

    @Option(names = "--over", paramLabel = "DIAMETER", description = "Diameter over the insulation, as measured.")
    private Optional<String> over = Optional.empty();

    @Option(names = "--pitch", paramLabel = "LENGTH", description = "From turn to turn; close unless said.")
    private Optional<String> pitch = Optional.empty();

    @Option(names = "--at", paramLabel = "FREQUENCY", description = "Where the coil works; 1 MHz unless said.")
    private Optional<String> frequency = Optional.empty();

    @Option(names = "--temperature", paramLabel = "TEMPERATURE", description = "Of the coil; 20 °C unless said.")
    private Optional<String> temperature = Optional.empty();

    @Option(names = "--measured", paramLabel = "INDUCTANCE", description = "What a trial winding measures.")
    private Optional<String> measured = Optional.empty();

    @Option(names = "--turns", paramLabel = "N", description = "Turns of the trial winding.")
    private Optional<Integer> turns = Optional.empty();

    @Option(names = "--within", paramLabel = "SHARE", description = "How far the meter may be off; 2 %% unless said.")
    private Optional<String> within = Optional.empty();

    @Option(names = "--svg", paramLabel = "FOLDER", description = "Draw Q against frequency into this folder.")
    private Optional<Path> svg = Optional.empty();

    @Option(names = "--json", description = "Print it as JSON instead.")
    private boolean json;

    public WindCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws Exception {
        Asked asked = new Asked();
        boolean trial = measured.isPresent() || turns.isPresent();
        Optional<Shape> shape = formers.shape(asked, trial);
        OptionalDouble wanted = asked.quantity("INDUCTANCE", inductance, Unit.HENRY, 1e-8, 1);
        OptionalDouble thickness = asked.quantity("--over", over, Unit.METRE, 2e-5, 2e-2);
        OptionalDouble spacing = asked.quantity("--pitch", pitch, Unit.METRE, 2e-5, 0.1);
        double hertz = asked.quantity("--at", frequency, Unit.HERTZ, 1e4, 3e7).orElse(USUAL_FREQUENCY);
        double celsius =
                asked.quantity("--temperature", temperature, Unit.KELVIN, ZERO_CELSIUS - 40, ZERO_CELSIUS + 100)
                                .orElse(ROOM + ZERO_CELSIUS)
                        - ZERO_CELSIUS;
        OptionalDouble reading = asked.quantity("--measured", measured, Unit.HENRY, 1e-8, 1);
        double meter = asked.quantity("--within", within, Unit.FRACTION, 0, 0.5).orElse(METER);
        Optional<Reel> reel = wire.flatMap(text -> asked.of(() -> Reel.read(text, thickness)));
        if (wire.isEmpty()) asked.wrong("--wire", "no wire is given", "Write --wire 0.3mm, for instance.");
        if (trial && (measured.isEmpty() || turns.isEmpty()))
            asked.wrong(
                    measured.isEmpty() ? "--measured" : "--turns",
                    "is missing",
                    "A trial has an inductance and its turns.");
        if (turns.isPresent() && turns.get() < 1)
            asked.wrong("--turns", turns.get() + " turns", "A winding has a turn or more.");
        if (!trial && inductance.isEmpty())
            asked.wrong("INDUCTANCE", "no inductance is given", "Say what is wanted, or give --measured and --turns.");
        asked.done();
        Winder winder = new Winder(shape.orElseThrow(), reel.orElseThrow(), spacing, hertz, celsius);
        if (trial) return judged(winder.judge(turns.orElseThrow(), reading.orElseThrow(), meter, wanted));
        return wound(winder.wind(wanted.orElseThrow()));
    }

    private int judged(TrialAnswer answer) {
        if (answer instanceof TrialAnswer.None none) {
            terminal.remark("The trial tells nothing: " + none.reason() + ". " + none.remedy());
            return ExitCode.NO_ANSWER.number();
        }
        TrialAnswer.Told told = (TrialAnswer.Told) answer;
        if (json) terminal.printDocument(WindingJson.of(told.trial()));
        else WindingText.print(told.trial(), terminal);
        return ExitCode.DONE.number();
    }

    private int wound(CoilAnswer answer) throws IOException {
        if (!(answer instanceof Coil coil)) {
            CoilAnswer.None none = (CoilAnswer.None) answer;
            terminal.remark("No coil: " + none.reason() + ". " + none.remedy());
            return ExitCode.NO_ANSWER.number();
        }
        if (json) terminal.printDocument(WindingJson.of(coil));
        else WindingText.print(coil, terminal);
        if (svg.isPresent() && !coil.curve().isEmpty()) Drawings.draw(QChart.of(coil), svg.get(), "q.svg", terminal);
        return ExitCode.DONE.number();
    }
}
