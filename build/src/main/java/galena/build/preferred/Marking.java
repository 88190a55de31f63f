package galena.build.preferred;

import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.trade.preferred.ColourCode;
import galena.trade.preferred.MarkingException;
import galena.trade.preferred.Tolerance;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a marking says.
 *
 * @param mark as it stands on the part
 * @param readings every way to read it
 */
public record Marking(String mark, List<Reading> readings) {
    public Marking {
        readings = List.copyOf(readings);
    }

    /**
     * One way to read it.
     *
     * @param component kind of part that it would stand on
     * @param how "letter code", "digit code", "colour bands", with the tolerance letter where one was read
     * @param value (SI)
     * @param low least value within the tolerance, where the marking says one
     * @param high greatest value within it
     */
    public record Reading(Component component, String how, double value, OptionalDouble low, OptionalDouble high) {}

    /**
     * @param mark letters and digits: "4n7", "472", "4K7J", "104K"
     * @param said kind of part, where the builder says it
     * @throws BadInputException if it can't be read at all
     */
    public static Marking read(String mark, Optional<Component> said) throws BadInputException {
        String text = mark.strip();
        List<Reading> found = new ArrayList<>();
        String why = "";
        for (Component component : said.map(List::of).orElse(List.of(Component.values()))) {
            withTolerance(component, text).ifPresent(found::add);
            try {
                plain(component, text).ifPresent(found::add);
            } catch (MarkingException no) {
                if (why.isEmpty()) why = String.valueOf(no.getMessage());
            }
        }
        if (!found.isEmpty()) return new Marking(text, found);
        throw unreadable("--marking", why.isEmpty() ? '"' + text + "\" is no marking" : why);
    }

    /**
     * @param bands colours from the end where they crowd, parted by blanks
     * @throws BadInputException if they are no bands of a resistor
     */
    public static Marking bands(String bands) throws BadInputException {
        try {
            ColourCode.Marked marked =
                    ColourCode.read(Arrays.asList(bands.strip().split("[\\s,]+")));
            Reading reading = new Reading(
                    Component.RESISTOR,
                    "colour bands",
                    marked.ohms(),
                    OptionalDouble.of(marked.ohms() * (1 - marked.tolerance())),
                    OptionalDouble.of(marked.ohms() * (1 + marked.tolerance())));
            return new Marking(bands.strip(), List.of(reading));
        } catch (MarkingException no) {
            throw unreadable("--bands", String.valueOf(no.getMessage()));
        }
    }

    private static BadInputException unreadable(String option, String message) {
        int stop = message.indexOf(". ");
        String found = stop < 0 ? message : message.substring(0, stop);
        String rule = stop < 0 ? "Markings are as 4n7, 472, 4K7J or 104K." : message.substring(stop + 2) + ".";
        return new BadInputException(new Problem(new Place(option, 1, 1), "", found, rule));
    }

    private static Optional<Reading> plain(Component component, String text) {
        if (component.digits().isPresent() && text.matches("[0-9]{3,4}")) {
            double value = component.digits().get().read(text);
            return Optional.of(without(component, "digit code", value));
        }
        double value = component.letters().read(text);
        return component.isMade(value) ? Optional.of(without(component, "letter code", value)) : Optional.empty();
    }

    private static Reading without(Component component, String how, double value) {
        return new Reading(component, how, value, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /** A last letter may be the tolerance, if what stands before it is a marking by itself. */
    private static Optional<Reading> withTolerance(Component component, String text) {
        if (text.length() < 2 || component == Component.COIL) return Optional.empty();
        String letter = text.substring(text.length() - 1);
        try {
            Optional<Reading> before = plain(component, text.substring(0, text.length() - 1));
            if (before.isEmpty()) return Optional.empty();
            double value = before.get().value();
            Tolerance tolerance =
                    component == Component.CAPACITOR ? Tolerance.ofLetter(letter, value) : Tolerance.ofLetter(letter);
            List<Double> limits = tolerance.limits(value);
            return Optional.of(new Reading(
                    component,
                    before.get().how() + " with tolerance " + letter,
                    value,
                    OptionalDouble.of(limits.get(0)),
                    OptionalDouble.of(limits.get(1))));
        } catch (MarkingException none) {
            return Optional.empty();
        }
    }
}
