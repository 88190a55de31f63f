package galena.build.folder;

import static galena.build.form.Field.needed;
import static galena.build.form.Field.optional;

import galena.build.form.Field;
import galena.build.form.Filled;
import galena.build.form.Form;
import galena.build.form.Group;
import galena.build.form.ListOf;
import galena.build.form.Quantities;
import galena.build.form.Text;
import galena.build.form.Words;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import java.util.List;
import java.util.Optional;

/**
 * A station that the builder hears.
 *
 * @param carrier its frequency
 * @param heard {@code day}, {@code night} or {@code always}
 * @param strength {@code faint}, {@code fair}, {@code strong} or {@code local}
 * @param name what the builder calls it
 */
public record Station(Quantity carrier, String heard, String strength, Optional<String> name) {
    private static final Form ONE = Form.of(
            "a station",
            needed("carrier", Quantities.one(Unit.HERTZ, 1e4, 3e7), "A station has a carrier frequency."),
            optional(
                    "heard",
                    Words.of("day", "night", "always"),
                    "A station is heard by day, by night, or always if left out."),
            optional(
                    "strength",
                    Words.of("faint", "fair", "strong", "local"),
                    "A station is faint, fair, strong, or local for a transmitter nearby; fair if left out."),
            optional("name", Text.ANY, "The name is the builder's own."));

    static final Form FORM = Form.of(
            "a list of stations",
            Field.version(),
            needed("stations", ListOf.any(new Group(ONE)), "The stations heard are a list."));

    static List<Station> of(Filled filled) {
        return filled.list("stations", Filled.class).stream()
                .map(s -> new Station(
                        s.quantity("carrier").orElseThrow(),
                        s.text("heard").orElse("always"),
                        s.text("strength").orElse("fair"),
                        s.text("name")))
                .toList();
    }
}
