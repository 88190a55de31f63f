package galena.desk.command;

import galena.build.quantity.BadQuantity;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.source.Problems;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads quantities behind options; everything wrong with them is told at once by {@link #done}. */
final class Asked {
    private final Problems problems = new Problems();

    /** What stands behind an option, in SI; empty where nothing or nothing right stands there. */
    OptionalDouble quantity(String option, Optional<String> text, Unit unit, double low, double high) {
        if (text.isEmpty()) return OptionalDouble.empty();
        try {
            double value = Quantity.read(text.get(), unit).value();
            if (low <= value && value <= high) return OptionalDouble.of(value);
            String limits = Engineering.exact(low, unit) + " to " + Engineering.exact(high, unit);
            wrong(option, '"' + text.get() + "\" is too " + (value < low ? "small" : "large"), "Allowed: " + limits + ".");
        } catch (BadQuantity bad) {
            problems.add(new Problem(place(option), "", bad.found(), bad.rule(), bad.nearest().map(n -> "Nearest: " + n)));
        }
        return OptionalDouble.empty();
    }

    /** Notes something else that is wrong with an option. */
    void wrong(String option, String found, String rule) {
        problems.add(new Problem(place(option), "", found, rule));
    }

    private static Place place(String option) {
        return new Place(option, 1, 1);
    }

    /** @throws BadInputException with everything that was wrong */
    void done() throws BadInputException {
        problems.throwIfAny();
    }
}
