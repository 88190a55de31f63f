package galena.desk.command;

import galena.build.folder.BuildFolder;
import galena.build.folder.Circumstances;
import galena.build.folder.Layout;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.quantity.Quantity;
import galena.build.quantity.Uncertain;
import galena.build.source.BadInputException;
import galena.build.source.Nearest;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code galena note DIR KIND=VALUE...}: readings taken by eye. */
@Command(
        name = "note",
        sortOptions = false,
        description =
                "Note readings taken by eye in a build's bench log, as in galena note DIR \"carrier=987.2 kHz ± 50 Hz\""
                        + " \"voltage=2.31 V\" --at TP1. Without ± the uncertainty is half of the last digit written.",
        footer = {
            "",
            "Kinds: carrier, voltage, amplitude, current, positive_peak,",
            "negative_peak, second_harmonic, third_harmonic, distortion, swing.",
            "For ± you may write +-."
        })
public final class NoteCommand implements Callable<Integer> {
    private static final String PLACE = "note";

    private final Terminal terminal;
    private final Clock clock;

    @Parameters(index = "0", paramLabel = "DIR", description = "The build's folder.")
    private Path folder = Path.of("");

    @Parameters(index = "1..*", arity = "1..*", paramLabel = "KIND=VALUE", description = "Readings, with their units.")
    private List<String> readings = new ArrayList<>();

    @Option(names = "--how", paramLabel = "WORDS", description = "How it was taken.")
    private Optional<String> how = Optional.empty();

    @Mixin
    private Noted noted = new Noted();

    /** @param clock that dates readings */
    public NoteCommand(Terminal terminal, Clock clock) {
        this.terminal = terminal;
        this.clock = clock;
    }

    @Override
    public Integer call() throws Exception {
        BuildFolder build = BuildFolder.open(folder);
        Optional<String> at = noted.at(build.build());
        Circumstances circumstances = noted.circumstances(build);
        String when = noted.when(clock);
        List<LogEntry> entries = new ArrayList<>();
        for (String reading : readings) entries.add(entry(reading, at, when, circumstances));
        build.note(entries);
        Filed.tell(terminal, build, entries, 0);
        return ExitCode.DONE.number();
    }

    private LogEntry entry(String text, Optional<String> at, String when, Circumstances circumstances)
            throws BadInputException {
        int equals = text.indexOf('=');
        if (equals < 0)
            throw Written.bad(PLACE, '"' + text + "\" has no =", "A reading is written \"carrier=987.2 kHz\".");
        What what = what(text.substring(0, equals).strip());
        Uncertain read = Written.uncertain(what.key(), text.substring(equals + 1), what.unit());
        Quantity half = read.stated().orElseGet(() -> Quantity.of(rounded(read.half()), what.unit()));
        return new LogEntry(
                what,
                read.value(),
                Optional.of(half),
                at,
                Optional.of(when),
                Optional.of(how.orElse("by eye")),
                circumstances,
                new Place(Layout.LOG.place(), 1, 1));
    }

    /** Half of a digit is 5 and noughts; what arithmetic left behind it goes. */
    private static double rounded(double half) {
        return Double.parseDouble(String.format(Locale.ROOT, "%.6e", half));
    }

    private static What what(String key) throws BadInputException {
        Optional<What> what =
                What.of(key.toLowerCase(Locale.ROOT).replace('-', '_').replace(' ', '_'));
        if (what.isPresent()) return what.get();
        List<String> known = Arrays.stream(What.values()).map(What::key).toList();
        throw new BadInputException(new Problem(
                new Place(PLACE, 1, 1),
                "",
                '"' + key + "\" is no kind of reading",
                "Kinds: " + String.join(", ", known) + ".",
                Nearest.to(key, known).map(n -> "Nearest: " + n)));
    }
}
