package galena.desk.writing;

import galena.build.guard.GuardReport;
import galena.build.guard.GuardReport.Effect;
import galena.build.guard.GuardReport.Moves;
import java.util.List;

/** What spoils a build, as JSON; the shape is {@code galena/schema/guard.json}. */
public final class GuardJson {
    private GuardJson() {}

    public static String of(GuardReport report) {
        return Json.document("guard", json -> write(json, report));
    }

    private static void write(Json json, GuardReport report) {
        json.number("carrier", report.carrier()).text("output", report.output());
        json.number("strongestHarmonic", report.strongest());
        report.depth().ifPresent(d -> json.number("depth", d));
        json.text("trimmer", report.trimmer()).number("hertzPerPercent", report.hertzPerPercent());
        json.each("parts", report.parts(), p -> moves(json.text("value", p.value()), p.perPercent()));
        json.each(
                "strays",
                report.strays(),
                s -> moves(json.text("from", s.from()).text("to", s.to()), s.perPicofarad()));
        json.each(
                "leads",
                report.leads(),
                l -> moves(json.text("part", l.part()).text("net", l.net()), l.perTenNanohenries()));
        json.each(
                "couplings",
                report.couplings(),
                c -> moves(json.text("first", c.first()).text("second", c.second()), c.moves()));
        json.each("tools", report.tools(), t -> moves(json.text("coil", t.coil()), t.moves()));
        json.each("probes", report.probes(), p -> {
            json.text("net", p.net());
            p.tenToOne().ifPresent(h -> json.number("tenToOne", h));
            p.oneToOne().ifPresent(h -> json.number("oneToOne", h));
            json.number("hand", p.hand());
        });
        json.each("points", report.points(), p -> {
            json.text("name", p.name()).text("at", p.at()).text("probe", p.probe());
            p.hertz().ifPresent(h -> json.number("hertz", h));
        });
        json.object("drift", () -> drift(json, report.drift()));
        json.texts("advice", report.advice());
    }

    private static void drift(Json json, GuardReport.Drift drift) {
        json.object("perTenKelvin", () -> moves(json, drift.perTenKelvin()));
        json.object("perVolt", () -> moves(json, drift.perVolt()));
        json.text("compensation", drift.compensation());
        json.each("shares", drift.byPart(), s -> json.text("part", s.part()).number("hertz", s.hertz()));
    }

    private static void moves(Json json, Moves m) {
        json.number("carrier", m.carrier());
        json.object("fixed", () -> effect(json, m.fixed()));
        json.object("retrimmed", () -> effect(json, m.retrimmed()));
    }

    private static void effect(Json json, Effect e) {
        json.number("output", e.output());
        List<Double> harmonics = e.harmonics();
        for (int k = 0; k < harmonics.size(); k++) json.number("harmonic" + (k + 2), harmonics.get(k));
        e.depth().ifPresent(d -> json.number("depth", d));
        json.number("supply", e.supply());
    }
}
