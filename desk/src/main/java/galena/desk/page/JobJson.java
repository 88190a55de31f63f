package galena.desk.page;

import galena.desk.page.Jobs.Job;
import galena.desk.writing.Json;
import java.util.List;
import java.util.Locale;

/** Long work and its answer, as JSON; the shapes are {@code galena/schema/job.json} and {@code galena/schema/slip.json}. */
final class JobJson {
    private JobJson() {}

    static String of(Job job) {
        return Json.line("job", json -> fields(json, job));
    }

    static void fields(Json json, Job job) {
        json.number("id", (double) job.id()).text("work", job.kind()).text("digest", job.digest());
        json.text("state", job.state().name().toLowerCase(Locale.ROOT));
        json.number("share", job.share()).text("said", job.said());
        json.truth("answered", job.slip().isPresent());
    }

    static String slip(Job job, Slip slip) {
        return Json.line("slip", json -> {
            fields(json, job);
            json.text("title", slip.title()).text("lead", slip.lead());
            json.each("tables", slip.tables(), t -> {
                json.text("title", t.title()).texts("head", t.head());
                json.each("rows", t.rows(), row -> json.texts("cells", row));
            });
            json.each("drawings", slip.drawings(), d -> json.text("name", d.name())
                    .text("caption", d.caption()));
            json.texts("links", slip.links());
            json.texts("notes", List.copyOf(slip.notes()));
            json.text("build", slip.build().orElse(""));
            json.each("sounds", slip.sounds(), one -> json.text("name", one.name())
                    .text("caption", one.caption()));
            Strip.write(json, slip.strips());
        });
    }
}
