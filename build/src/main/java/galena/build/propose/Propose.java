package galena.build.propose;

import galena.build.attempt.Aim;
import galena.build.attempt.Depth;
import galena.build.attempt.Draft;
import galena.build.attempt.Line;
import galena.build.attempt.Looking;
import galena.build.attempt.OutputTank;
import galena.build.attempt.Stock;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.pattern.Pattern;
import galena.build.predict.Progress;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import galena.build.reach.Surroundings;
import galena.build.source.BadInputException;
import galena.build.spread.Conditions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;

/**
 * From an intent and a drawer to a build that meets it: patterns brought to the intent by rules of thumb, the few that stand best
 * improved change by change by prediction, the best proven by copies. A build that is given is changed as little as it takes.
 */
public final class Propose {

    /** Copies by which changes are judged, and those that decide whether a pattern need not be looked beyond. */
    private static final int SMALL = 24, MIDDLING = 100;

    private static final double ALIKE = 0.25, GOOD = 0.5;

    /** Copies by which patterns are first told apart, and how many of them are looked at further. */
    private static final int FEW = 8, IMPROVED = 3;

    private static final int MOST_CHANGES = 12;

    private final Wish wish;
    private final Request request;
    private final Progress progress;
    private final Aim aim;
    private final Looking looking;
    private final Stock stock;
    private final OnHand onHand;
    private final Tuning tuning;

    /**
     * @param pattern to keep to; all are looked at where none is named
     * @param seed of the copies
     * @param count copies that the end is proven by
     * @param set class of set that shall hear it, one of {@link galena.build.reach.Window#sets}
     * @param surroundings where
     */
    public record Request(Optional<String> pattern, long seed, int count, String set, Surroundings surroundings) {
        /** A transistor set in a residential street. */
        public static final Request USUAL = new Request(Optional.empty(), 1, 200, "rod-set", Surroundings.RESIDENTIAL);
    }

    private Propose(Wish wish, Request request, Progress progress) throws BadInputException {
        this.wish = wish;
        this.request = request;
        this.progress = progress;
        aim = new Aim(wish.build().intent(), request.surroundings(), request.set());
        looking = looking(aim);
        stock = new Stock(wish.drawer());
        onHand = new OnHand(aim.carrier(), wish.drawer());
        tuning = new Tuning(looking, stock, onHand, progress.watch());
    }

    private Looking looking(Aim towards) {
        return new Looking(towards, Conditions.FULL, request.seed(), progress);
    }

    /**
     * @throws BadInputException when no pattern has the name asked for
     * @throws CancellationException when the progress says so
     */
    public static ProposeAnswer of(Wish wish, Request request, Progress progress) throws BadInputException {
        Propose propose = new Propose(wish, request, progress);
        return wish.hasParts() && request.pattern().isEmpty() ? propose.given() : propose.fromPatterns();
    }

    /** A pattern brought to the intent, or why it can't be. */
    private record Candidate(Pattern pattern, Optional<Tried> tried, String why, List<Search.Step> steps) {
        double penalty() {
            return tried.map(t -> t.standing().penalty()).orElse(1e9);
        }

        /** Of patterns that stand alike the first in the list is taken: the simplest to build. */
        double rank() {
            return Math.rint(penalty() / ALIKE);
        }
    }

    private ProposeAnswer fromPatterns() throws BadInputException {
        List<Pattern> asked = request.pattern().isPresent()
                ? List.of(Pattern.named(request.pattern().get()))
                : Pattern.all();
        progress.at(0.02, "starts from " + asked.size() + (asked.size() == 1 ? " pattern" : " patterns"));
        List<Candidate> candidates =
                new ArrayList<>(asked.parallelStream().map(this::candidate).toList());
        List<Candidate> order = leading(candidates);
        if (order.isEmpty())
            return new ProposeAnswer.None("no pattern serves", considered(candidates, Optional.empty()));
        Search search = new Search(looking, tuning, stock, onHand, SMALL, progress);
        List<Candidate> improved = new ArrayList<>();
        double toBeat = Double.POSITIVE_INFINITY;
        for (int k = 0; k < order.size(); k++) {
            double from = 0.25 + 0.15 * k;
            Candidate c = order.get(k);
            Search.Found found = search.improve(
                    c.tried().orElseThrow(), new Search.Until(MOST_CHANGES, false, toBeat), from, from + 0.15);
            Tried proven = looking.draw(found.best(), MIDDLING);
            Candidate better = new Candidate(c.pattern(), Optional.of(proven), "", found.steps());
            improved.add(better);
            candidates.set(candidates.indexOf(c), better);
            toBeat = Math.min(toBeat, better.penalty());
            if (proven.standing().meets() && better.penalty() < GOOD) break;
        }
        Candidate best = improved.stream()
                .min(Comparator.comparingDouble(Candidate::rank))
                .orElseThrow();
        Finish finish = new Finish(aim, looking, this::looking, stock, onHand, request.seed(), progress);
        return finish.ofPattern(
                best.pattern(),
                best.tried().orElseThrow(),
                best.steps(),
                considered(candidates, Optional.of(best)),
                request.count());
    }

    /** Those that stand best, with copies, the best first: a few copies of all, more of those few that lead. */
    private List<Candidate> leading(List<Candidate> candidates) {
        progress.at(0.15, "a few copies of each");
        List<Candidate> leading = new ArrayList<>(candidates);
        leading.removeIf(c -> c.tried().isEmpty());
        for (int copies : new int[] {FEW, SMALL}) {
            List<Candidate> drawn = leading.parallelStream()
                    .map(c -> new Candidate(c.pattern(), c.tried().map(t -> looking.draw(t, copies)), "", List.of()))
                    .toList();
            for (int k = 0; k < drawn.size(); k++) candidates.set(candidates.indexOf(leading.get(k)), drawn.get(k));
            leading = drawn.stream()
                    .sorted(Comparator.comparingDouble(Candidate::rank))
                    .limit(IMPROVED)
                    .toList();
        }
        return leading;
    }

