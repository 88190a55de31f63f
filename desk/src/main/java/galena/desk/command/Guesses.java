package galena.desk.command;

import galena.bench.capture.Overrides;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.signal.stream.SampleFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The options that state what would otherwise be guessed about a file. */
final class Guesses {
    private static final double SLOWEST = 1e-6;
    private static final double FASTEST = 1e15;

    /** Kinds of capture by the words of the option. */
    enum Kind {
        WAVEFORM,
        IQ,
        AUDIO,
        LOG
    }

    /** Forms of numbers by the words of the option. */
    enum Format {
        U8,
        S8,
        S16,
        S24,
        S32,
        F32,
        F64
    }

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            description =
                    "What the file holds: waveform, iq, audio (already detected) or log (frequency against time).")
    private Optional<String> kind = Optional.empty();

    @Option(names = "--rate", paramLabel = "RATE", description = "Samples per second, as in --rate \"10 MHz\".")
    private Optional<String> rate = Optional.empty();

    @Option(
            names = "--interval",
            paramLabel = "TIME",
            description = "Time between samples, as in --interval \"100 ns\".")
    private Optional<String> interval = Optional.empty();

    @Option(
            names = "--separator",
            paramLabel = "SIGN",
            description = "Between cells of text: comma, semicolon, tab, blank, or the sign itself.")
    private Optional<String> separator = Optional.empty();

    @Option(names = "--decimal", paramLabel = "SIGN", description = "Decimal sign in text: point or comma.")
    private Optional<String> decimal = Optional.empty();

    @Option(names = "--time-column", paramLabel = "N", description = "Column that holds time, from 1; 0 for none.")
    private Optional<Integer> timeColumn = Optional.empty();

    @Option(
            names = "--columns",
            paramLabel = "N",
            split = ",",
            description = "Columns that hold channels, from 1, as in --columns 2,4.")
    private List<Integer> columns = new ArrayList<>();

    @Option(
            names = "--format",
            paramLabel = "FORMAT",
            description = "Numbers of IQ without a header: u8, s8, s16, s24, s32, f32 or f64.")
    private Optional<String> format = Optional.empty();

    @Option(
            names = "--ratio",
            paramLabel = "RATIO",
            description = "Ratio of a probe, if the file leaves it out, as in --ratio 10x: multiplies every value.")
    private Optional<String> ratio = Optional.empty();

    @Option(
            names = "--tuned",
            paramLabel = "FREQUENCY",
            description = "Frequency that a receiver was tuned to while it recorded IQ.")
    private Optional<String> tuned = Optional.empty();

    Overrides overrides() throws BadInputException {
        Overrides stated = Overrides.none();
        if (kind.isPresent())
            stated = stated.withKind(Overrides.Kind.valueOf(
                    Written.word("--kind", kind.get(), Kind.class).name()));
        if (rate.isPresent() && interval.isPresent())
            throw Written.bad("--interval", "--rate is stated too", "One of the two gives the other.");
        if (rate.isPresent()) stated = stated.withInterval(1 / rate(rate.get()));
        if (interval.isPresent()) stated = stated.withInterval(1 / rate("--interval", 1 / time(interval.get())));
        if (separator.isPresent()) stated = stated.withSeparator(separator(separator.get()));
        if (decimal.isPresent()) stated = stated.withDecimal(decimal(decimal.get()));
        if (timeColumn.isPresent()) stated = stated.withTimeColumn(notBelow(0, "--time-column", timeColumn.get()));
        if (!columns.isEmpty()) {
            for (int column : columns) notBelow(1, "--columns", column);
            stated = stated.withColumns(columns);
        }
        if (format.isPresent())
            stated = stated.withFormat(SampleFormat.valueOf(
                    Written.word("--format", format.get(), Format.class).name()));
        if (ratio.isPresent()) stated = stated.withScale(ratio(ratio.get()));
        if (tuned.isPresent()) stated = stated.withCentre(Written.positive("--tuned", tuned.get(), Unit.HERTZ));
        return stated;
    }

    private static double rate(String text) throws BadInputException {
        return rate("--rate", Written.positive("--rate", text, Unit.HERTZ));
    }

    private static double time(String text) throws BadInputException {
        return Written.positive("--interval", text, Unit.SECOND);
    }

    private static double rate(String option, double rate) throws BadInputException {
        if (rate > SLOWEST && rate < FASTEST) return rate;
        throw Written.bad(option, "the samples would be out of range", "A rate lies between 1 µHz and 1 PHz.");
    }

    private static char separator(String text) throws BadInputException {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "comma" -> ',';
            case "semicolon" -> ';';
            case "tab", "\\t" -> '\t';
            case "blank", "space" -> ' ';
            default -> {
                if (text.length() == 1) yield text.charAt(0);
                throw Written.bad(
                        "--separator",
                        '"' + text + "\" is no separator",
                        "Allowed: comma, semicolon, tab, blank, or the sign itself.");
            }
        };
    }

    private static char decimal(String text) throws BadInputException {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "point", "." -> '.';
            case "comma", "," -> ',';
            default -> throw Written.bad("--decimal", '"' + text + "\" is no decimal sign", "Allowed: point or comma.");
        };
    }

    private static double ratio(String text) throws BadInputException {
        String number = text.strip();
        return Written.positive("--ratio", number.matches("[\\d.]+") ? number + "x" : number, Unit.RATIO);
    }

    private static int notBelow(int least, String option, int column) throws BadInputException {
        if (column >= least) return column;
        throw Written.bad(option, column + " is no column", "Columns are counted from 1.");
    }
}
