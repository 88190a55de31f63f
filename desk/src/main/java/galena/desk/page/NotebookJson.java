package galena.desk.page;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.LogEntry.What;
import galena.build.folder.PartEntry;
import galena.build.folder.Supply;
import galena.build.predict.Prediction;
import galena.build.quantity.Unit;
import galena.build.source.Edit;
import galena.build.source.Node;
import galena.build.source.Node.Scalar;
import galena.build.source.Problem;
import galena.build.wiring.CircuitOf;
import galena.desk.writing.Json;
import galena.desk.writing.Words;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The notebook but for its pictures, as JSON; the shape is {@code galena/schema/notebook.json}. */
final class NotebookJson {
    private static final int MOST_LINES = 60;

    private NotebookJson() {}

    /** What there is to show. */
    record View(
            long revision,
            BuildFolder folder,
            Laid laid,
            List<Problem> troubles,
            History history,
            List<Jobs.Job> jobs,
            Optional<Prediction> typical,
            Optional<Prediction> whole) {}

    static String of(View view) {
        Build build = view.folder().build();
        return Json.line("notebook", json -> {
            json.number("revision", (double) view.revision()).text("name", build.name());
            json.text(
                    "folder",
                    String.valueOf(
                            view.folder().folder().toAbsolutePath().normalize().getFileName()));
            json.text("digest", build.file().digest());
            problems(json, view.troubles());
            rows(json, "intent", build, "intent");
            supply(json, build);
            parts(json, build);
            json.each("points", build.points().values(), p -> json.text("name", p.name())
                    .text("at", p.at())
                    .text("probe", p.probe().map(probe -> probe.name()).orElse("")));
            json.object("laid", () -> laid(json, view.laid()));
            history(json, view.history());
            Steps steps = Steps.of(view.folder(), view.jobs(), view.whole().or(view::typical));
            json.each("steps", steps.all(), s -> json.text("name", s.name())
                    .text("question", s.question())
                    .text("mark", s.mark().name().toLowerCase(Locale.ROOT))
                    .text("words", s.words())
                    .texts("work", s.work()));
            json.text("next", steps.next()).text("nextStep", steps.nextStep());
            json.each("jobs", view.jobs(), job -> JobJson.fields(json, job));
            json.each("work", Arrays.asList(LongWork.values()), w -> json.text("word", w.word())
                    .text("question", w.question()));
            json.truth("calibrated", view.folder().calibration().isPresent());
            json.number("readings", view.folder().log().size());
            json.each("kinds", Arrays.asList(What.values()), w -> json.text("key", w.key())
                    .text("words", w.inWords())
                    .text("example", w.unit().examples()));
        });
    }

    static void problems(Json json, List<Problem> problems) {
        json.each("problems", problems, p -> json.text("place", p.place().toString())
                .text("path", p.path())
                .text("found", p.found())
                .text("rule", p.rule())
                .text("remedy", p.remedy().orElse("")));
    }

    static String refused(List<Problem> problems) {
        return Json.line("refused", json -> problems(json, problems));
    }

    static String conflict(Conflict conflict) {
        return Json.line("conflict", json -> {
            json.text("path", conflict.path());
            conflict.texts().seen().ifPresent(text -> json.text("seen", text));
            conflict.texts().theirs().ifPresent(text -> json.text("theirs", text));
            conflict.texts().mine().ifPresent(text -> json.text("mine", text));
        });
    }

    static String laid(long revision, Laid laid) {
        return Json.line("laid", json -> {
            json.number("revision", (double) revision);
            json.object("laid", () -> laid(json, laid));
        });
    }

    static String outside(List<String> changes) {
        return Json.line("outside", json -> json.texts("changes", changes));
    }

    private static void laid(Json json, Laid laid) {
        json.object("adjustments", () -> laid.adjustments().forEach(json::number));
        laid.temperature().ifPresent(t -> json.number("temperature", t));
        laid.supply().ifPresent(v -> json.number("supply", v));
    }

    /** Every single value below a key, with its path, its text and the comment beside it. */
    private static void rows(Json json, String name, Build build, String under) {
        Reasons reasons = new Reasons(build.file());
        List<Map.Entry<String, Node>> found = build.top().all().entrySet().stream()
                .filter(e -> e.getValue() instanceof Scalar && e.getKey().startsWith(under + "."))
                .toList();
        json.each(name, found, e -> json.text("path", e.getKey())
                .text(
                        "label",
                        e.getKey()
                                .substring(under.length() + 1)
                                .replace('.', ' ')
                                .replace('_', ' '))
                .text("text", ((Scalar) e.getValue()).text())
                .text("reason", reasons.beside(e.getValue().place()).orElse("")));
    }

    private static void supply(Json json, Build build) {
        if (build.supply().isEmpty()) return;
        Supply supply = build.supply().get();
        double volts = CircuitOf.state(supply).voltage();
        json.object("supply", () -> {
            String words = supply instanceof Supply.OfBattery b
                    ? b.type()
                    : ((Supply.OfVoltage) supply).voltage().text();
            json.text("words", words).number("volts", volts).text("voltsWords", Words.number(volts, Unit.VOLT, 3));
            rows(json, "rows", build, "supply");
        });
    }

    private static void parts(Json json, Build build) {
        Reasons reasons = new Reasons(build.file());
        json.each("parts", build.parts().values(), part -> {
            json.text("name", part.name()).text("noun", part.kind().noun()).text("label", part.label());
            json.text("shown", shown(part)).truth("adjustable", part.isAdjustable());
            json.text("reason", reasons.beside(part.place()).orElse(""));
            part.position().ifPresent(position -> {
                json.number("position", position).text("positionWords", Words.percent(position));
                json.text("setPath", part.path() + ".set");
                json.text("setText", text(build, part.path() + ".set").orElse(""));
                json.truth("setWritten", text(build, part.path() + ".set").isPresent());
            });
        });
    }

    /** What is written beside the symbol. */
    private static String shown(PartEntry part) {
        return part.type().isPresent() && part.type().get().length() > 0
                ? part.type().get()
                : part.label();
    }

    static Optional<String> text(Build build, String path) {
        return build.top().find(path).filter(Scalar.class::isInstance).map(n -> ((Scalar) n).text());
    }

    private static void history(Json json, History history) {
        json.text("undo", history.undoing().map(NotebookJson::words).orElse(""));
        json.text("redo", history.redoing().map(NotebookJson::words).orElse(""));
        json.each("history", history.lines(MOST_LINES), line -> json.text("when", line.when())
                .text("how", line.how())
                .text("path", line.edit().path())
                .text("before", line.edit().before().orElse(""))
                .text("after", line.edit().after().orElse("")));
    }

    private static String words(Edit edit) {
        return edit.path() + ": " + edit.before().orElse("nothing") + " → "
                + edit.after().orElse("nothing");
    }
}
