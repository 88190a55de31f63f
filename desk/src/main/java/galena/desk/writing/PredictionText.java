package galena.desk.writing;

import galena.build.figure.Figure;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Curve;
import galena.build.predict.Prediction.Judgement;
import galena.build.predict.Prediction.NoCurve;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Prediction.Outcome;
import galena.build.predict.Prediction.Silent;
import galena.build.predict.Prediction.Spectrum;
import galena.build.predict.Prediction.StartupFigures;
import galena.build.predict.StaticLimits;
import galena.build.quantity.Unit;
import galena.desk.console.Terminal;
import galena.desk.console.Terminal.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A prediction as a page for a terminal, in the order in which a builder would ask: verdict first, then what it rests on. */
public final class PredictionText {
    /** Contributions below this share of the largest are left out of lists; {@code --json} has all. */
    private static final double WORTH_NAMING = 0.05;

    /** An adjustment that moves the carrier less than this share of what the strongest one does is meant for something else. */
    private static final double STIR = 1e-3;

    private static final int MOST_NAMED = 6;
    private static final int HARMONICS_SHOWN = 5;

    private final Prediction prediction;
    private final Page page;

    private PredictionText(Prediction prediction, Terminal terminal) {
        this.prediction = prediction;
        page = new Page(terminal);
    }

    public static void print(Prediction prediction, Terminal terminal) {
        PredictionText text = new PredictionText(prediction, terminal);
        text.head();
        text.verdict();
        prediction.startup().ifPresent(text::startup);
        if (prediction.running() instanceof Oscillation oscillation) text.oscillation(oscillation);
        if (prediction.running() instanceof Silent silent) text.silent(silent);
        text.modulation();
        text.voltages();
        text.notes();
        text.page.print();
    }

    /** The head and the verdict alone. */
    public static void printSummary(Prediction prediction, Terminal terminal) {
        PredictionText text = new PredictionText(prediction, terminal);
        text.head();
        text.verdict();
        text.page.print();
    }

    private void head() {
        Prediction.Setting setting = prediction.setting();
        List<String> parts = new ArrayList<>();
        parts.add(setting.accuracy());
        parts.add(Math.round(setting.temperature()) + " °C");
        setting.supplyVoltage().ifPresent(v -> parts.add(Words.number(v, Unit.VOLT, 3)));
        page.title(prediction.name(), String.join(", ", parts));
        if (!setting.adjustments().isEmpty()) {
            page.line("Set: "
                    + setting.adjustments().entrySet().stream()
                            .map(e -> e.getKey() + " " + Words.percent(e.getValue()))
                            .collect(Collectors.joining(", ")));
        }
    }

    private void verdict() {
        if (prediction.judgements().isEmpty()) return;
        page.heading("Against the intent");
        Page.Table table = page.table().folding();
        for (Judgement j : prediction.judgements()) {
            String remark = j.remark().isEmpty() ? "" : "; " + j.remark();
            String found = "wanted " + j.wanted() + "; found " + Words.withInterval(j.found()) + remark;
            table.row(tone(j.outcome()), sign(j.outcome()), j.item(), found);
        }
        table.end();
    }

    private static Tone tone(Outcome outcome) {
        return switch (outcome) {
            case MEETS -> Tone.GOOD;
            case FAILS -> Tone.BAD;
            case MAY_FAIL, UNKNOWN -> Tone.WARNING;
        };
    }

    /** Short enough for a column; the full words stand in the JSON and in the manual. */
    private static String sign(Outcome outcome) {
        return switch (outcome) {
            case MEETS -> "meets";
            case FAILS -> "FAILS";
            case MAY_FAIL -> "may fail";
            case UNKNOWN -> "unknown";
        };
    }

    private void startup(StartupFigures startup) {
        page.heading("Start");
        Page.Table table = page.table().folding();
        String behaviour = startup.behaviour().isEmpty() ? "" : "; " + startup.behaviour();
        table.row("starts by itself", (startup.starts() ? "yes" : "no") + behaviour);
        table.row("margin", Words.withInterval(startup.margin()) + ", as extra loss across " + startup.site());
        if (startup.weakest() instanceof Figure.Known weakest) {
            table.row("worst case", Words.alone(weakest) + " with " + weakest.at());
        }
        table.row("time", Words.withInterval(startup.time()) + " from 1 µV");
        table.row("losses", shares(startup.lossShares()));
        table.end();
    }

