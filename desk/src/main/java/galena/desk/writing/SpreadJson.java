package galena.desk.writing;

import galena.build.spread.Drawn;
import galena.build.spread.SpreadReport;
import java.util.Locale;
import java.util.Map;

/** What a spread came to, as JSON; the shape is {@code galena/schema/spread.json}. */
public final class SpreadJson {
    private SpreadJson() {}

    public static String of(SpreadReport report) {
        return Json.document("spread", json -> {
            json.number("count", report.count())
                    .text("seed", Long.toString(report.seed()))
                    .figure("yield", report.yield());
            json.object("windows", () -> report.windows().forEach((q, window) -> json.figure(key(q), window)));
            json.figures("voltages", report.voltages().values());
            json.object("failures", () -> report.failures().forEach(json::number));
            json.each("tighten", report.tighten(), t -> json.text("what", t.what())
                    .number("yield", t.yield()));
            json.each("worst", report.worst(), d -> drawn(json, d));
        });
    }

    /** One copy, called back; the shape is {@code galena/schema/copy.json}. */
    public static String of(long seed, Drawn one) {
        return Json.document("copy", json -> drawn(json.text("seed", Long.toString(seed)), one));
    }

    private static void drawn(Json json, Drawn d) {
        json.text("number", Long.toString(d.number()))
                .number("temperature", d.temperature())
                .number("charge", d.charge());
        json.object("values", () -> {
            for (Drawn.Quantity quantity : Drawn.Quantity.values()) {
                Double value = d.values().get(quantity);
                if (value != null) json.number(key(quantity), value);
            }
        });
        json.object("voltages", () -> d.voltages().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(e -> json.number(e.getKey(), e.getValue())));
        json.texts("failures", d.failures());
    }

    private static String key(Drawn.Quantity quantity) {
        return quantity.name().toLowerCase(Locale.ROOT);
    }
}
