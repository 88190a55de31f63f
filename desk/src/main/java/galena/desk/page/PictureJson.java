package galena.desk.page;

import galena.build.figure.Figure;
import galena.build.folder.Intent;
import galena.build.predict.Live;
import galena.build.predict.Moment;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Curve;
import galena.build.predict.Prediction.Judgement;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Prediction.Spectrum;
import galena.build.quantity.Unit;
import galena.desk.writing.Json;
import galena.desk.writing.Words;
import galena.engine.steady.Accuracy;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What the pictures show, as JSON; the shape is {@code galena/schema/picture.json}. Words are printed here, for every reader alike. */
final class PictureJson {
    private static final int ENVELOPE = 96;

    /** Below it, dB under the carrier, no harmonic is given. */
    private static final double FLOOR = Accuracy.CERTIFIED.floor();

    private static final int PEAK_FIGURES = 3;

    private PictureJson() {}

    /**
     * @param revision of the notebook that the picture was asked for
     * @param intent of the build
     * @param milliseconds that the carrier took
     * @param stale why the picture is not that of the settings asked for; empty when it is
     * @param whole the prediction with intervals, when it is there
     */
    static String of(
            long revision,
            Intent intent,
            Moment moment,
            double milliseconds,
            Optional<String> stale,
            Optional<Prediction> whole) {
        return Json.line("picture", json -> {
            json.number("revision", (double) revision).text("state", stale.isPresent() ? "stale" : "true");
            json.text("reason", stale.orElse(""))
                    .text("way", moment.way().name().toLowerCase(Locale.ROOT))
                    .number("milliseconds", milliseconds);
            Prediction shown = whole.orElse(moment.prediction());
            boolean complete = whole.isPresent() || moment.way() == Live.Way.WHOLE;
            json.truth("complete", complete);
            setting(json, moment.prediction());
            running(json, moment, shown, complete);
            intent.harmonics().ifPresent(limit -> json.number("limit", limit.value()));
            json.number("floor", FLOOR);
            intent.carrier()
                    .ifPresent(wanted -> json.number("wanted", wanted.value()).text("wantedWords", wanted.text()));
            curve(json, moment);
            judgements(json, shown.judgements());
            json.texts("notes", complete ? shown.notes() : List.of());
        });
    }

    private static void setting(Json json, Prediction prediction) {
        Prediction.Setting setting = prediction.setting();
        json.object("setting", () -> {
            json.number("temperature", setting.temperature());
            json.text("temperatureWords", number(setting.temperature()) + " °C");
            setting.supplyVoltage()
                    .ifPresent(v -> json.number("supply", v).text("supplyWords", Words.number(v, Unit.VOLT, 3)));
            json.object("adjustments", () -> setting.adjustments().forEach(json::number));
        });
    }

    private static void running(Json json, Moment moment, Prediction shown, boolean complete) {
        if (!(shown.running() instanceof Oscillation o)) {
            json.truth("oscillates", false).text("silence", ((Prediction.Silent) shown.running()).reason());
            return;
        }
        json.truth("oscillates", true).text("silence", "");
        Figure.Known exact = moment.prediction().running() instanceof Oscillation m ? m.carrier() : o.carrier();
        json.object("carrier", () -> {
            json.number("value", exact.value()).text("words", Words.number(exact.value(), Unit.HERTZ, 6));
            json.text("window", complete ? Words.withInterval(o.carrier()) : "");
        });
        json.object("facts", () -> {
            shown.startup().ifPresent(s -> json.text("start margin", words(s.margin(), complete)));
            json.text("supply current", words(o.supplyCurrent(), complete));
            json.text("battery life", words(o.batteryHours(), true));
        });
        output(json, moment, o, complete);
        json.each("traces", moment.traces(), t -> {
            double peak = t.samples().stream().mapToDouble(Math::abs).max().orElse(0);
            json.text("part", t.part()).text("quantity", t.quantity());
            json.number("peak", peak).text("peakWords", Words.number(peak, t.unit(), PEAK_FIGURES));
            json.numbers("samples", t.samples());
        });
    }

    private static String words(Figure figure, boolean complete) {
        if (complete || !(figure instanceof Figure.Known known)) return Words.withInterval(figure);
        return Words.number(known.value(), known.unit(), PEAK_FIGURES);
    }

    private static void output(Json json, Moment moment, Oscillation o, boolean complete) {
        Optional<Spectrum> spectrum = moment.output();
        if (spectrum.isEmpty()) {
            json.text("output", "");
            return;
        }
        Spectrum live = spectrum.get();
        List<Figure> wide = o.spectra().stream()
                .filter(s -> s.quantity().equals(live.quantity()))
                .findFirst()
                .map(Spectrum::harmonics)
                .orElse(live.harmonics());
        json.text("output", live.quantity());
        json.number("outputPeak", live.fundamental().value());
        json.text(
                "outputWords",
                Words.number(live.fundamental().value(), live.fundamental().unit(), PEAK_FIGURES));
        int[] n = {1};
        json.each("harmonics", complete ? wide : live.harmonics(), figure -> {
            n[0]++;
            json.number("number", n[0]).text("words", Words.withInterval(figure));
            if (figure instanceof Figure.Known known)
                json.number("level", known.value()).number("low", known.low()).number("high", known.high());
        });
    }

    private static void curve(Json json, Moment moment) {
        json.object("modulation", () -> {
            if (moment.prediction().modulation() instanceof Prediction.NoCurve none) {
                json.text("state", moment.curveWasAsked() ? "none" : "pending").text("reason", none.reason());
                return;
            }
            Curve c = (Curve) moment.prediction().modulation();
            json.text("state", "curve").text("quantity", c.quantity()).text("source", c.source());
            json.number("level", c.level()).text("levelWords", Words.number(c.level(), Unit.VOLT, PEAK_FIGURES));
            json.numbers(
                    "audio", c.curve().stream().map(Prediction.Point::audio).toList());
            json.numbers(
                    "amplitude",
                    c.curve().stream().map(Prediction.Point::amplitude).toList());
            json.numbers("envelope", c.envelope(ENVELOPE));
            json.text("positivePeak", Words.alone(c.positivePeak()))
                    .text("negativePeak", Words.alone(c.negativePeak()));
            json.text("distortion", Words.alone(c.distortion())).text("swing", Words.alone(c.swing()));
            json.text("deepestClean", Words.alone(c.deepestClean()));
        });
    }

    private static void judgements(Json json, List<Judgement> judgements) {
        json.each("judgements", judgements, j -> json.text("item", j.item())
                .text("wanted", j.wanted().replace('-', '−'))
                .text("found", Words.withInterval(j.found()))
                .text("outcome", j.outcome().name().toLowerCase(Locale.ROOT))
                .text("words", j.outcome().toString())
                .text("remark", j.remark()));
    }

    private static String number(double celsius) {
        String digits = String.format(Locale.ROOT, "%.1f", celsius).replaceFirst("\\.0$", "");
        return digits.replace('-', '−');
    }
}
