package galena.build.propose;

import galena.build.attempt.Draft;
import galena.build.attempt.Looking;
import galena.build.attempt.Stock;
import galena.build.attempt.Tried;
import galena.build.folder.Build;
import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Improves a build one change at a time. Every change a builder could make is solved, tuned and read with typical parts, and judged
 * with the present build's copies carried over; the few that promise most are drawn in copies of their own, and the best of those is
 * made. What promised nothing in one round is asked again only when the others are used up.
 */
final class Search {
    private static final int DRAWN_EACH_ROUND = 3, FEW = 8;
    private static final int ASKED_AGAIN = 8;
    private static final double GAIN = 0.03;

    /** Below this every line keeps its design margin but for a copy here and there. */
    private static final double ENOUGH = 0.08;

    private final Looking looking;
    private final Tuning tuning;
    private final Stock stock;
    private final OnHand onHand;
    private final int copies;
    private final Progress progress;

    Search(Looking looking, Tuning tuning, Stock stock, OnHand onHand, int copies, Progress progress) {
        this.looking = looking;
        this.tuning = tuning;
        this.stock = stock;
        this.onHand = onHand;
        this.copies = copies;
        this.progress = progress;
    }

    /**
     * A change made, and what it bought.
     *
     * @param from what stood there
     * @param before how the build stood
     * @param after how it stands
     */
    record Step(Move move, String from, Tried before, Tried after) {}

    /** Where the search ended and by which changes. */
    record Found(Tried best, List<Step> steps) {}

    private record Tip(Move move, Tried look) {}

    /**
     * When a search ends.
     *
     * @param changes at most
     * @param enough as soon as every line is met, without looking for margin
     * @param toBeat penalty of a rival: when even gains like the last one would not bring the build below it
     */
    record Until(int changes, boolean enough, double toBeat) {
        boolean reached(Tried best) {
            return best.standing().penalty() < ENOUGH
                    || (enough && best.standing().meets());
        }

        boolean hopeless(int made, double penalty, double lastGain) {
            return penalty - (changes - made) * lastGain > toBeat;
        }
    }

    /**
     * @param start tuned and read
     * @param from share of the whole work that is done
     * @param to and shall be at the end
     */
    Found improve(Tried start, Until until, double from, double to) {
        Tried best = start.drawn() ? start : looking.draw(start, copies);
        List<Step> steps = new ArrayList<>();
        Set<String> promising = new HashSet<>();
        for (int round = 0; round < until.changes(); round++) {
            progress.at(from + (to - from) * round / until.changes(), "change " + (round + 1));
            if (until.reached(best)) break;
            Tried now = best;
            List<Move> all = Move.all(now.build(), stock, onHand);
            Set<String> few = Set.copyOf(promising);
            List<Move> asked = few.isEmpty()
                    ? all
                    : all.stream().filter(m -> few.contains(key(m))).toList();
            Optional<Tip> made = best(now, promising(now, asked, promising));
            if (made.isEmpty() && !few.isEmpty()) {
                promising.clear();
                made = best(now, promising(now, all, promising));
            }
            if (made.isEmpty()) break;
            Move move = made.get().move();
            steps.add(new Step(
                    move,
                    now.build().part(move.part()).orElseThrow().label(),
                    now,
                    made.get().look()));
            best = made.get().look();
            double penalty = best.standing().penalty();
            if (until.hopeless(round + 1, penalty, now.standing().penalty() - penalty)) break;
        }
        return new Found(best, steps);
    }

    private static String key(Move move) {
        return move.part() + Integer.signum(move.way()) + (move.way() == 0 ? move.to() : "");
    }

    /** Changes that would help by the present copies; two steps of a value are asked only where one helps. */
    private List<Tip> promising(Tried now, List<Move> moves, Set<String> promising) {
        double here = now.standing().penalty();
        List<Tip> tips = new ArrayList<>(tips(now, moves, m -> Math.abs(m.way()) < 2));
        Set<String> helps = tips.stream()
                .filter(t -> t.look.standing().penalty() < here)
                .map(t -> key(t.move))
                .collect(Collectors.toSet());
        tips.addAll(tips(now, moves, m -> Math.abs(m.way()) > 1 && helps.contains(key(m))));
        tips.sort(Comparator.comparingDouble(t -> t.look.standing().penalty()));
        tips.stream()
                .filter(t -> t.look.standing().penalty() < here)
                .limit(ASKED_AGAIN)
                .forEach(t -> promising.add(key(t.move)));
        return tips.stream()
                .filter(t -> t.look.standing().penalty() < here - GAIN)
                .limit(DRAWN_EACH_ROUND)
                .toList();
    }

    /** Losers stop early: a few copies of each, against the same copies of the present build, then all of those that still gain. */
    private Optional<Tip> best(Tried now, List<Tip> tips) {
        double fewNow = looking.draw(now, FEW).standing().penalty(),
                here = now.standing().penalty();
        List<Tip> few = tips.parallelStream()
                .map(t -> new Tip(t.move, looking.draw(t.look, FEW)))
                .filter(t -> t.look.standing().penalty() < fewNow - GAIN)
                .sorted(Comparator.comparingDouble(t -> t.look.standing().penalty()))
                .toList();
        for (Tip tip : few) {
            Tip all = new Tip(tip.move, looking.draw(tip.look, copies));
            if (all.look.standing().penalty() < here - GAIN) return Optional.of(all);
        }
        return Optional.empty();
    }

    private List<Tip> tips(Tried now, List<Move> moves, Predicate<Move> which) {
        return moves.parallelStream()
                .filter(which)
                .flatMap(m -> tried(now, m).stream())
                .toList();
    }

    private Optional<Tip> tried(Tried now, Move move) {
        return moved(now.build(), move)
                .flatMap(build -> tuning.tuned(build, now.running()))
                .map(look -> new Tip(move, looking.beside(now, look)));
    }

    static Optional<Build> moved(Build build, Move move) {
        try {
            return Optional.of(Draft.with(build, move.changes()));
        } catch (BadInputException unfit) {
            return Optional.empty(); // a value beyond what its kind allows is no move
        }
    }
}
