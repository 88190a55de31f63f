package galena.desk.page;

import galena.bench.log.Beside;
import galena.bench.reconcile.Reconcile;
import galena.bench.reconcile.Reconciliation;
import galena.build.folder.BuildFolder;
import galena.build.folder.Layout;
import galena.build.folder.Overlay;
import galena.build.guard.Guard;
import galena.build.guard.GuardReport;
import galena.build.predict.Coverage;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.spread.Conditions;
import galena.build.spread.Drawn;
import galena.build.spread.Spread;
import galena.build.spread.SpreadReport;
import galena.desk.writing.ReconcileText;
import galena.desk.writing.Words;
import galena.engine.steady.Accuracy;
import galena.packet.Packet;
import galena.packet.chart.ChartSvg;
import galena.packet.chart.RankingSvg;
import galena.packet.coverage.CoverageChart;
import galena.packet.guard.SensitivityRanking;
import galena.packet.spread.SpreadChart;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The long questions that the page can ask, each by its name, and their answers as slips. A step without its question is not shown. */
enum LongWork {
    PROPOSE("propose", "a build that meets the intent") {
        @Override
        Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress) throws Exception {
            return Proposed.of(folder, asked.getOrDefault("from", Proposed.OWN), progress);
        }
    },
    GUARD("guard", "what moves the carrier") {
        @Override
        Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress) throws Exception {
            return guard(Guard.of(folder, overlay, Accuracy.LIVE, progress));
        }
    },
    SPREAD("spread", "how many copies meet the intent") {
        @Override
        Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress) throws Exception {
            return spread(folder, Spread.of(folder, overlay, Conditions.FULL, COPIES, SEED, progress));
        }
    },
    ALIGN("align", "what each adjustment reaches") {
        @Override
        Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress) throws Exception {
            return align(folder, overlay, progress);
        }
    },
    COMPARE("compare", "readings beside the prediction") {
        @Override
        Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress) throws Exception {
            Prediction prediction = Predict.of(folder, overlay, Accuracy.LIVE, progress);
            return compare(Beside.of(folder, prediction, progress));
        }
    },
    RECONCILE("reconcile", "what explains the readings") {
        @Override
        Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress) throws Exception {
            return reconciled(Reconcile.of(folder, today(), progress));
        }
    },
    ACCEPT("accept", "accept what was found") {
        @Override
        Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress) throws Exception {
            Reconciliation found = Reconcile.of(folder, today(), progress);
            if (found.calibration().isEmpty())
                return accepted("Nothing is accepted: the readings are not explained by a sound build.");
            List<String> remarks = new ArrayList<>();
            remarks.add("Accepted on the page: what the readings of bench/log.yaml say of the build's unknowns.");
            remarks.addAll(ReconcileText.lines(found));
            folder.accept(found.calibration().get(), remarks);
            return accepted("Accepted: every prediction now rests on calibration.yaml, which may be taken away again.");
        }
    },
    LISTEN("listen", "how a set receives it") {
        @Override
        Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress) throws Exception {
            return Heard.of(folder, overlay, asked, progress);
        }
    },
    PACKET("packet", "write the packet") {
        @Override
        Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress) throws Exception {
            return packet(Packet.write(folder, Layout.PACKET.in(folder.folder()), progress));
        }
    };

    private static final int COPIES = 400;
    private static final long SEED = 1;
    private static final int STEPS = 20;
    private static final int MOST_ROWS = 12;

    private final String word;
    private final String question;

    LongWork(String word, String question) {
        this.word = word;
        this.question = question;
    }

    String word() {
        return word;
    }

    String question() {
        return question;
    }

    static Optional<LongWork> named(String word) {
        for (LongWork one : values()) if (one.word.equals(word)) return Optional.of(one);
        return Optional.empty();
    }

    /** @param asked what the page adds to the question, by name; each is checked where it is used */
    abstract Slip run(BuildFolder folder, Overlay overlay, Map<String, String> asked, Progress progress)
            throws Exception;

    private static Slip guard(GuardReport report) {
        List<List<String>> rows = new ArrayList<>();
        report.parts().stream()
                .limit(MOST_ROWS)
                .forEach(p -> rows.add(List.of(
                        p.value(),
                        signed(p.perPercent().carrier()),
                        decibels(p.perPercent().retrimmed().output()),
                        decibels(p.perPercent().retrimmed().harmonic(report.strongest())),
                        p.perPercent()
                                .retrimmed()
                                .depth()
                                .map(d -> percentPoints(d))
                                .orElse("–"))));
        Slip.Table parts = new Slip.Table(
                "One percent of a value, the carrier then trimmed back",
                List.of("value", "carrier", "output", report.strongest() + "f", "depth"),
                rows);
        List<List<String>> probes = report.points().stream()
                .map(p -> List.of(
                        p.name(), p.probe(), p.hertz().map(LongWork::signed).orElse("stops it")))
                .toList();
        Slip.Table touched = new Slip.Table("The build's own probes", List.of("point", "probe", "carrier"), probes);
        List<Slip.Table> tables = probes.isEmpty() ? List.of(parts) : List.of(parts, touched);
        List<String> advice = report.advice();
        String ranking = RankingSvg.draw(SensitivityRanking.of(report, 14));
        return new Slip(
                "Guard: what spoils it",
                advice.isEmpty() ? "Nothing stands out." : advice.get(0),
                tables,
                List.of(new Slip.Drawing("guard", "What moves the carrier most.", ranking)),
                List.of(),
                advice.subList(Math.min(1, advice.size()), advice.size()));
    }

    private static Slip spread(BuildFolder folder, SpreadReport report) {
        List<List<String>> windows = new ArrayList<>();
        report.windows().forEach((what, window) -> windows.add(List.of(what.toString(), Words.withInterval(window))));
        List<List<String>> failures = new ArrayList<>();
        report.failures().forEach((why, count) -> failures.add(List.of(why, count + " of " + report.count())));
        List<List<String>> tighten = report.tighten().stream()
                .limit(MOST_ROWS)
                .map(t -> List.of(t.what(), Words.percent(t.yield())))
                .toList();
        List<Slip.Table> tables = new ArrayList<>();
        tables.add(new Slip.Table("Where 95 % of copies lie", List.of("figure", "median and limits"), windows));
        if (!failures.isEmpty()) tables.add(new Slip.Table("What fails", List.of("why", "copies"), failures));
        if (!tighten.isEmpty())
            tables.add(
                    new Slip.Table("Halving one tolerance would bring the yield to", List.of("of", "yield"), tighten));
        List<Slip.Drawing> drawings = new ArrayList<>();
        for (Drawn.Quantity quantity : Drawn.Quantity.values()) {
            if (drawings.size() == 3 || !SpreadChart.canShow(report, quantity)) continue;
            String svg = ChartSvg.draw(
                    SpreadChart.of(report, quantity, folder.build().intent()));
            drawings.add(new Slip.Drawing(SpreadChart.fileName(quantity), quantity + " over the copies.", svg));
        }
        String lead =
                Words.withInterval(report.yield()) + " of copies meet the intent, over tolerances, devices, −10 to"
                        + " 50 °C and the battery from fresh to flat.";
        return new Slip(
                "Spread: " + report.count() + " copies",
                lead,
                tables,
                drawings,
                List.of(),
                List.of("Drawn with seed " + report.seed() + ", so that the same copies can be called back."));
    }

    private static Slip align(BuildFolder folder, Overlay overlay, Progress progress) throws Exception {
        Optional<Quantity> wanted = folder.build().intent().carrier();
        List<List<String>> rows = new ArrayList<>();
        List<Slip.Drawing> drawings = new ArrayList<>();
        List<String> names = folder.build().adjustments();
        double most = 0;
        String lead = names.isEmpty() ? "Nothing in this build can be adjusted." : "No adjustment moves the carrier.";
        for (String name : names) {
            progress.at((double) rows.size() / names.size(), "turning " + name);
            Coverage swept = Coverage.sweep(folder, overlay, name, STEPS, Accuracy.LIVE, progress);
            if (swept.points().isEmpty()) {
                rows.add(List.of(name, "no oscillation", "–"));
                continue;
            }
            double span = swept.highest() - swept.lowest();
            String range =
                    Words.number(swept.lowest(), Unit.HERTZ, 5) + " to " + Words.number(swept.highest(), Unit.HERTZ, 5);
            rows.add(List.of(name, range, span < 1 ? "less than 1 Hz" : Words.number(span, Unit.HERTZ, 3)));
            if (span <= most) continue;
            most = span;
            drawings.clear();
            drawings.add(new Slip.Drawing(
                    "cover-" + name,
                    "The carrier against " + name + ".",
                    ChartSvg.draw(CoverageChart.of(swept, wanted))));
            lead = name + " sets the carrier: it covers " + range
                    + wanted.map(w -> reached(swept, w)).orElse(".");
        }
        return new Slip(
                "Align: what each adjustment reaches",
                lead,
                List.of(new Slip.Table(
                        "From stop to stop, the others as set", List.of("adjustment", "carrier", "span"), rows)),
                drawings,
                List.of(),
                List.of("The ordered alignment sheet, with the readings to expect at each step, is in the packet."));
    }

    private static String reached(Coverage swept, Quantity wanted) {
        List<Coverage.Point> points = swept.points();
        for (int k = 1; k < points.size(); k++) {
            Coverage.Point a = points.get(k - 1), b = points.get(k);
            if ((a.frequency() - wanted.value()) * (b.frequency() - wanted.value()) > 0) continue;
            double share = (wanted.value() - a.frequency()) / (b.frequency() - a.frequency());
            double position = a.position() + share * (b.position() - a.position());
            return "; " + wanted.text() + " lies near " + Words.percent(position) + " of the travel.";
        }
        return "; " + wanted.text() + " lies outside.";
    }

    private static Slip compare(List<Beside> readings) {
        List<Strip> strips = readings.stream()
                .map(b -> new Strip(b.reading(), b.predicted(), b.agrees()))
                .toList();
        long judged = readings.stream().filter(b -> b.agrees().isPresent()).count();
        long fit = readings.stream().filter(b -> b.agrees().orElse(false)).count();
        String lead = readings.isEmpty()
                ? "The bench log is empty."
                : judged == 0
                        ? "No reading can be judged: nothing is predicted of those that stand in the log."
                        : fit + " of " + judged + " readings that can be judged fit the prediction.";
        return new Slip(
                        "Measured beside predicted",
                        lead,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of("Each reading is predicted under the circumstances noted with it."))
                .drawing(strips);
    }

    private static String today() {
        return LocalDate.now(ZoneId.systemDefault()).toString();
    }

    private static Slip reconciled(Reconciliation found) {
        List<List<String>> unknowns = found.unknowns().stream()
                .filter(left -> left.standing() != Reconciliation.Standing.AS_BEFORE)
                .map(left -> List.of(
                        left.after().quantity(), Words.withInterval(left.before()), Words.withInterval(left.after())))
                .toList();
        List<List<String>> readings = found.readings().stream()
                .map(taken -> List.of(
                        taken.reading().what().inWords(),
                        taken.reading().at().orElse("–"),
                        Strip.measured(taken.reading()),
                        Words.withInterval(taken.before()),
                        Words.alone(taken.after()),
                        taken.wrong() ? "thought wrong" : ""))
                .toList();
        List<Slip.Table> tables = new ArrayList<>();
        if (!unknowns.isEmpty())
            tables.add(new Slip.Table("What was learnt", List.of("of", "before", "now"), unknowns));
        if (!readings.isEmpty())
            tables.add(new Slip.Table(
                    "The readings, before and after",
                    List.of("reading", "at", "measured", "predicted before", "after", ""),
                    readings));
        List<String> notes = new ArrayList<>(found.words()
                .subList(Math.min(1, found.words().size()), found.words().size()));
        found.suspicions().forEach(s -> notes.add(s.words()));
        notes.addAll(found.together());
        found.next().ifPresent(next -> notes.add("Worth reading next: " + next.words()));
        notes.addAll(found.unused());
        String lead = found.words().isEmpty()
                ? "The readings say too little."
                : found.words().get(0);
        return new Slip("Reconcile: why it differs", lead, tables, List.of(), List.of(), notes);
    }

    private static Slip accepted(String lead) {
        return new Slip("Reconcile: accepted or not", lead, List.of(), List.of(), List.of(), List.of());
    }

    private static Slip packet(Packet packet) {
        List<String> names =
                packet.files().stream().map(f -> f.getFileName().toString()).toList();
        String silent = packet.oscillates()
                ? ""
                : " It does not oscillate as it stands: " + packet.reason()
                        + ". The packet holds what can be said all the same.";
        return new Slip(
                "Publish: the packet",
                "The packet is written: " + names.size() + " files in the folder packet." + silent,
                List.of(),
                List.of(),
                names,
                List.of("Whether you may radiate this, and how strongly, is for your regulator to say."));
    }

    private static String signed(double hertz) {
        if (Math.abs(hertz) < 1e-4) return "none";
        return (hertz < 0 ? "−" : "+") + Words.number(Math.abs(hertz), Unit.HERTZ, 3);
    }

    private static String decibels(double value) {
        return sign(String.format(Locale.ROOT, "%+.3f dB", value));
    }

    private static String percentPoints(double share) {
        return sign(String.format(Locale.ROOT, "%+.2f %%", 100 * share));
    }

    private static String sign(String printed) {
        return printed.replaceFirst("^[-+](0\\.0+ )", "$1").replace('-', '−');
    }
}