    private Candidate candidate(Pattern pattern) {
        try {
            Start start = new Start(wish, stock, onHand, tuning);
            Optional<String> hindrance = start.hindrance(pattern);
            if (hindrance.isPresent()) return new Candidate(pattern, Optional.empty(), hindrance.get(), List.of());
            Optional<Tried> best = Optional.empty();
            for (OnHand.Form form : onHand.forms()) {
                Optional<Tried> tried = tuning.tuned(start.of(pattern, form));
                if (tried.isEmpty()) continue;
                if (best.isEmpty() || distance(tried.get()) > distance(best.get())) best = tried;
                if (distance(best.get()) > NEAR_ENOUGH || limit(best.get()) < NEAR_LIMIT) break;
            }
            if (best.isEmpty())
                return new Candidate(pattern, best, "does not oscillate on this supply and channel", List.of());
            return new Candidate(pattern, Optional.of(damped(best.get())), "", List.of());
        } catch (BadInputException unfit) {
            return new Candidate(pattern, Optional.empty(), "does not fit: " + unfit.getMessage(), List.of());
        }
    }

    /** A separate output tank's damping, by the rule that output goes with it: towards the distance wanted, or back from the limit. */
    private Tried damped(Tried tried) {
        Optional<PartEntry> resistor = OutputTank.across(tried.build(), PartKind.RESISTOR, "");
        if (resistor.isEmpty() || tried.tankQ().isEmpty()) return tried;
        boolean asked = tried.standing().typical().containsKey(Line.DISTANCE);
        double wish = asked ? AIMED - distance(tried) : 0, room = limit(tried) - AIMED;
        double change = Math.max(-MOST_DAMPING, Math.min(MOST_DAMPING, Math.min(wish > 0 ? wish : 0, room)));
        double ohms = resistor.get().value().orElseThrow().value();
        double value = stock.nearest(PartKind.RESISTOR, ohms * Math.exp(change));
        if (Math.abs(value / ohms - 1) < 1e-6) return tried;
        String path = resistor.get().path() + ".resistor";
        try {
            Build changed = Draft.with(tried.build(), Map.of(path, Engineering.exact(value, Unit.OHM)));
            return tuning.tuned(changed, tried.running()).orElse(tried);
        } catch (BadInputException beyond) {
            throw new IllegalStateException("a preferred resistance can't be read: " + beyond.getMessage(), beyond);
        }
    }

    private static final double AIMED = 0.15, MOST_DAMPING = 0.8;

    /** Half of the current wanted: what damping and standing current can still make up for. */
    private static final double NEAR_ENOUGH = -0.7;

    /** The next larger aerial makes twice the field or more: with less than that to the limit it would only exceed it. */
    private static final double NEAR_LIMIT = 0.5;

    private static double limit(Tried tried) {
        return tried.standing().typical().getOrDefault(Line.LIMIT, 10.0);
    }

    private static double distance(Tried tried) {
        return tried.standing().typical().getOrDefault(Line.DISTANCE, 0.0);
    }

    private List<Proposal.Considered> considered(List<Candidate> candidates, Optional<Candidate> best) {
        List<Proposal.Considered> all = new ArrayList<>();
        best.ifPresent(b -> all.add(words(b)));
        for (Candidate c : candidates) if (best.isEmpty() || !c.equals(best.get())) all.add(words(c));
        return all;
    }

    private static Proposal.Considered words(Candidate c) {
        if (c.tried().isEmpty()) return new Proposal.Considered(c.pattern().name(), c.why(), Optional.empty());
        Tried tried = c.tried().get();
        Tried.Standing standing = tried.standing();
        String missed = standing.failing().entrySet().stream()
                .sorted(Comparator.comparingDouble(e -> -e.getValue()))
                .limit(2)
                .map(e -> e.getKey().toString())
                .reduce((a, b) -> a + ", " + b)
                .map(w -> "misses " + w)
                .orElse("meets every line");
        String changes = c.steps().isEmpty()
                ? "as started"
                : "after " + c.steps().size() + (c.steps().size() == 1 ? " change" : " changes");
        return new Proposal.Considered(c.pattern().name(), changes + ": " + missed, Optional.of(standing.yield()));
    }

    private ProposeAnswer given() throws BadInputException {
        progress.at(0.02, "the build as it is");
        Optional<Tried> look = looking.look(Depth.up(wish.build()));
        if (look.isEmpty()) look = tuning.tuned(Depth.up(wish.build()));
        if (look.isEmpty())
            return new ProposeAnswer.None(
                    "the build given does not oscillate, so no change of it can be judged. galena predict says why; with"
                            + " --pattern a proposal is made afresh",
                    List.of());
        Tried start = looking.draw(look.get(), SMALL);
        Search search = new Search(looking, tuning, stock, onHand, SMALL, progress);
        Search.Found found =
                search.improve(start, new Search.Until(MOST_CHANGES, true, Double.POSITIVE_INFINITY), 0.1, 0.8);
        Finish finish = new Finish(aim, looking, this::looking, stock, onHand, request.seed(), progress);
        return finish.ofGiven(wish.build(), found.best(), found.steps(), request.count());
    }
}
