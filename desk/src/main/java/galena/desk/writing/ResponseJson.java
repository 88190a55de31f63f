package galena.desk.writing;

import galena.build.predict.Response;

/** A response as JSON; the shape is {@code galena/schema/response.json}. */
public final class ResponseJson {
    private ResponseJson() {}

    public static String of(Response response) {
        return Json.document("response", json -> {
            json.text("source", response.source()).text("net", response.net());
            json.object("peak", () -> point(json, response.peak()));
            response.lower().ifPresent(f -> json.number("lower", f));
            response.upper().ifPresent(f -> json.number("upper", f));
            response.loadedQ().ifPresent(q -> json.number("loadedQ", q));
            json.each("points", response.points(), p -> point(json, p));
        });
    }

    private static void point(Json json, Response.Point p) {
        json.number("frequency", p.frequency()).number("decibels", p.decibels()).number("degrees", p.degrees());
    }
}
