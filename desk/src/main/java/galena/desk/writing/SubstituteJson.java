package galena.desk.writing;

import galena.build.substitute.DeviceWindow;
import galena.build.substitute.SubstituteReport;
import galena.build.substitute.SubstituteReport.Devices;
import galena.build.substitute.SubstituteReport.Values;
import java.util.Locale;

/** What can stand in a part's place, as JSON; the shape is {@code galena/schema/substitutes.json}. */
public final class SubstituteJson {
    private SubstituteJson() {}

    public static String of(SubstituteReport report) {
        return Json.document("substitutes", json -> {
            json.text("part", report.part()).text("now", report.now()).number("yield", report.goodNow());
            if (report instanceof Devices devices) devices(json, devices);
            else values(json, (Values) report);
        });
    }

    private static void devices(Json json, Devices report) {
        json.each("devices", report.rows(), r -> {
            json.text("type", r.type())
                    .text("fit", r.fit().name().toLowerCase(Locale.ROOT))
                    .text("change", r.change());
            r.yield().ifPresent(yield -> json.number("yield", yield));
            json.text("effects", r.effects());
        });
        report.window().ifPresent(w -> json.object("window", () -> window(json, w)));
        json.texts("notes", report.notes());
    }

    private static void window(Json json, DeviceWindow window) {
        json.each("axes", window.axes(), a -> json.text("parameter", a.parameter())
                .figure("typical", a.typical())
                .figure("low", a.low())
                .figure("high", a.high()));
        json.texts("steps", window.test().steps());
        json.figures("readings", window.test().readings());
        json.text("proof", window.test().proof());
    }

    private static void values(Json json, Values report) {
        report.range()
                .ifPresent(r ->
                        json.object("range", () -> json.number("low", r.low()).number("high", r.high())));
        json.each("combinations", report.combinations(), c -> json.text("words", c.words())
                .figure("value", c.value())
                .number("error", c.error())
                .text("effects", c.effects())
                .number("yield", c.yield()));
        json.texts("notes", report.notes());
    }
}
