package galena.desk.writing;

import galena.build.drift.DriftReport;
import galena.build.drift.DriftReport.Moment;

/** A run from switch-on as JSON; the shape is {@code galena/schema/drift.json}. */
public final class DriftJson {
    private DriftJson() {}

    public static String of(DriftReport report) {
        return Json.document("drift", json -> {
            json.number("carrier", report.carrier()).text("output", report.output());
            json.number("channel", report.channel());
            report.wanted().ifPresent(w -> json.number("wanted", w));
            json.number("audio", report.audio());
            json.number("pushing", report.pushing());
            json.figure("leaves", report.leaves()).figure("loses", report.loses());
            json.figure("stops", report.stops()).figure("spent", report.spent());
            json.each("run", report.run(), m -> moment(json, m));
            json.each("temperatures", report.temperatures(), m -> moment(json, m));
        });
    }

    private static void moment(Json json, Moment m) {
        json.number("seconds", m.seconds()).number("charge", m.charge()).number("temperature", m.celsius());
        json.number("terminals", m.terminals()).number("frequency", m.frequency());
        json.number("output", m.output()).number("supply", m.supply());
        m.depth().ifPresent(d -> json.number("negativePeak", d));
        m.distortion().ifPresent(d -> json.number("distortion", d));
    }
}
