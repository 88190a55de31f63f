package galena.desk.writing;

import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Curve;
import galena.build.predict.Prediction.NoCurve;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Prediction.Silent;
import galena.build.predict.Prediction.StartupFigures;
import galena.build.predict.StaticLimits;
import java.util.Locale;

/** A prediction as JSON, all of it; the shape is {@code galena/schema/prediction.json}. */
public final class PredictionJson {
    private PredictionJson() {}

    public static String of(Prediction prediction) {
        return Json.document("prediction", json -> write(json, prediction));
    }

    private static void write(Json json, Prediction p) {
        json.text("name", p.name()).text("digest", p.digest());
        json.object("setting", () -> setting(json, p.setting()));
        json.object("rest", () -> json.text("method", p.rest().method())
                .figures("voltages", p.rest().voltages()));
        p.startup().ifPresent(s -> json.object("startup", () -> startup(json, s)));
        json.object("running", () -> {
            if (p.running() instanceof Oscillation o) oscillation(json.text("state", "oscillates"), o);
            if (p.running() instanceof Silent s) json.text("state", "silent").text("reason", s.reason());
        });
        json.object("modulation", () -> {
            if (p.modulation() instanceof Curve c) curve(json.text("state", "curve"), c);
            if (p.modulation() instanceof NoCurve n) json.text("state", "none").text("reason", n.reason());
        });
        json.each("judgements", p.judgements(), j -> json.text("item", j.item())
                .text("wanted", j.wanted())
                .figure("found", j.found())
                .text("outcome", j.outcome().toString())
                .text("remark", j.remark()));
        json.texts("notes", p.notes());
    }

    private static void setting(Json json, Prediction.Setting setting) {
        json.number("temperature", setting.temperature());
        setting.supplyVoltage().ifPresent(v -> json.number("supplyVoltage", v));
        json.text("accuracy", setting.accuracy());
        json.object("adjustments", () -> setting.adjustments().forEach(json::number));
    }

    private static void startup(Json json, StartupFigures s) {
        json.truth("starts", s.starts()).text("behaviour", s.behaviour()).text("site", s.site());
        json.figure("frequency", s.frequency()).figure("margin", s.margin());
        json.figure("weakest", s.weakest()).figure("time", s.time());
        json.object("lossShares", () -> s.lossShares().forEach(json::number));
    }

    private static void oscillation(Json json, Oscillation o) {
        json.figure("carrier", o.carrier());
        json.text("stability", o.stability().name().toLowerCase(Locale.ROOT)).number("multiplier", o.multiplier());
        json.number("errorFrequency", o.errorFrequency()).number("errorHarmonics", o.errorHarmonics());
        json.each("spectra", o.spectra(), s -> json.text("part", s.part())
                .text("quantity", s.quantity())
                .figure("fundamental", s.fundamental())
                .figures("harmonics", s.harmonics()));
        json.figure("supplyCurrent", o.supplyCurrent()).figure("inputPower", o.inputPower());
        json.figure("batteryLife", o.batteryHours());
        json.object("powers", () -> o.powers().forEach(json::number));
        json.figures("meanVoltages", o.meanVoltages());
        json.each("carrierCauses", o.carrierCauses(), c -> json.text("what", c.what())
                .number("hertz", c.hertz()));
        json.each("tanks", o.tanks(), t -> json.number("frequency", t.frequency())
                .number("q", t.q())
                .text("part", t.part()));
        json.each("adjustments", o.adjustments(), a -> json.text("part", a.part())
                .number("position", a.position())
                .number("hertzPerPercent", a.hertzPerPercent()));
    }

    private static void curve(Json json, Curve c) {
        json.text("quantity", c.quantity()).text("source", c.source()).number("level", c.level());
        json.each("points", c.curve(), p -> json.number("audio", p.audio())
                .number("amplitude", p.amplitude())
                .number("frequency", p.frequency()));
        json.figure("positivePeak", c.positivePeak()).figure("negativePeak", c.negativePeak());
        json.figure("distortion", c.distortion()).figure("carrierShift", c.carrierShift());
        json.figure("swing", c.swing());
        json.figure("deepestClean", c.deepestClean()).number("cleanLimit", c.cleanLimit());
        StaticLimits limits = c.limits();
        json.object("limits", () -> json.figure("audioForDepth", limits.audioForDepth())
                .figure("cleanLevel", limits.cleanLevel())
                .figure("bestBias", limits.bestBias())
                .figure("biasedDepth", limits.biasedDepth())
                .figure("biasedLevel", limits.biasedLevel())
                .figure("stopsBelow", limits.stopsBelow())
                .figure("stopsAbove", limits.stopsAbove()));
        json.object("tone", () -> ModulationJson.tone(json, c.tone()));
        json.object("response", () -> ModulationJson.response(json, c.response()));
    }
}
