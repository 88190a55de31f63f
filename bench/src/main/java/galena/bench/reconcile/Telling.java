package galena.bench.reconcile;

import galena.bench.reconcile.Reconciliation.Suspicion;
import galena.bench.reconcile.Reconciliation.Taken;
import galena.bench.reconcile.Reconciliation.Verdict;
import galena.build.fault.Fault;
import galena.build.figure.Figure;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.signal.Estimate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Puts what was found into words and rows. */
final class Telling {
    private static final double CERTAIN = 1e6;

    private final List<Observation> observed;
    private final Fit.Point before;
    private final Weighing.Outcome outcome;
    private final Explanations explanations;
    private final Fit fit;

    Telling(List<Observation> observed, Fit.Point before, Weighing.Outcome outcome, Explanations explanations) {
        this.observed = observed;
        this.before = before;
        this.outcome = outcome;
        this.explanations = explanations;
        fit = outcome.fits().get(0);
    }

    List<String> words(Verdict verdict, Optional<String> parting, Optional<Reconciliation.Next> next) {
        List<String> words = new ArrayList<>();
        for (Suspicion s : suspicions()) words.add(s.words() + " " + odds(s.odds()));
        parting.ifPresent(words::add);
        switch (verdict) {
            case UNEXPLAINED ->
                words.add("Nothing that was tried explains these readings: no tolerance, device or stray, no single"
                        + " wrong part and no single wrong reading. What is given below is the best there is, and is not to be"
                        + " trusted.");
            case TOO_FEW ->
                words.add(
                        "These readings, " + observed.size()
                                + " of them, are too few: they agree with the prediction or not, but say little of any single unknown.");
            case WRONG_PART ->
                words.add("What is given below holds for the build with that fault in it. Mend it, read again,"
                        + " then reconcile again.");
            default -> words.addAll(new Shares(before, fit, explanations).words(observed));
        }
        words.add(fits());
        double[] shares = Modes.shares(outcome.fits());
        if (shares.length > 1 && 1 - shares[0] > 0.05)
            words.add(String.format(
                    Locale.ROOT,
                    "There is another way to meet these readings, as on the other side of a resonance; it has %.0f %% of the"
                            + " probability and is counted in the intervals.",
                    100 * (1 - shares[0])));
        next.ifPresent(n -> words.add(next(n)));
        return words.stream().map(Telling::typeset).toList();
    }

    private String fits() {
        int count = fit.observed().size();
        return String.format(
                Locale.ROOT,
                "Of %d readings, %d lie within two standard deviations of what is fitted; the sum of squares is %.0f, and about %d is"
                        + " to be expected.",
                count,
                within(),
                fit.misfit(),
                count);
    }

    private long within() {
        long within = 0;
        for (int i = 0; i < observed.size(); i++) if (Math.abs(errorAfter(i)) <= 2) within++;
        return within;
    }

    private double errorAfter(int i) {
        return (observed.get(i).value() - fit.values()[i]) / observed.get(i).sigma();
    }

    private static String next(Reconciliation.Next n) {
        return "The next reading that would tell most is " + n.words() + ": it should narrow " + n.about() + " from "
                + plusMinus(n.now().value(), n.now().halfWidth(), n.now().unit()) + " to ± "
                + Engineering.print(n.expected(), n.now().unit(), 2) + ".";
    }

    private static String odds(double logarithm) {
        if (logarithm >= Math.log(CERTAIN)) return "(More than a million to one against nothing being wrong.)";
        return String.format(Locale.ROOT, "(%.0f to one against nothing being wrong.)", Math.exp(logarithm));
    }

    List<Suspicion> suspicions() {
        List<Suspicion> all = new ArrayList<>();
        List<String> names = outcome.faults().stream().map(Fault::words).toList();
        if (names.isEmpty()) {
            for (Weighing.Wrong wrong : outcome.wrong()) all.add(new Suspicion(wrong(wrong), outcome.gain() / 2));
            return all;
        }
        String which = names.size() == 1
                ? names.get(0) + " explains the readings; tolerances and strays do not."
                : "it is one of these, which these readings can't tell apart, the likeliest first: "
                        + String.join("; ", names)
                        + ". Tolerances and strays don't explain the readings.";
        List<String> misread = outcome.wrong().stream()
                .map(w -> named(observed.get(w.index())))
                .toList();
        String instead = misread.isEmpty() ? "" : " Or no part is wrong, and misread was " + list(misread) + ".";
        all.add(new Suspicion("A part is wrong: " + which + instead, outcome.gain() / 2));
        return all;
    }

    private String wrong(Weighing.Wrong wrong) {
        Observation o = observed.get(wrong.index());
        String read = "A reading does not fit the others: " + named(o) + " was read as "
                + o.entry().value().text() + ", where the others say " + shown(o, fit.values()[wrong.index()]) + ".";
        return wrong.slip()
                .map(slip -> read + " Probably " + slip.words() + ".")
                .orElse(read + " It was left out.");
    }

    static String named(Observation o) {
        return "the " + o.entry().what().inWords()
                + o.entry().at().map(at -> " at " + at).orElse("");
    }

    private static String shown(Observation o, double modelled) {
        return Engineering.print(o.shown(modelled), o.entry().what().unit(), 4);
    }

    /** Rows in the order of the log. */
    List<Taken> readings(List<LogEntry> log) {
        List<Taken> rows = new ArrayList<>();
        for (int i = 0; i < observed.size(); i++) rows.add(row(i));
        rows.sort(Comparator.comparingInt(r -> log.indexOf(r.reading())));
        return rows;
    }

    private Taken row(int i) {
        Observation o = observed.get(i);
        double prior = Math.sqrt(Fit.dot(before.slopes()[i], before.slopes()[i]));
        double posterior = Math.sqrt(
                Math.max(0, Fit.dot(fit.slopes()[i], explanations.left().operate(fit.slopes()[i]))));
        int index = i;
        return new Taken(
                o.entry(),
                figure(o, before.readings().values()[i], prior, "predicted, parts within tolerance, 95 %"),
                figure(o, fit.values()[i], posterior, "fitted, 95 %"),
                (o.value() - before.readings().values()[i]) / Math.hypot(prior, o.sigma()),
                errorAfter(i),
                outcome.faults().isEmpty() && outcome.wrong().stream().anyMatch(w -> w.index() == index));
    }

    private static Figure.Known figure(Observation o, double modelled, double deviation, String basis) {
        double half = Estimate.NORMAL_95 * deviation;
        What what = o.entry().what();
        return new Figure.Known(
                o.shown(modelled),
                what.unit(),
                o.shown(modelled - half),
                o.shown(modelled + half),
                basis,
                what.inWords(),
                o.entry().at().orElse(""));
    }

    /** "103.1 µH ± 1.9 µH" */
    static String plusMinus(double value, double half, Unit unit) {
        return Engineering.within(value, value - half, value + half, unit) + " ± " + Engineering.print(half, unit, 2);
    }

    /** "a, b and c" */
    static String list(List<String> names) {
        if (names.size() == 1) return names.get(0);
        return String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.get(names.size() - 1);
    }

    /** With the sign that prints as a minus. */
    static String typeset(String words) {
        return words.replaceAll("(?<![\\w)])-(?=\\d)", "−");
    }
}
