package galena.desk.writing;

import galena.build.listen.Agreement;
import galena.build.listen.Happened;
import galena.build.listen.ListenReport;
import java.nio.file.Path;

/** What was listened to, as JSON; the shape is {@code galena/schema/listen.json}. */
public final class ListenJson {
    private ListenJson() {}

    /** @param took seconds that the programme needed */
    public static String of(ListenReport report, Path out, double took) {
        return Json.document("listen", json -> {
            json.text("name", report.name()).number("carrier", report.carrier());
            json.text("receiver", report.receiver()).number("mistuned", report.mistuned());
            json.text("file", out.toString()).text("caution", ListenReport.CAUTION);
            json.number("seconds", report.happened().seconds());
            json.number("timesRealTime", report.happened().seconds() / Math.max(took, 1e-9));
            json.figures("figures", report.sound().figures());
            report.air()
                    .ifPresent(air -> json.object("air", () -> {
                        json.number("distance", air.distance()).truth("plays", !air.silent());
                        json.figure("signalToNoise", air.signalToNoise());
                    }));
            json.text("without", report.without());
            json.each("events", report.happened().events(), e -> event(json, e));
            json.number("softened", report.happened().softened());
            json.text("order", report.order());
            json.number("pathError", report.pathError()).number("sidebandError", report.tankError());
            json.each("agreement", report.agreements(), a -> agreement(json, a));
        });
    }

    private static void event(Json json, Happened.Event event) {
        json.text("name", event.name()).number("count", (double) event.count()).number("seconds", event.seconds());
        json.numbers("first", event.first());
    }

    private static void agreement(Json json, Agreement a) {
        json.number("tone", a.tone()).number("level", a.level());
        json.number("depthFull", a.full()).number("depthReduced", a.reduced());
        json.number("distortionFull", a.fullDistortion()).number("distortionReduced", a.reducedDistortion());
    }
}
