package galena.build.expect;

import com.fasterxml.jackson.core.type.TypeReference;
import galena.build.cache.Cache;
import galena.build.drift.Drift;
import galena.build.drift.DriftReport;
import galena.build.drift.Warming;
import galena.build.fault.FaultStudy;
import galena.build.fault.FaultTree;
import galena.build.fault.Faults;
import galena.build.fault.Stages;
import galena.build.fault.Windows;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Progress;
import galena.build.predict.Response;
import galena.build.predict.Running;
import galena.build.predict.Running.NotRunning;
import galena.build.source.BadInputException;
import galena.build.spread.Conditions;
import galena.build.spread.Spread;
import galena.build.spread.SpreadReport;
import galena.build.substitute.Survey;
import galena.engine.circuit.Circuit;
import galena.engine.steady.Accuracy;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Asks everything of a build that oscillates. The build is solved only when something is not kept already. */
final class Asking {
    /** Copies drawn: enough for windows that hold 95 %. */
    private static final int COPIES = 100;

    private static final long SEED = 1;
    private static final double ROOM = 25;
    private static final double TONE = 1000;
    private static final double LOWEST_AUDIO = 20, HIGHEST_AUDIO = 100e3;
    private static final int PER_DECADE = 20;

    /** How the work is shared, as progress tells it: prediction, readings, spread, faults, substitutes, drift. */
    private static final double[] SHARES = {0, 0.08, 0.25, 0.4, 0.65, 0.85, 1};

    private final BuildFolder folder;
    private final Progress progress;
    private final Cache cache;
    private @Nullable Running running;

    Asking(BuildFolder folder, Progress progress) throws BadInputException, IOException {
        this.folder = folder;
        this.progress = progress;
        this.cache = Cache.of(folder, Overlay.NONE, Faults.of(folder.build(), Overlay.NONE));
    }

    private interface Making<T> {
        T make() throws BadInputException, NoOperatingPoint, NotRunning, IOException;
    }

    private <T> T get(String kind, String method, TypeReference<T> type, Making<T> making)
            throws BadInputException, NoOperatingPoint, NotRunning, IOException {
        Cache.Slot<T> slot = new Cache.Slot<>(kind, method, type);
        Optional<T> kept = cache.kept(slot);
        if (kept.isPresent()) return kept.get();
        T made = making.make();
        cache.keep(slot, made);
        return made;
    }

    Outlook all() throws BadInputException, NoOperatingPoint, IOException {
        try {
            Prediction prediction = get(
                    "prediction",
                    Predict.METHOD,
                    new TypeReference<>() {},
                    () -> Predict.of(folder, Overlay.NONE, Accuracy.CERTIFIED, share(0)));
            Expected expected = get(
                    "expected",
                    Expected.METHOD,
                    new TypeReference<>() {},
                    () -> Expected.of(folder, prediction, share(1)));
            return freely(prediction, expected);
        } catch (NotRunning impossible) {
            throw new IllegalStateException("only what oscillates is asked what it does", impossible);
        }
    }

    /** What only a build that oscillates by itself can answer. */
    private Outlook freely(Prediction prediction, Expected expected)
            throws BadInputException, NoOperatingPoint, IOException {
        if (!(prediction.running() instanceof Oscillation oscillation)) return Outlook.silent(prediction, expected);
        try {
            SpreadReport spread = get(
                    "spread",
                    "spread 1",
                    new TypeReference<>() {},
                    () -> Spread.of(folder, Overlay.NONE, Conditions.FULL, COPIES, SEED, share(2)));
            List<FaultTree> faults =
                    get("faults", "faults 1", new TypeReference<>() {}, () -> faults(oscillation, expected, spread));
            Survey substitutes =
                    get("substitutes", "substitutes 1", new TypeReference<>() {}, () -> Survey.of(running(), share(4)));
            DriftReport drift = get(
                    "drift",
                    "drift 1",
                    new TypeReference<>() {},
                    () -> Drift.of(folder, Overlay.NONE, Warming.none(ROOM), Drift.CHANNEL, share(5)));
            return new Outlook(
                    prediction,
                    expected,
                    Optional.of(spread),
                    faults,
                    Optional.of(substitutes),
                    Optional.of(drift),
                    get("audio", "audio 1", new TypeReference<>() {}, this::audio));
        } catch (NotRunning onlyDriven) {
            return Outlook.silent(prediction, expected);
        }
    }

    private Progress share(int k) {
        return progress.part(SHARES[k], SHARES[k + 1]);
    }

    private Running running() throws BadInputException, NoOperatingPoint, NotRunning {
        if (running == null) running = Running.of(folder.build(), Overlay.NONE, Accuracy.LIVE, progress);
        return running;
    }

    private List<FaultTree> faults(Oscillation oscillation, Expected expected, SpreadReport spread)
            throws BadInputException, NoOperatingPoint, NotRunning {
        FaultStudy study = FaultStudy.of(running(), share(3));
        Windows windows = Windows.of(study, oscillation, expected.points(), spread.voltages());
        return FaultTree.of(
                study, Stages.of(folder.build(), running().startup().site().part()), windows);
    }

    /** To the device pin that hears the tone best: there it modulates. */
    private Optional<Response> audio() throws BadInputException, NoOperatingPoint {
        Optional<String> source = folder.build().parts().values().stream()
                .filter(p -> p.kind().isProgramme())
                .map(PartEntry::name)
                .findFirst();
        if (source.isEmpty()) return Optional.empty();
        String best = "";
        double most = Double.NEGATIVE_INFINITY;
        for (String net : pins()) {
            double level = Response.of(folder, Overlay.NONE, source.get(), net, TONE, 2 * TONE, 1)
                    .points()
                    .get(0)
                    .decibels();
            if (level > most) {
                most = level;
                best = net;
            }
        }
        if (best.isEmpty()) return Optional.empty();
        return Optional.of(
                Response.of(folder, Overlay.NONE, source.get(), best, LOWEST_AUDIO, HIGHEST_AUDIO, PER_DECADE));
    }

    /** Nets with a pin of a device. */
    private Set<String> pins() {
        Set<String> nets = new TreeSet<>();
        for (PartEntry part : folder.build().parts().values())
            if (part.type().isPresent() || part.parameters().isPresent())
                nets.addAll(part.pins().values());
        nets.remove(Circuit.GROUND);
        return nets;
    }
}
