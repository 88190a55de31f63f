package galena.build.fault;

import galena.build.fault.FaultStudy.Case;
import galena.build.fault.FaultTree.Ask;
import galena.build.fault.FaultTree.Betrayal;
import galena.build.fault.FaultTree.Branch;
import galena.build.fault.FaultTree.Node;
import galena.build.fault.FaultTree.Suspects;
import galena.build.fault.FaultTree.Unsolved;
import galena.build.fault.FaultTree.Window;
import galena.build.fault.Reading.What;
import galena.build.fault.Symptoms.Outcome;
import galena.build.fault.Windows.Span;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Grows the tree of one stage. */
final class TreeGrowing {
    /** More answers than these nobody keeps apart; the nearest are asked further. */
    private static final int MOST_BRANCHES = 5;

    /** A question that leaves this little less in doubt is not worth a reading, bits. */
    private static final double WORTH_ASKING = 0.05;

    /** That there is none says something, but any other reading out of its window says more. */
    private static final double NO_CARRIER = 1e-3;

    private final FaultStudy study;
    private final Windows windows;
    private final Stage stage;

    TreeGrowing(FaultStudy study, Windows windows, Stage stage) {
        this.study = study;
        this.windows = windows;
        this.stage = stage;
    }

    /** One who may be it: a fault, or the sound stage. */
    private record Candidate(Optional<Fault> fault, Symptoms symptoms) {}

    /** Candidates whose readings can't be told apart; no span where there is nothing to read. */
    private record Cluster(Optional<Span> span, List<Candidate> members) {
        boolean sound() {
            return members.stream().anyMatch(c -> c.fault.isEmpty());
        }
    }

    FaultTree of(List<Case> cases) {
        List<Candidate> candidates = new ArrayList<>();
        candidates.add(new Candidate(Optional.empty(), study.healthy()));
        List<Betrayal> betrayals = new ArrayList<>();
        List<Fault> unseen = new ArrayList<>();
        List<Unsolved> unsolved = new ArrayList<>();
        for (Case one : cases) {
            if (!FaultTree.isSolved(one)) {
                unsolved.add(new Unsolved(one.fault(), one.symptoms().remark()));
                continue;
            }
            Optional<Betrayal> betrayal = betrayal(one);
            betrayal.ifPresentOrElse(betrayals::add, () -> unseen.add(one.fault()));
            if (betrayal.isPresent()) candidates.add(new Candidate(Optional.of(one.fault()), one.symptoms()));
        }
        return new FaultTree(stage, grow(candidates), betrayals, unseen, unsolved);
    }

    /** The reading that lies farthest out of its window, the easier to take of two alike; a missing carrier says least. */
    private Optional<Betrayal> betrayal(Case one) {
        @Nullable Betrayal best = null;
        double most = 0;
        for (Reading reading : study.readings()) {
            OptionalDouble found = one.symptoms().value(reading);
            Span window = windows.sound(reading);
            double distance = NO_CARRIER;
            if (found.isPresent()) {
                Span there = windows.around(reading, found.getAsDouble());
                distance = Math.min(1, windows.distance(reading, window, there)) * ease(reading);
                boolean silent = one.symptoms().outcome() == Outcome.SILENT;
                if (silent && reading.what() == What.LEVEL) distance = NO_CARRIER / 2;
            }
            if (distance > most) {
                most = distance;
                best = new Betrayal(one.fault(), reading, new Window(window.low(), window.high()), found);
            }
        }
        return Optional.ofNullable(best);
    }

    /** What is read without opening the box comes first, then test points, then the stage's own pins. */
    private double ease(Reading reading) {
        return switch (reading.what()) {
            case CARRIER, SUPPLY -> 1;
            case LEVEL -> 0.97;
            case DIRECT -> isOwn(reading) ? 0.95 : 0.85;
            case AUDIO -> isOwn(reading) ? 0.9 : 0.8;
        };
    }

    private boolean isOwn(Reading reading) {
        return stage.parts().stream().anyMatch(p -> reading.where().startsWith(p + " "));
    }

    private Node grow(List<Candidate> candidates) {
        if (candidates.size() > 1) {
            @Nullable Reading best = null;
            List<Cluster> division = List.of();
            double most = WORTH_ASKING;
            for (Reading reading : study.readings()) {
                List<Cluster> clusters = clusters(reading, candidates);
                double gain = information(clusters, candidates.size()) * ease(reading);
                if (clusters.size() > 1 && gain > most) {
                    most = gain;
                    best = reading;
                    division = clusters;
                }
            }
            if (best != null)
                return new Ask(best, division.stream().map(this::branch).toList());
        }
        return new Suspects(
                candidates.stream().flatMap(c -> c.fault.stream()).toList(),
                candidates.stream().anyMatch(c -> c.fault.isEmpty()));
    }

    private Branch branch(Cluster cluster) {
        return new Branch(cluster.span.map(s -> new Window(s.low(), s.high())), cluster.sound(), grow(cluster.members));
    }

    private static double information(List<Cluster> clusters, int all) {
        double bits = 0;
        for (Cluster cluster : clusters) {
            double share = (double) cluster.members.size() / all;
            bits -= share * Math.log(share) / Math.log(2);
        }
        return bits;
    }

    /** Candidates by what they read: spans that meet are one answer. */
    private List<Cluster> clusters(Reading reading, List<Candidate> candidates) {
        List<Candidate> mute = new ArrayList<>(), reads = new ArrayList<>();
        for (Candidate c : candidates) (c.symptoms.value(reading).isPresent() ? reads : mute).add(c);
        reads.sort(Comparator.comparingDouble(c -> span(reading, c).low()));
        List<Cluster> clusters = new ArrayList<>();
        for (Candidate c : reads) {
            Span span = span(reading, c);
            @Nullable Cluster last = clusters.isEmpty() ? null : clusters.get(clusters.size() - 1);
            if (last != null && span.low() <= last.span.orElseThrow().high()) {
                clusters.set(clusters.size() - 1, joined(last, new Cluster(Optional.of(span), List.of(c))));
            } else {
                clusters.add(new Cluster(Optional.of(span), List.of(c)));
            }
        }
        while (clusters.size() > MOST_BRANCHES) joinNearest(reading, clusters);
        if (!mute.isEmpty()) clusters.add(0, new Cluster(Optional.empty(), mute));
        return clusters;
    }

    private Span span(Reading reading, Candidate candidate) {
        return windows.around(reading, candidate.symptoms.value(reading).orElseThrow());
    }

    /** The two neighbours that are least apart become one, the sound one left alone. */
    private void joinNearest(Reading reading, List<Cluster> clusters) {
        int at = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 1; k < clusters.size(); k++) {
            Cluster a = clusters.get(k - 1), b = clusters.get(k);
            if (a.sound() || b.sound()) continue;
            double distance = windows.distance(reading, a.span.orElseThrow(), b.span.orElseThrow());
            if (distance < least) {
                least = distance;
                at = k;
            }
        }
        if (at < 0) throw new IllegalStateException("more than " + MOST_BRANCHES + " answers, all of them sound");
        clusters.set(at - 1, joined(clusters.get(at - 1), clusters.get(at)));
        clusters.remove(at);
    }

    private static Cluster joined(Cluster a, Cluster b) {
        List<Candidate> members = new ArrayList<>(a.members);
        members.addAll(b.members);
        Span one = a.span.orElseThrow(), other = b.span.orElseThrow();
        return new Cluster(
                Optional.of(new Span(Math.min(one.low(), other.low()), Math.max(one.high(), other.high()))), members);
    }
}
