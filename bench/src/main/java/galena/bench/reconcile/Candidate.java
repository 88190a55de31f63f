package galena.bench.reconcile;

import galena.build.folder.Build;
import galena.build.folder.LogEntry.What;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.folder.Probe;
import galena.build.folder.TestPoint;
import galena.build.readings.Asked;
import galena.build.readings.Latent;
import galena.build.readings.ReadingModel;
import galena.build.readings.ReadingModel.Readings;
import galena.build.readings.Situation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.RealMatrix;

/**
 * A reading that could be taken next. What it would tell follows from its slope j at the best explanation, its error and the covariance Σ
 * that is left: the variance of unknown k falls by (Σ j)² over jᵀ Σ j + error², whatever it turns out to be.
 *
 * @param words what and how
 */
record Candidate(Asked asked, String words) {
    private static final double ADDED = 10e-12;
    private static final double CARRIER = 2.5e-5;
    private static final double LEVEL = 0.015;
    private static final double METER = 0.005;
    private static final double LOWER_SUPPLY = 0.8;
    /** In natural units, summed over the unknowns: less is not worth a sentence. */
    private static final double WORTH = 0.05;

    /** Readings of a usual bench that have not been taken, under circumstances like those of the first. */
    static List<Candidate> of(Build build, List<Asked> taken) {
        Situation usual = taken.get(0).situation().untouched();
        List<Candidate> all = new ArrayList<>();
        add(all, taken, What.CURRENT, usual, "the supply current, with a meter in the supply lead");
        for (PartEntry entry : build.parts().values()) {
            if (entry.kind() != PartKind.TRIMMER) continue;
            for (int stop = 0; stop <= 1; stop++)
                add(
                        all,
                        taken,
                        What.CARRIER,
                        usual.turned(entry.name(), stop),
                        "the carrier with " + entry.name() + " at its " + (stop == 0 ? "lower" : "upper")
                                + " stop, nothing touching the circuit");
        }
        for (TestPoint point : build.points().values()) {
            String name = point.name();
            add(all, taken, What.AMPLITUDE, usual.at(point), "the carrier's amplitude at " + name);
            add(
                    all,
                    taken,
                    What.VOLTAGE,
                    usual.at(point, Probe.known("meter")),
                    "the mean voltage at " + name + " with a meter");
            add(all, taken, What.CARRIER, usual.adding(point, ADDED), "the carrier with a known 10 pF across " + name);
        }
        double volts = usual.supply().orElse(0);
        if (volts > 0)
            add(
                    all,
                    taken,
                    What.CARRIER,
                    usual.supplied(LOWER_SUPPLY * volts),
                    "the carrier at " + Math.round(10 * LOWER_SUPPLY * volts) / 10.0 + " V of supply");
        return all;
    }

    private static void add(List<Candidate> all, List<Asked> taken, What what, Situation under, String words) {
        boolean known = taken.stream()
                .anyMatch(a -> a.what() == what
                        && a.situation().point().equals(under.point())
                        && a.situation().set().equals(under.set())
                        && a.situation().added() == under.added()
                        && a.situation().supply().equals(under.supply()));
        if (!known) all.add(new Candidate(new Asked(what, under), words));
    }

    private double sigma(double value) {
        double own =
                switch (asked.what()) {
                    case CARRIER -> CARRIER;
                    case AMPLITUDE -> LEVEL;
                    case VOLTAGE -> METER * Math.max(1, Math.abs(value));
                    default -> METER;
                };
        return Math.hypot(own, Observation.law(asked.what(), value));
    }

    /** The one that narrows most, all unknowns of the build counted by ratio; empty when none is worth it. */
    static Optional<Reconciliation.Next> best(
            ReadingModel model, Fit fit, List<Candidate> candidates, Explanations explanations) {
        int first = fit.observed().size(), count = candidates.size();
        double most = WORTH;
        Optional<Reconciliation.Next> best = Optional.empty();
        for (int c = 0; c < count; c++) {
            Optional<Readings> there = model.at(fit.z(), Optional.empty(), first + c, first + c + 1);
            if (there.isEmpty()) continue;
            double[] slope = model.slopes(there.get(), fit.z())[0];
            Narrowing n =
                    Narrowing.by(slope, candidates.get(c).sigma(there.get().values()[0]), explanations);
            if (n.sum <= most) continue;
            most = n.sum;
            Reconciliation.Left now = explanations.unknown(n.about);
            best = Optional.of(new Reconciliation.Next(
                    candidates.get(c).words,
                    explanations.latents().get(n.about).shown(),
                    now.after(),
                    n.share * now.after().halfWidth()));
        }
        return best;
    }

    /** @param share of the deviation of the unknown that it is most about which would be left */
    private record Narrowing(double sum, int about, double share) {
        static Narrowing by(double[] slope, double sigma, Explanations explanations) {
            RealMatrix left = explanations.left();
            double[] moved = left.operate(slope);
            double variance = Fit.dot(slope, moved) + sigma * sigma, sum = 0, least = 2;
            int about = 0;
            for (int k = 0; k < moved.length; k++) {
                if (explanations.latents().get(k).kind() == Latent.Kind.CIRCUMSTANCE
                        || !explanations.model().has(k)) continue;
                double share = Math.sqrt(Math.max(1e-6, 1 - moved[k] * moved[k] / (variance * left.getEntry(k, k))));
                sum -= Math.log(share);
                if (share < least) {
                    least = share;
                    about = k;
                }
            }
            return new Narrowing(sum, about, least);
        }
    }
}
