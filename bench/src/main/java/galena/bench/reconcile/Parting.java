package galena.bench.reconcile;

import galena.build.fault.Fault;
import galena.build.folder.Build;
import galena.build.folder.LogEntry.What;
import galena.build.folder.PartEntry;
import galena.build.folder.Probe;
import galena.build.folder.TestPoint;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.quantity.Engineering;
import galena.build.readings.Asked;
import galena.build.readings.Latent;
import galena.build.readings.ReadingModel;
import galena.build.readings.ReadingModel.Readings;
import galena.build.readings.Situation;
import galena.build.source.BadInputException;
import galena.engine.circuit.Circuit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The reading that tells the likeliest fault from the next, where those taken do not: of a mean voltage and of what swings at each net
 * that a pin of a device stands on, that which the two fitted explanations put farthest apart.
 */
final class Parting {
    /** In deviations of the reading: nearer than this the two could not be told apart by it. */
    private static final double APART = 5;

    private static final double METER = 0.01;
    private static final double LEVEL = 0.05;

    private final Build build;
    private final List<Asked> taken;
    private final ReadingModel model;

    Parting(Build build, List<Asked> taken, ReadingModel model) {
        this.build = build;
        this.taken = taken;
        this.model = model;
    }

    /** A sentence; empty where no such reading parts them. */
    Optional<String> words(Suspects.Suspect one, Suspects.Suspect other, Progress progress)
            throws BadInputException, NoOperatingPoint, Running.NotRunning {
        List<Asked> candidates = candidates();
        if (candidates.isEmpty()) return Optional.empty();
        ReadingModel asking = ReadingModel.of(build, candidates, progress);
        double most = APART;
        Optional<String> best = Optional.empty();
        for (int k = 0; k < candidates.size(); k++) {
            Optional<Double> first = value(asking, one, k), second = value(asking, other, k);
            if (first.isEmpty() || second.isEmpty()) continue;
            double apart = Math.abs(first.get() - second.get()) / sigma(candidates.get(k), first.get());
            if (apart <= most) continue;
            most = apart;
            best = Optional.of(words(candidates.get(k), one.fault(), first.get(), other.fault(), second.get()));
        }
        return best;
    }

    private List<Asked> candidates() {
        Situation usual = taken.get(0).situation().untouched();
        List<Asked> all = new ArrayList<>();
        for (String net : nets()) {
            TestPoint point = build.points().values().stream()
                    .filter(p -> p.at().equals(net) && p.to().equals(Circuit.GROUND))
                    .findFirst()
                    .orElse(new TestPoint(net, net, Circuit.GROUND, Optional.empty()));
            add(all, new Asked(What.VOLTAGE, usual.at(point, Probe.known("meter"))));
            add(all, new Asked(What.AMPLITUDE, usual.at(point, Probe.known("10x"))));
        }
        return all;
    }

    private void add(List<Asked> all, Asked candidate) {
        boolean known = taken.stream()
                .anyMatch(a -> a.what() == candidate.what()
                        && a.situation().set().equals(candidate.situation().set())
                        && a.situation()
                                .point()
                                .map(TestPoint::at)
                                .equals(candidate.situation().point().map(TestPoint::at)));
        if (!known) all.add(candidate);
    }

    private Set<String> nets() {
        Set<String> nets = new LinkedHashSet<>();
        for (PartEntry part : build.parts().values()) {
            if (part.pins().size() > 2 || part.kind().isProgramme())
                nets.addAll(part.pins().values());
        }
        nets.remove(Circuit.GROUND);
        return nets;
    }

    /** Of the fault's best explanation, its numbers found again by their names. */
    private Optional<Double> value(ReadingModel asking, Suspects.Suspect suspect, int candidate) {
        Map<String, Double> known = new HashMap<>();
        double[] fitted = suspect.fits().get(0).z();
        for (int j = 0; j < fitted.length; j++) known.put(model.latents().get(j).key(), fitted[j]);
        List<Latent> latents = asking.latents();
        double[] z = new double[latents.size()];
        for (int j = 0; j < z.length; j++)
            z[j] = known.getOrDefault(latents.get(j).key(), 0.0);
        Optional<Readings> there =
                asking.changed(suspect.fault()::in).at(z, Optional.empty(), candidate, candidate + 1);
        return there.map(r -> r.values()[0]);
    }

    private static double sigma(Asked asked, double value) {
        return asked.what() == What.AMPLITUDE ? LEVEL : METER * Math.max(1, Math.abs(value));
    }

    private static String words(Asked asked, Fault one, double first, Fault other, double second) {
        String with = asked.what() == What.AMPLITUDE ? "the carrier's amplitude at " : "the mean voltage at ";
        String at = asked.situation().point().orElseThrow().name();
        return "To tell " + one.words() + " from " + other.words() + ", read " + with + at + ": " + print(asked, first)
                + " with the one, " + print(asked, second) + " with the other.";
    }

    private static String print(Asked asked, double modelled) {
        return Engineering.print(asked.shown(modelled), asked.what().unit(), 2);
    }
}
