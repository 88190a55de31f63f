package galena.desk.writing;

import galena.build.reach.Emission;
import galena.build.reach.Hearing;
import galena.build.reach.Level;
import galena.build.reach.Reach;
import galena.build.reach.Rules;

/** A reach as JSON, all of it. Fields are rms. */
public final class ReachJson {
    private ReachJson() {}

    public static String of(Reach reach) {
        return Json.document("reach", json -> write(json, reach));
    }

    private static void write(Json json, Reach r) {
        json.text("name", r.name()).text("digest", r.digest()).text("aerial", r.aerial());
        json.figure("moment", r.moment())
                .figure("positivePeak", r.positivePeak())
                .figure("depth", r.depth());
        json.each("emissions", r.emissions(), e -> emission(json, e));
        r.wanted().ifPresent(d -> json.number("wantedDistance", d));
        r.neighbour().ifPresent(d -> json.number("neighbourDistance", d));
        json.text("noise", r.surroundings());
        json.each("hearing", r.hearing(), h -> hearing(json, h));
        json.object("rules", () -> rules(json, r.rules()));
        json.text("caution", r.caution());
        json.each("levels", r.levels(), level -> level(json, level));
        json.each(
                "harmonicLevels",
                r.harmonicLevels(),
                h -> level(json.number("order", h.emission().order()), h.level()));
        json.each("curve", r.curve(), level -> level(json, level));
        json.texts("notes", r.notes());
    }

    private static void emission(Json json, Emission e) {
        json.number("order", e.order()).number("frequency", e.frequency()).figure("current", e.current());
    }

    private static void level(Json json, Level level) {
        json.number("distance", level.distance());
        level.eAxis().ifPresent(f -> json.figure("eAxis", f));
        json.figure("eBroadside", level.eBroadside());
        level.hAxis().ifPresent(f -> json.figure("hAxis", f));
        json.figure("hBroadside", level.hBroadside()).figure("loopEquivalent", level.loopEquivalent());
    }

    private static void hearing(Json json, Hearing h) {
        json.text("kind", h.kind()).text("receiver", h.receiver()).truth("verified", h.verified());
        json.figure("noise", h.noise()).figure("pleasant", h.pleasant()).figure("usable", h.usable());
        h.wanted().ifPresent(at -> json.object("wanted", () -> heard(json, at)));
        h.neighbour().ifPresent(at -> json.object("neighbour", () -> heard(json, at)));
        json.each("curve", h.curve(), at -> heard(json, at));
    }

    private static void heard(Json json, Hearing.Heard heard) {
        json.number("distance", heard.distance())
                .figure("signalToNoise", heard.signalToNoise())
                .text("sound", heard.sound())
                .truth("silent", heard.silent());
    }

    private static void rules(Json json, Rules rules) {
        if (rules instanceof Rules.NotHeld none)
            json.text("state", "not held")
                    .text("region", none.region())
                    .text("reason", none.reason())
                    .text("check", none.check());
        if (rules instanceof Rules.Judged judged) {
            json.text("state", "judged")
                    .text("region", judged.region())
                    .text("check", judged.check())
                    .text("note", judged.note());
            json.each("routes", judged.routes(), route -> {
                json.text("name", route.name())
                        .text("standing", route.standing().toString())
                        .truth("verified", route.verified())
                        .text("words", route.words());
                json.each("lines", route.lines(), line -> line(json, line));
            });
        }
    }

    private static void line(Json json, Rules.Line line) {
        json.text("subject", line.subject())
                .text("section", line.section())
                .text("standing", line.standing().toString())
                .truth("outOfBand", line.outOfBand())
                .truth("verified", line.verified())
                .text("source", line.source())
                .text("remark", line.remark());
        line.limit().ifPresent(f -> json.figure("limit", f));
        line.distance().ifPresent(d -> json.number("distance", d));
        line.found().ifPresent(f -> json.figure("found", f));
        line.loopEquivalent().ifPresent(f -> json.figure("loopEquivalent", f));
        line.margin().ifPresent(f -> json.figure("margin", f));
        line.crestMargin().ifPresent(f -> json.figure("crestMargin", f));
    }
}
