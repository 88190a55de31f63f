package galena.desk.command;

import galena.build.quantity.BadQuantity;
import galena.build.quantity.Engineering;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.source.Problems;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads quantities behind options; everything wrong with them is told at once by {@link #done}. */
final class Asked {
    private static final String[] EXAMPLES = {"50 mm", "140x10 mm", "36x23x10 mm"};

    private final Problems problems = new Problems();

    /** What stands behind an option, in SI; empty where nothing or nothing right stands there. */
    OptionalDouble quantity(String option, Optional<String> text, Unit unit, double low, double high) {
        if (text.isEmpty()) return OptionalDouble.empty();
        try {
            double value = Quantity.read(text.get(), unit).value();
            if (low <= value && value <= high) return OptionalDouble.of(value);
            String limits = Engineering.exact(low, unit) + " to " + Engineering.exact(high, unit);
            wrong(
                    option,
                    '"' + text.get() + "\" is too " + (value < low ? "small" : "large"),
                    "Allowed: " + limits + ".");
        } catch (BadQuantity bad) {
            problems.add(new Problem(
                    place(option), "", bad.found(), bad.rule(), bad.nearest().map(n -> "Nearest: " + n)));
        }
        return OptionalDouble.empty();
    }

    /**
     * Sizes joined by x, as in "140x10 mm"; a unit behind the last holds for those without one.
     *
     * @param names what each is, for the rule
     * @return metres in their order; none where something was wrong
     */
    List<Double> sizes(String option, String text, String... names) {
        String[] pieces = text.strip().split("\\s*[x×*]\\s*");
        if (pieces.length != names.length) {
            wrong(
                    option,
                    '"' + text + "\" has " + pieces.length + (pieces.length == 1 ? " size" : " sizes"),
                    "Written as " + String.join(" x ", names) + ", as in " + EXAMPLES[names.length - 1] + ".");
            return List.of();
        }
        String unit =
                pieces[pieces.length - 1].replaceFirst("^[-+0-9.,eE]+", "").strip();
        List<Double> sizes = new ArrayList<>();
        for (String each : pieces) {
            String piece = each.matches("[-+0-9.,eE]+") ? each + " " + unit : each;
            OptionalDouble size = quantity(option, Optional.of(piece.strip()), Unit.METRE, 1e-4, 10);
            size.ifPresent(sizes::add);
        }
        return sizes.size() == names.length ? sizes : List.of();
    }

    /** Something else that reads an option. */
    interface Reading<T> {
        T read() throws BadInputException;
    }

    /** What a reading gives; empty, and its problems noted, where it can't. */
    <T> Optional<T> of(Reading<T> reading) {
        try {
            return Optional.of(reading.read());
        } catch (BadInputException bad) {
            problems.addAll(bad.problems());
            return Optional.empty();
        }
    }

    /** Notes an option that means nothing here. */
    void onlyWith(String option, Optional<String> text, String others, boolean there) {
        if (text.isPresent() && !there) wrong(option, "means nothing here", "It goes with " + others + ".");
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