    private static String shares(Map<String, Double> shares) {
        return shares.entrySet().stream()
                .filter(e -> e.getValue() > WORTH_NAMING / 2)
                .limit(MOST_NAMED)
                .map(e -> e.getKey() + " " + Words.percent(e.getValue()))
                .collect(Collectors.joining(", "));
    }

    private void silent(Silent silent) {
        page.heading("Carrier");
        page.line("None: " + silent.reason() + ".");
    }

    private void oscillation(Oscillation oscillation) {
        page.heading("Carrier");
        carrier(oscillation);
        page.heading("Harmonics, dB against the fundamental");
        spectra(oscillation);
        page.heading("Supply");
        supply(oscillation);
    }

    private void carrier(Oscillation oscillation) {
        Page.Table table = page.table().folding();
        table.row("frequency", Words.withInterval(oscillation.carrier()));
        table.row("steady", steady(oscillation));
        if (!oscillation.carrierCauses().isEmpty()) {
            double largest = Math.abs(oscillation.carrierCauses().get(0).hertz());
            String causes = oscillation.carrierCauses().stream()
                    .filter(c -> Math.abs(c.hertz()) > WORTH_NAMING * largest)
                    .limit(MOST_NAMED)
                    .map(c -> Words.number(Math.abs(c.hertz()), Unit.HERTZ, 2) + " by " + c.what())
                    .collect(Collectors.joining("; "));
            table.row("widened by", causes);
        }
        double steepest = oscillation.adjustments().stream()
                .mapToDouble(a -> Math.abs(a.hertzPerPercent()))
                .max()
                .orElse(0);
        for (Prediction.Adjustment a : oscillation.adjustments()) {
            if (Math.abs(a.hertzPerPercent()) < STIR * steepest) continue;
            table.row(
                    a.part() + " moves it",
                    Words.number(a.hertzPerPercent(), Unit.HERTZ, 3) + " per % of travel at "
                            + Words.percent(a.position()));
        }
        for (Prediction.Tank tank : oscillation.tanks()) {
            table.row(
                    "resonance",
                    Words.number(tank.frequency(), Unit.HERTZ, 4) + " in " + tank.part() + ", loaded Q "
                            + Words.number(tank.q(), Unit.NUMBER, 2));
        }
        table.end();
    }

    private static String steady(Oscillation oscillation) {
        return switch (oscillation.stability()) {
            case STABLE -> "yes, small disturbances die";
            case UNSTABLE -> "no: small disturbances grow, so it will not stay like this";
            case UNDECIDED -> "undecided: a disturbance neither clearly dies nor clearly grows";
        };
    }

    private void spectra(Oscillation oscillation) {
        Page.Table table = page.table();
        List<String> head = new ArrayList<>(List.of("", "peak"));
        for (int h = 2; h <= HARMONICS_SHOWN; h++) head.add(h + "f");
        table.row(head.toArray(String[]::new));
        for (Spectrum s : oscillation.spectra()) {
            List<String> cells = new ArrayList<>(List.of(s.quantity(), Words.alone(s.fundamental())));
            for (Figure f : s.harmonics()
                    .subList(0, Math.min(HARMONICS_SHOWN - 1, s.harmonics().size())))
                cells.add(f instanceof Figure.Known known ? Words.bare(known) : "–");
            table.row(cells.toArray(String[]::new));
        }
        table.end();
        oscillation.spectra().stream()
                .flatMap(s -> s.harmonics().stream().limit(HARMONICS_SHOWN - 1))
                .filter(Figure.Missing.class::isInstance)
                .map(f -> ((Figure.Missing) f).reason())
                .distinct()
                .forEach(reason -> page.line("– " + reason));
    }

