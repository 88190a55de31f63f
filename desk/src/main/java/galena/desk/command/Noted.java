package galena.desk.command;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Circumstances;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.folder.Probe;
import galena.build.folder.Settings;
import galena.build.folder.TestPoint;
import galena.build.form.Text;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that say under what a reading was taken. What is left out stands as the build has it, or isn't noted. */
final class Noted {
    private static final double LEAST_ADDED = 1e-15;
    private static final double MOST_ADDED = 1e-6;

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

    @Option(names = "--at", paramLabel = "POINT", description = "Test point of the build at which it was read.")
    private Optional<String> at = Optional.empty();

    @Option(
            names = "--when",
            paramLabel = "MOMENT",
            description = "Day or moment, as 2026-03-07 or \"2026-03-07 19:30\"; now unless said.")
    private Optional<String> when = Optional.empty();

    @Option(names = "--instrument", paramLabel = "WORDS", description = "What it was read with.")
    private Optional<String> instrument = Optional.empty();

    @Option(
            names = "--probe",
            paramLabel = "WORDS",
            description = "What touched the circuit; the point's own unless said.")
    private Optional<String> probe = Optional.empty();

    @Option(
            names = "--set",
            paramLabel = "PART=POSITION",
            description =
                    "An adjustment as it stood, as in --set Ct=40%%; as in build.yaml unless said. Repeat for more.")
    private List<String> settings = new ArrayList<>();

    @Option(
            names = "--temperature",
            paramLabel = "TEMPERATURE",
            description = "Of the build, as in --temperature \"22 °C\".")
    private Optional<String> temperature = Optional.empty();

    @Option(names = "--supply", paramLabel = "VOLTS", description = "Supply voltage while it was read.")
    private Optional<String> supply = Optional.empty();

    @Option(
            names = "--audio",
            paramLabel = "VOLTS",
            description = "Peak of the tone at the audio source while it was read.")
    private Optional<String> audio = Optional.empty();

    @Option(
            names = "--added",
            paramLabel = "CAPACITANCE",
            description = "A capacitor put across the test point for this reading alone, as in --added \"10 pF\".")
    private Optional<String> added = Optional.empty();

    /** The test point, if one is named. */
    Optional<String> at(Build build) throws BadInputException {
        if (at.isPresent() && !build.points().containsKey(at.get()))
            throw Written.bad(
                    "--at",
                    "no test point is named \"" + at.get() + '"',
                    build.points().isEmpty()
                            ? "The build has no test points."
                            : "Test points: " + String.join(", ", build.points().keySet()) + ".");
        return at;
    }

    String when(Clock clock) throws BadInputException {
        if (when.isEmpty()) return LocalDateTime.now(clock).format(MOMENT);
        if (Text.MOMENT.fits(when.get())) return when.get();
        throw Written.bad("--when", '"' + when.get() + "\" is no day or moment", Text.MOMENT.inWords());
    }

    Circumstances circumstances(BuildFolder folder) throws BadInputException {
        Build build = folder.build();
        Optional<String> own =
                at.map(build.points()::get).flatMap(TestPoint::probe).map(Probe::name);
        return new Circumstances(
                instrument,
                probe.or(() -> own),
                set(build),
                quantity("--temperature", temperature, Unit.KELVIN),
                quantity("--supply", supply, Unit.VOLT),
                quantity("--audio", audio, Unit.VOLT),
                added(),
                Optional.empty());
    }

    private Optional<Quantity> added() throws BadInputException {
        Optional<Quantity> capacitance = quantity("--added", added, Unit.FARAD);
        if (capacitance.isEmpty()) return capacitance;
        if (at.isEmpty())
            throw Written.bad("--added", "is put across no test point", "A capacitor is added at a point: say --at.");
        double farads = capacitance.get().value();
        if (!(farads >= LEAST_ADDED && farads <= MOST_ADDED))
            throw Written.bad(
                    "--added", '"' + added.get() + "\" is no such capacitor", "It lies between 1 fF and 1 µF.");
        return capacitance;
    }

    private static Optional<Quantity> quantity(String option, Optional<String> text, Unit unit)
            throws BadInputException {
        return text.isPresent() ? Optional.of(Written.quantity(option, text.get(), unit)) : Optional.empty();
    }

    private Map<String, Quantity> set(Build build) throws BadInputException {
        Overlay stated = Settings.apply(build, Overlay.NONE, "--set", settings);
        Map<String, Quantity> set = new LinkedHashMap<>();
        for (String name : build.adjustments()) {
            Double laidOver = stated.adjustments().get(name);
            double position = laidOver != null
                    ? laidOver
                    : build.part(name).orElseThrow().position().orElse(PartEntry.MIDDLE);
            set.put(name, Quantity.of(position, Unit.FRACTION));
        }
        return set;
    }

    /** Whether anything was said that only a log can hold. */
    boolean saysAnything() {
        return at.isPresent()
                || when.isPresent()
                || instrument.isPresent()
                || probe.isPresent()
                || temperature.isPresent()
                || supply.isPresent()
                || audio.isPresent()
                || added.isPresent()
                || !settings.isEmpty();
    }
}
