package galena.desk.writing;

import galena.build.depth.Deepened;
import galena.build.depth.ModulationReport;
import galena.build.modulation.AudioResponse;
import galena.build.modulation.Modulated;
import galena.build.modulation.ToneAnswer;
import java.util.List;

/** What tones do to a carrier, as JSON. */
public final class ModulationJson {
    private ModulationJson() {}

    /** A report; the shape is {@code galena/schema/modulation.json}. */
    public static String of(ModulationReport report) {
        return Json.document("modulation", json -> {
            json.text("name", report.name()).number("carrier", report.carrier()).text("source", report.source());
            json.object("tone", () -> tone(json, report.tone()));
            json.each("sweep", report.sweep(), t -> tone(json, t));
            json.object("response", () -> response(json, report.response()));
            causes(json, "lowSetBy", report.lowSetBy());
            causes(json, "highSetBy", report.highSetBy());
            json.number("supplySwing", report.supplySwing()).number("supplyHum", report.supplyHum());
            json.text("swingVerdict", report.swingVerdict());
            json.each("cures", report.cures(), c -> json.text("what", c.what())
                    .text("cause", c.cause())
                    .number("swing", c.swing())
                    .number("depth", c.depth())
                    .number("carrier", c.carrier())
                    .truth("verified", c.verified()));
            json.texts("notes", report.notes());
        });
    }

    private static void causes(Json json, String name, List<ModulationReport.Cause> causes) {
        json.each(name, causes, c -> json.text("what", c.what()).number("share", c.share()));
    }

    /** The deepest clean setting; the shape is {@code galena/schema/deepen.json}. */
    public static String of(Deepened found) {
        return Json.document("deepen", json -> {
            json.text("name", found.name()).text("source", found.source()).number("limit", found.limit());
            if (!found.loaded().isEmpty()) json.text("loaded", found.loaded());
            json.number("available", found.available()).text("binding", found.binding());
            json.each("settings", found.settings(), s -> {
                json.object("presets", () -> s.presets().forEach(json::number));
                s.load().ifPresent(load -> json.number("load", load));
                json.number("level", s.level()).number("depth", s.depth()).text("binds", s.binds());
                json.each("conditions", s.conditions(), c -> {
                    json.text("name", c.name());
                    c.most().ifPresent(most -> json.number("most", most));
                    json.number("depth", c.depth())
                            .number("distortion", c.distortion())
                            .number("swing", c.swing())
                            .text("suffers", c.suffers())
                            .truth("crestGives", c.crestGives());
                });
            });
            json.texts("notes", found.notes());
        });
    }

    static void tone(Json json, ToneAnswer answer) {
        if (answer instanceof ToneAnswer.NoTone none) {
            json.text("state", "none").text("reason", none.reason());
            return;
        }
        Modulated m = (Modulated) answer;
        json.text("state", "tone").text("quantity", m.quantity());
        json.number("level", m.level())
                .number("audio", m.audio())
                .text("way", m.way().toString());
        json.number("carrier", m.carrier());
        json.figure("positivePeak", m.positivePeak()).figure("negativePeak", m.negativePeak());
        json.figures("harmonics", m.harmonics()).figure("distortion", m.distortion());
        json.figure("carrierShift", m.carrierShift()).figure("swing", m.swing());
        json.figure("oscillatorSwing", m.oscillatorSwing());
        json.texts("troubles", m.troubles().stream().map(Object::toString).toList());
        json.numbers("envelope", m.envelope());
    }

    static void response(Json json, AudioResponse r) {
        json.text("quantity", r.quantity()).number("reference", r.reference());
        json.each("points", r.points(), p -> json.number("audio", p.audio())
                .number("decibels", p.decibels())
                .number("depth", p.depth())
                .number("swing", p.swing()));
        json.figure("low", r.low()).figure("high", r.high());
    }
}
