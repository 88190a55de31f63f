package galena.desk.writing;

import galena.build.predict.Trim;
import java.util.Locale;

/** Where an adjustment has to stand, as JSON; the shape is {@code galena/schema/trim.json}. */
public final class TrimJson {
    private TrimJson() {}

    public static String of(Trim.Answer answer) {
        return Json.document("trim", json -> {
            json.text("part", answer.part())
                    .number("before", answer.before())
                    .text("quantity", answer.wanted().name())
                    .number("wanted", answer.wanted().value())
                    .text("end", answer.end().name().toLowerCase(Locale.ROOT))
                    .text("words", answer.end().toString());
            answer.position().ifPresent(p -> json.number("position", p));
            json.figure("found", answer.found()).figure("carrier", answer.carrier());
        });
    }
}
