package galena.desk.writing;

import galena.build.picture.Strip;
import galena.build.picture.TimePictures;
import galena.build.picture.Wave;
import java.util.Arrays;

/** Pictures of a test point, as JSON; the shape is {@code galena/schema/pictures.json}. */
public final class PictureJson {
    private PictureJson() {}

    public static String of(TimePictures pictures) {
        return Json.document("pictures", json -> {
            json.text("build", pictures.build()).text("point", pictures.point().name());
            pictures.point().probe().ifPresent(p -> json.text("probe", p.name()));
            pictures.startup().ifPresent(s -> json.object("startup", () -> strip(json, s)));
            pictures.startupTime().ifPresent(t -> json.number("startupTime", t));
            json.object("carrier", () -> wave(json, pictures.carrier()));
            json.number("tone", pictures.tone()).number("level", pictures.level());
            pictures.modulated().ifPresent(s -> json.object("modulated", () -> strip(json, s)));
            json.each("cycles", pictures.cycles(), w -> wave(json, w));
            json.text("without", pictures.without());
        });
    }

    private static void strip(Json json, Strip strip) {
        numbers(json, "time", strip.time());
        numbers(json, "low", strip.low());
        numbers(json, "high", strip.high());
    }

    private static void wave(Json json, Wave wave) {
        json.text("name", wave.name());
        numbers(json, "time", wave.time());
        numbers(json, "volts", wave.volts());
    }

    private static void numbers(Json json, String name, double[] values) {
        json.numbers(name, Arrays.stream(values).boxed().toList());
    }
}
