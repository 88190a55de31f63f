package galena.desk.writing;

import galena.bench.capture.Understanding;
import galena.bench.capture.UnreadableCapture;
import galena.bench.measure.Figure;
import galena.bench.measure.Reading;
import galena.bench.measure.Report;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reports as JSON, all of them; the shape is {@code galena/schema/measurement.json}. */
public final class MeasurementJson {
    private static final double PER_CENT = 0.01;

    private MeasurementJson() {}

    /**
     * What became of one file.
     *
     * @param file as named
     * @param report empty when it is no capture
     * @param trouble why not
     */
    public record Outcome(String file, Optional<Report> report, Optional<UnreadableCapture> trouble) {}

    public static String of(List<Outcome> outcomes) {
        return Json.document(
                "measurement",
                json -> json.each("files", outcomes, o -> {
                    json.text("file", o.file());
                    o.report().ifPresent(r -> report(json, r));
                    o.trouble()
                            .ifPresent(t -> json.object("unreadable", () -> json.text("place", t.place())
                                    .text("cause", t.cause())
                                    .text("remedy", t.remedy())));
                }));
    }

    private static void report(Json json, Report report) {
        Understanding u = report.understanding();
        json.text("name", report.name()).text("verdict", report.verdict());
        json.object("understanding", () -> json.text("layout", u.layout())
                .text("encoding", u.encoding())
                .text("interval", u.intervalSource())
                .number("intervalError", u.intervalError())
                .number("read", (double) u.read())
                .number("skipped", (double) u.skipped())
                .number("heading", u.heading())
                .each("notes", u.notes(), n -> json.text("kind", word(n.kind())).text("sentence", n.sentence())));
        json.each("figures", report.figures(), f -> figure(json, f));
        json.each("findings", report.findings(), f -> json.text("kind", word(f.kind()))
                .text("sentence", f.sentence()));
    }

    private static void figure(Json json, Figure figure) {
        json.text("key", figure.key()).text("label", figure.label());
        boolean percent = figure.unit().equals("%");
        String unit = percent || figure.unit().isEmpty() ? "1" : figure.unit();
        double factor = percent ? PER_CENT : 1;
        if (figure.reading() instanceof Reading.Known known) {
            json.number("value", factor * known.estimate().value()).text("unit", unit);
            json.number("low", factor * known.estimate().low())
                    .number("high", factor * known.estimate().high());
        } else if (figure.reading() instanceof Reading.Below below) {
            json.number("below", factor * below.limit()).text("unit", unit);
        } else {
            json.text("missing", figure.label()).text("reason", ((Reading.Missing) figure.reading()).reason());
            return;
        }
        json.text("basis", "measured, 95 %").text("quantity", figure.quantity()).text("at", "");
        json.text("how", figure.how());
    }

    private static String word(Enum<?> kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
