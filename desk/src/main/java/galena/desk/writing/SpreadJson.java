package galena.desk.writing;

import galena.build.spread.Drawn;
import galena.build.spread.SpreadReport;
import java.util.Locale;

/** What a spread came to, as JSON. */
public final class SpreadJson {
    private SpreadJson() {}

    public static String of(SpreadReport report) {
        return Json.document("spread", json -> {
            json.number("count", report.count())
                    .text("seed", Long.toString(report.seed()))
                    .figure("yield", report.yield());
            json.figures("windows", report.windows().values());
            json.object("failures", () -> report.failures().forEach(json::number));
            json.each("tighten", report.tighten(), t -> json.text("what", t.what())
                    .number("yield", t.yield()));
            json.each("worst", report.worst(), d -> drawn(json, d));
        });
    }

    private static void drawn(Json json, Drawn d) {
        json.text("number", Long.toString(d.number()))
                .number("temperature", d.temperature())
                .number("charge", d.charge());
        json.object("values", () -> d.values()
                .forEach((quantity, value) -> json.number(quantity.name().toLowerCase(Locale.ROOT), value)));
        json.texts("failures", d.failures());
    }
}
