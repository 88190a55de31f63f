package galena.desk.writing;

import galena.build.guard.GuardReport;

/** What spoils a build, as JSON; hertz, decibels and amperes a percent, a picofarad, ten nanohenries. */
public final class GuardJson {
    private GuardJson() {}

    public static String of(GuardReport report) {
        return Json.document("guard", json -> {
            json.number("carrier", report.carrier()).text("trimmer", report.trimmer());
            json.number("hertzPerPercent", report.hertzPerPercent());
            json.each("parts", report.parts(), p -> moves(json.text("value", p.value()), p.perPercent()));
            json.each(
                    "strays",
                    report.strays(),
                    s -> moves(json.text("from", s.from()).text("to", s.to()), s.perPicofarad()));
            json.each("leads", report.leads(), l -> json.text("part", l.part()).number("hertz", l.hertz()));
            json.each("couplings", report.couplings(), c -> json.text("first", c.first())
                    .text("second", c.second())
                    .number("hertz", c.hertz()));
            json.each("tools", report.tools(), t -> json.text("coil", t.coil()).number("hertz", t.hertz()));
            json.each("probes", report.probes(), p -> json.text("net", p.net())
                    .number("tenToOne", p.tenToOne())
                    .number("oneToOne", p.oneToOne())
                    .truth("oneToOneStops", p.stops())
                    .number("hand", p.hand()));
            json.object(
                    "drift", () -> json.number("perTenKelvin", report.drift().perTenKelvin())
                            .number("perVolt", report.drift().perVolt())
                            .text("compensation", report.drift().compensation())
                            .each("shares", report.drift().byPart(), s -> json.text("part", s.part())
                                    .number("hertz", s.hertz())));
            json.texts("advice", report.advice());
        });
    }

    private static void moves(Json json, GuardReport.Moves m) {
        json.number("carrier", m.carrier())
                .number("output", m.output())
                .number("outputRetrimmed", m.outputRetrimmed())
                .number("harmonic", m.harmonic())
                .number("supply", m.supply());
    }
}
