package galena.desk.writing;

import galena.bench.reconcile.Reconciliation;
import galena.bench.reconcile.Reconciliation.Taken;
import java.util.Locale;

/** A reconciliation as JSON; the shape is {@code galena/schema/reconciliation.json}. */
public final class ReconcileJson {
    private ReconcileJson() {}

    public static String of(Reconciliation found) {
        return Json.document("reconciliation", json -> write(json, found));
    }

    private static void write(Json json, Reconciliation found) {
        json.text("build", found.build()).text("verdict", word(found.verdict()));
        json.texts("words", found.words());
        json.number("misfit", found.misfit());
        json.each("readings", found.readings(), t -> reading(json, t));
        json.texts("unused", found.unused());
        json.each("unknowns", found.unknowns(), u -> {
            json.figure("before", u.before()).figure("after", u.after());
            json.number("share", u.share()).text("standing", word(u.standing()));
        });
        json.texts("together", found.together());
        json.each("suspicions", found.suspicions(), s -> json.text("words", s.words())
                .number("logOdds", s.odds()));
        found.next()
                .ifPresent(n -> json.object("next", () -> {
                    json.text("words", n.words()).text("about", n.about());
                    json.figure("now", n.now()).number("expected", n.expected());
                }));
        json.truth("acceptable", found.calibration().isPresent());
    }

    private static void reading(Json json, Taken taken) {
        json.text("what", taken.reading().what().key());
        json.text("at", taken.reading().at().orElse(""));
        json.number("read", taken.reading().value().value());
        json.figure("before", taken.before()).figure("after", taken.after());
        json.number("errorBefore", taken.errorBefore()).number("errorAfter", taken.errorAfter());
        json.truth("wrong", taken.wrong());
    }

    /** "wrong-reading" */
    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
