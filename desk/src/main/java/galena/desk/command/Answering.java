package galena.desk.command;

import galena.build.figure.Figure;
import galena.build.quantity.Engineering;
import galena.build.quantity.Uncertain;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.desk.console.ExitCode;
import galena.desk.console.Terminal;
import galena.desk.writing.Sum;
import galena.desk.writing.SumJson;
import galena.desk.writing.SumText;
import galena.signal.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** What the sums share: readings with their uncertainty in, an answer as words or JSON out. */
abstract class Answering implements Callable<Integer> {
    private static final String BASIS = "computed from readings, 95 %";

    private final Terminal terminal;
    /** What was taken for granted, for the answer. */
    final List<String> assumed = new ArrayList<>();

    @Option(names = "--json", description = "Print the answer as JSON.")
    private boolean json;

    Answering(Terminal terminal) {
        this.terminal = terminal;
    }

    /** The answer; may throw what {@link #checked} turns into bad input. */
    abstract Sum answer() throws Exception;

    @Override
    public final Integer call() throws Exception {
        Sum sum = answer();
        if (json) terminal.printDocument(SumJson.of(sum));
        else SumText.print(sum, terminal);
        return ExitCode.DONE.number();
    }

    /** A reading above zero, with its uncertainty or half of its last digit. */
    final Estimate reading(String option, String text, Unit unit) throws BadInputException {
        Uncertain read = Written.uncertain(option, text, unit);
        double value = read.value().value(), half = read.half();
        if (!(value > 0)) throw Written.bad(option, '"' + text + "\" is not above zero", "It is " + unit.noun() + ".");
        if (read.stated().isEmpty())
            assumed.add(read.value() + " is taken as ± " + Engineering.print(half, unit, 1)
                    + ", half of the last digit written.");
        return new Estimate(value, value - half, value + half);
    }

    /** The library's sum; what it says of its arguments is told as bad input of this option. */
    static <T> T checked(String option, Supplier<T> sum) throws BadInputException {
        try {
            return sum.get();
        } catch (IllegalArgumentException unfit) {
            throw Written.bad(option, "these readings do not fit together", unfit.getMessage() + ".");
        }
    }

    static Figure figure(String quantity, Estimate estimate, Unit unit) {
        return new Figure.Known(estimate.value(), unit, estimate.low(), estimate.high(), BASIS, quantity, "");
    }
}
