package galena.build.folder;

import galena.build.quantity.BadQuantity;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Nearest;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.source.Problems;
import java.util.List;
import java.util.Optional;

/** Adjustments as commands take them: {@code Ct=40%}. */
public final class Settings {
    private static final String RULE = "An adjustment is set as name=position, 0 % to 100 %.";

    private final Build build;
    private final String option;
    private final Problems problems = new Problems();

    private Settings(Build build, String option) {
        this.build = build;
        this.option = option;
    }

    /**
     * @param texts each {@code name=position}
     * @param option what the texts were written behind, {@code --set}: problems name it as their place
     * @param base the overlay to lay them on
     * @throws BadInputException with every problem in every text
     */
    public static Overlay apply(Build build, Overlay base, String option, List<String> texts) throws BadInputException {
        Settings settings = new Settings(build, option);
        Overlay overlay = base;
        for (String text : texts) overlay = settings.one(text, overlay);
        settings.problems.throwIfAny();
        return overlay;
    }

    private Overlay one(String text, Overlay overlay) {
        int equals = text.indexOf('=');
        if (equals < 0) {
            add(1, text, '"' + text + "\" has no =", Optional.of("Write Ct=40%"));
            return overlay;
        }
        String name = text.substring(0, equals).strip();
        Optional<Double> position = position(name, text.substring(equals + 1), equals + 2);
        return isAdjustable(name) && position.isPresent() ? overlay.set(name, position.get()) : overlay;
    }

    private boolean isAdjustable(String name) {
        List<String> known = build.adjustments();
        if (known.contains(name)) return true;
        String found = build.part(name)
                .map(part -> part.kind().noun() + " has no position to set")
                .orElse("no part is named \"" + name + "\"");
        String can = known.isEmpty()
                ? "Nothing in this build can be adjusted."
                : "Adjustments: " + String.join(", ", known) + ".";
        add(1, name, found, Nearest.to(name, known).map(n -> "Nearest: " + n).or(() -> Optional.of(can)));
        return false;
    }

    private Optional<Double> position(String name, String text, int column) {
        try {
            double position = Quantity.read(text, Unit.FRACTION).value();
            if (position >= 0 && position <= 1) return Optional.of(position);
            add(column, name, '"' + text.strip() + "\" lies outside the travel", Optional.empty());
        } catch (BadQuantity bad) {
            add(column, name, bad.found(), bad.nearest().map(n -> "Nearest: " + n));
        }
        return Optional.empty();
    }

    private void add(int column, String path, String found, Optional<String> remedy) {
        problems.add(new Problem(new Place(option, 1, column), path, found, RULE, remedy));
    }
}
