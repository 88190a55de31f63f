package galena.desk.command;

import galena.build.quantity.BadQuantity;
import galena.build.quantity.Quantity;
import galena.build.quantity.Uncertain;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** What stands behind an option, read; a slip is told like one in a file, with the option as its place. */
final class Written {
    private Written() {}

    /** A quantity above zero, such as a rate, in SI. */
    static double positive(String option, String text, Unit unit) throws BadInputException {
        double value = quantity(option, text, unit).value();
        if (value > 0) return value;
        throw bad(option, '"' + text + "\" is not above zero", "It is " + unit.noun() + " above zero.");
    }

    static Quantity quantity(String option, String text, Unit unit) throws BadInputException {
        try {
            return Quantity.read(text, unit);
        } catch (BadQuantity bad) {
            throw bad(option, bad);
        }
    }

    /** A quantity with or without ± and its half-width. */
    static Uncertain uncertain(String option, String text, Unit unit) throws BadInputException {
        try {
            return Uncertain.read(text, unit);
        } catch (BadQuantity bad) {
            throw bad(option, bad);
        }
    }

    /** One of an enumeration's words, in lower case with - for _. */
    static <E extends Enum<E>> E word(String option, String text, Class<E> words) throws BadInputException {
        for (E each : words.getEnumConstants())
            if (word(each).equals(text.strip().toLowerCase(Locale.ROOT))) return each;
        throw bad(
                option,
                '"' + text + "\" has no meaning here",
                "Allowed: "
                        + Arrays.stream(words.getEnumConstants())
                                .map(Written::word)
                                .collect(Collectors.joining(", "))
                        + ".");
    }

    private static String word(Enum<?> each) {
        return each.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static BadInputException bad(String option, String found, String rule) {
        return new BadInputException(new Problem(new Place(option, 1, 1), "", found, rule));
    }

    private static BadInputException bad(String option, BadQuantity bad) {
        return new BadInputException(new Problem(
                new Place(option, 1, 1),
                "",
                bad.found(),
                bad.rule(),
                bad.nearest().map(n -> "Nearest: " + n)));
    }
}