    private void supply(Oscillation oscillation) {
        Page.Table table = page.table().folding();
        table.row("current", Words.withInterval(oscillation.supplyCurrent()));
        table.row("power drawn", Words.withInterval(oscillation.inputPower()));
        table.row("battery life", Words.withInterval(oscillation.batteryHours()));
        double most =
                oscillation.powers().values().stream().mapToDouble(w -> w).max().orElse(0);
        String where = oscillation.powers().entrySet().stream()
                .filter(e -> e.getValue() > WORTH_NAMING * most)
                .limit(MOST_NAMED)
                .map(e -> e.getKey() + " " + Words.number(e.getValue(), Unit.WATT, 2))
                .collect(Collectors.joining(", "));
        if (!where.isEmpty()) table.row("goes into", where);
        table.end();
    }

    private void modulation() {
        if (prediction.modulation() instanceof NoCurve none) {
            if (prediction.running() instanceof Oscillation) {
                page.heading("Modulation");
                page.line("None: " + none.reason() + ".");
            }
            return;
        }
        Curve curve = (Curve) prediction.modulation();
        page.heading("Modulation of " + curve.quantity() + " by " + Words.number(curve.level(), Unit.VOLT, 3)
                + " peak from " + curve.source() + " at 1 kHz");
        Page.Table table = page.table().folding();
        ModulationRows.tone(table, curve.tone());
        ModulationRows.response(table, curve.response());
        table.row(
                "deepest clean",
                Words.alone(curve.deepestClean()) + " below " + Words.percent(curve.cleanLimit())
                        + " distortion, by the static curve"
                        + with(curve.limits().cleanLevel()));
        limits(curve, table);
        table.end();
        page.line("Typical parts. Sweeps, other levels, what sets the response and what cures swing: galena modulate.");
    }

    private static void limits(Curve curve, Page.Table table) {
        StaticLimits limits = curve.limits();
        if (limits.audioForDepth() instanceof Figure.Known audio) {
            table.row("wanted depth", "with " + Words.alone(audio) + " of audio, peak");
        } else {
            table.row("wanted depth", limits.audioForDepth().text());
        }
        if (limits.bestBias() instanceof Figure.Known bias) {
            table.row(
                    "best bias",
                    Words.alone(bias) + " at " + bias.at() + " beside the audio; deepest clean then "
                            + Words.alone(limits.biasedDepth()) + with(limits.biasedLevel()));
        }
        for (Figure stop : List.of(limits.stopsBelow(), limits.stopsAbove())) {
            if (stop instanceof Figure.Known at) table.row("carrier stops", Words.alone(at) + ": " + at.quantity());
        }
    }

    private static String with(Figure audio) {
        return audio instanceof Figure.Known known ? ", with " + Words.alone(known) + " of audio" : "";
    }

    /** The same nets at rest and running: what a meter reads before and after the first carrier. */
    private void voltages() {
        page.heading("Voltages to expect against ground");
        Page.Table table = page.table();
        List<Figure> running = prediction.running() instanceof Oscillation o ? o.meanVoltages() : List.of();
        table.row(running.isEmpty() ? new String[] {"", "at rest"} : new String[] {"", "at rest", "oscillating"});
        for (Figure rest : prediction.rest().voltages()) {
            if (!(rest instanceof Figure.Known known)) continue;
            String mean = running.stream()
                    .filter(f -> f instanceof Figure.Known k && k.at().equals(known.at()))
                    .map(Words::withInterval)
                    .findFirst()
                    .orElse("");
            table.row(known.at(), Words.withInterval(known), mean);
        }
        table.end();
    }

    private void notes() {
        page.heading("Notes");
        page.line("Intervals hold 95 % of builds with parts within their tolerances, first order.");
        if (prediction.running() instanceof Oscillation o) {
            page.line("Solved to " + Words.power(o.errorFrequency()) + " of the frequency and "
                    + Words.number(o.errorHarmonics(), Unit.DECIBEL, 1)
                    + " in harmonics, by comparison with a mesh half as wide. Operating point: "
                    + prediction.rest().method() + ".");
        }
        for (String note : prediction.notes()) page.line(note);
        page.line("Whether you may radiate this, and how strongly, is for your regulator to say.");
    }
}
