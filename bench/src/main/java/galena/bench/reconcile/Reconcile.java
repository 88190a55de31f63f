package galena.bench.reconcile;

import galena.bench.reconcile.Reconciliation.Suspicion;
import galena.bench.reconcile.Reconciliation.Verdict;
import galena.build.fault.Faults;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Calibration;
import galena.build.folder.LogEntry;
import galena.build.folder.Overlay;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.readings.Asked;
import galena.build.readings.ReadingModel;
import galena.build.readings.Situation;
import galena.build.source.BadInputException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reconciles a build with its bench log. The main method reads in the order of the report. */
public final class Reconcile {
    private static final long SEED = 1968;

    /** Of its interval: where no unknown is left with so little, the readings are too few. */
    private static final double TELLS = 0.4;

    private final BuildFolder folder;
    private final Build build;
    private final String day;
    private final Progress progress;

    private Reconcile(BuildFolder folder, String day, Progress progress) {
        this.folder = folder;
        this.build = folder.build();
        this.day = day;
        this.progress = progress;
    }

    /**
     * @param folder with its log; an accepted calibration is not looked at
     * @param day ISO 8601, on which a calibration would be accepted
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws Running.NotRunning when the build as drawn does not oscillate, or not under one of the circumstances
     */
    public static Reconciliation of(BuildFolder folder, String day, Progress progress)
            throws BadInputException, NoOperatingPoint, Running.NotRunning {
        return new Reconcile(folder, day, progress).reconciled();
    }

    private Reconciliation reconciled() throws BadInputException, NoOperatingPoint, Running.NotRunning {
        List<String> unused = new ArrayList<>();
        List<LogEntry> entries = usable(unused);
        if (entries.isEmpty()) return nothing(unused);
        List<Asked> asked = new ArrayList<>();
        for (LogEntry entry : entries) asked.add(Asked.of(build, entry));
        List<Candidate> candidates = Candidate.of(build, asked);
        candidates.forEach(c -> asked.add(c.asked()));
        progress.at(0.05, "steady states");
        ReadingModel model = ReadingModel.of(build, asked, progress);
        List<Observation> observed = new ArrayList<>();
        for (int k = 0; k < entries.size(); k++)
            observed.add(Observation.of(entries.get(k), model.asked().get(k)));
        progress.at(0.2, "fit");
        Weighing.Outcome outcome = new Weighing(
                        new Lineup(model, Faults.of(build, Overlay.NONE), observed.size()), observed)
                .outcome()
                .orElseThrow(() -> new Running.NotRunning(
                        "the build as drawn does not oscillate under the circumstances of one of the readings"));
        progress.at(0.7, "what is left open");
        return report(model, observed, outcome, candidates, unused);
    }

    /** In runs of one circumstance each; the order within them is the log's. */
    private List<LogEntry> usable(List<String> unused) {
        Map<Situation, List<LogEntry>> runs = new LinkedHashMap<>();
        for (LogEntry entry : folder.log()) {
            Asked asked = Asked.of(build, entry);
            if (Observation.isUsable(entry, asked))
                runs.computeIfAbsent(asked.situation(), s -> new ArrayList<>()).add(entry);
            else unused.add(entry.what().inWords() + " " + entry.value().text() + ": " + why(asked));
        }
        return runs.values().stream().flatMap(List::stream).toList();
    }

    private static String why(Asked asked) {
        return switch (asked.what()) {
            case POSITIVE_PEAK, NEGATIVE_PEAK, DISTORTION, SWING -> "modulation is not fitted";
            default ->
                asked.situation().point().isEmpty()
                        ? "the reading names no test point"
                        : "a reading of this kind is above zero";
        };
    }

    private Reconciliation nothing(List<String> unused) {
        String words = folder.log().isEmpty()
                ? "The bench log holds no readings yet: there is nothing to reconcile. Begin with the carrier, the supply current "
                        + "and the amplitude at a test point."
                : "None of the readings in the bench log can be held against the unmodulated carrier's prediction.";
        return new Reconciliation(
                build.name(),
                Verdict.TOO_FEW,
                List.of(words),
                List.of(),
                unused,
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                0,
                Optional.empty());
    }

    private Reconciliation report(
            ReadingModel model,
            List<Observation> observed,
            Weighing.Outcome outcome,
            List<Candidate> candidates,
            List<String> unused)
            throws BadInputException, NoOperatingPoint, Running.NotRunning {
        Fit fit = outcome.fits().get(0);
        Fit.Point before = Fit.point(model, new double[model.latents().size()], observed.size())
                .orElseThrow();
        Explanations explanations = new Explanations(outcome.model(), outcome.fits(), SEED);
        List<Reconciliation.Left> unknowns = explanations.unknowns();
        boolean anything = unknowns.stream().anyMatch(u -> u.share() <= TELLS);
        Verdict verdict = verdict(outcome, anything);
        Optional<Reconciliation.Next> next = Candidate.best(outcome.model(), fit, candidates, explanations);
        List<String> together = explanations.together();
        Telling telling = new Telling(observed, before, outcome, explanations);
        List<Suspicion> suspicions = telling.suspicions();
        Optional<Calibration> calibration = verdict == Verdict.EXPLAINED || verdict == Verdict.WRONG_READING
                ? Optional.of(explanations.calibration(day))
                : Optional.empty();
        return new Reconciliation(
                build.name(),
                verdict,
                telling.words(verdict, parting(model, observed, outcome), next),
                telling.readings(folder.log()),
                unused,
                unknowns.stream()
                        .sorted(Comparator.comparingDouble(Reconciliation.Left::share))
                        .toList(),
                together,
                next,
                suspicions,
                fit.misfit(),
                calibration);
    }

    private Optional<String> parting(ReadingModel model, List<Observation> observed, Weighing.Outcome outcome)
            throws BadInputException, NoOperatingPoint, Running.NotRunning {
        if (outcome.suspects().size() < 2) return Optional.empty();
        return new Parting(build, observed.stream().map(Observation::asked).toList(), model)
                .words(outcome.suspects().get(0), outcome.suspects().get(1), progress);
    }

    private static Verdict verdict(Weighing.Outcome outcome, boolean anything) {
        if (!outcome.faults().isEmpty()) return Verdict.WRONG_PART;
        if (!outcome.explained()) return Verdict.UNEXPLAINED;
        if (!anything) return Verdict.TOO_FEW;
        return outcome.wrong().isEmpty() ? Verdict.EXPLAINED : Verdict.WRONG_READING;
    }
}
