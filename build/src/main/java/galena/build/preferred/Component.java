package galena.build.preferred;

import galena.build.folder.Drawer;
import galena.build.folder.PartKind;
import galena.build.quantity.BadQuantity;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.trade.preferred.DigitCode;
import galena.trade.preferred.LetterCode;
import galena.trade.preferred.TwoParts;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Kinds of part that come in preferred values. */
public enum Component {
    RESISTOR(Unit.OHM, 1e-3, 1e12, PartKind.RESISTOR, TwoParts.Kind.RESISTANCE, LetterCode.RESISTANCE),
    CAPACITOR(Unit.FARAD, 1e-14, 1, PartKind.CAPACITOR, TwoParts.Kind.CAPACITANCE, LetterCode.CAPACITANCE),
    COIL(Unit.HENRY, 1e-10, 100, PartKind.COIL, TwoParts.Kind.INDUCTANCE, LetterCode.INDUCTANCE);

    private final Unit unit;
    private final double least;
    private final double most;
    private final PartKind kind;
    private final TwoParts.Kind pairs;
    private final LetterCode letters;

    Component(Unit unit, double least, double most, PartKind kind, TwoParts.Kind pairs, LetterCode letters) {
        this.unit = unit;
        this.least = least;
        this.most = most;
        this.kind = kind;
        this.pairs = pairs;
        this.letters = letters;
    }

    /** "resistor" */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The words of all. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Component::word).toList();
    }

    /** The component of a word, if there is one. */
    public static Optional<Component> named(String word) {
        return Arrays.stream(values()).filter(c -> c.word().equals(word)).findFirst();
    }

    public Unit unit() {
        return unit;
    }

    TwoParts.Kind pairs() {
        return pairs;
    }

    LetterCode letters() {
        return letters;
    }

    /** Coils carry no code of digits that a standard knows. */
    Optional<DigitCode> digits() {
        return switch (this) {
            case RESISTOR -> Optional.of(DigitCode.RESISTANCE);
            case CAPACITOR -> Optional.of(DigitCode.CAPACITANCE);
            case COIL -> Optional.empty();
        };
    }

    /** Tolerance of parts in a drawer that says none. */
    double usualTolerance() {
        return kind.usualTolerance();
    }

    /** Values of this kind in a drawer (SI). */
    List<Double> in(Drawer drawer) {
        return switch (this) {
            case RESISTOR -> drawer.resistors().stream().map(Quantity::value).toList();
            case CAPACITOR -> drawer.capacitors().stream().map(Quantity::value).toList();
            case COIL ->
                drawer.coils().stream().map(c -> c.inductance().value()).toList();
        };
    }

    /** Whether parts of such a value (SI) are made. */
    boolean isMade(double value) {
        return value >= least && value <= most;
    }

    /** A value with the kind of part that has it. */
    public record Asked(Component component, Quantity value) {}

    /**
     * Reads a value; its unit tells the kind.
     *
     * @param said the kind, where the builder says it
     * @throws BadInputException for no quantity, or one that two kinds could have
     */
    public static Asked read(String text, Optional<Component> said) throws BadInputException {
        List<Component> tried = said.map(List::of).orElse(List.of(values()));
        List<Asked> found = tried.stream()
                .flatMap(c -> c.quantity(text).map(q -> new Asked(c, q)).stream())
                .toList();
        if (found.size() == 1 || isSmall(found)) return found.get(0);
        if (found.isEmpty()) throw unreadable(text, said.orElse(RESISTOR));
        String kinds = found.stream().map(a -> a.component().word()).collect(Collectors.joining(" or "));
        String written =
                found.stream().map(a -> text + a.component().unit.symbol()).collect(Collectors.joining(" or "));
        String remedy = "Write " + written + ", or say --part.";
        throw bad('"' + text + "\" could be a " + kinds, "The unit tells the kind.", remedy);
    }

    /** "47p" and "100n" without a unit are capacitors to everybody. */
    private static boolean isSmall(List<Asked> found) {
        return !found.isEmpty()
                && found.get(0).component() == CAPACITOR
                && found.get(0).value().value() < 1e-6;
    }

    private Optional<Quantity> quantity(String text) {
        try {
            return Optional.of(Quantity.read(text, unit)).filter(q -> isMade(q.value()));
        } catch (BadQuantity no) {
            return Optional.empty();
        }
    }

    private static BadInputException unreadable(String text, Component like) {
        try {
            Quantity read = Quantity.read(text, like.unit);
            return bad(
                    '"' + read.text() + "\" is no value that parts are made with",
                    "Parts have values above zero that can be bought.",
                    "Check the prefix: m is milli, M is mega.");
        } catch (BadQuantity bad) {
            return bad(
                    bad.found(),
                    "A value is written as 4.7k, 470R, 47n, 100 pF or 180 µH.",
                    bad.nearest().map(n -> "Nearest: " + n).orElse("Write the unit."));
        }
    }

    private static BadInputException bad(String found, String rule, String remedy) {
        return new BadInputException(new Problem(new Place("VALUE", 1, 1), "", found, rule, remedy));
    }
}
