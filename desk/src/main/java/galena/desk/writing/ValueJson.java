package galena.desk.writing;

import galena.build.preferred.Marking;
import galena.build.preferred.ValueSheet;
import java.util.Locale;

/** Values and markings as JSON, in SI units. */
public final class ValueJson {
    private ValueJson() {}

    public static String of(ValueSheet sheet) {
        return Json.document("value", json -> {
            json.text("part", sheet.component().word())
                    .text("unit", sheet.component().unit().symbol())
                    .number("wanted", sheet.wanted());
            json.each("series", sheet.rows(), row -> {
                json.text("name", row.series())
                        .number("tolerance", row.tolerance())
                        .number("value", row.value())
                        .number("error", row.error())
                        .number("below", row.below())
                        .number("above", row.above());
                json.object("codes", () -> row.codes().forEach(c -> json.text(c.how(), c.text())));
            });
            json.each("made", sheet.made(), c -> json.text(
                            "joined", c.joined().name().toLowerCase(Locale.ROOT))
                    .number("first", c.first().value())
                    .number("second", c.second().value())
                    .number("value", c.value())
                    .number("error", c.error())
                    .number("tolerance", c.tolerance()));
        });
    }

    public static String of(Marking marking) {
        return Json.document("marking", json -> {
            json.text("mark", marking.mark());
            json.each("readings", marking.readings(), r -> {
                json.text("part", r.component().word())
                        .text("how", r.how())
                        .number("value", r.value())
                        .text("unit", r.component().unit().symbol());
                r.low().ifPresent(low -> json.number("low", low));
                r.high().ifPresent(high -> json.number("high", high));
            });
        });
    }
}
