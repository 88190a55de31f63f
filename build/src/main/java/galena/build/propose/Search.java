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

/**
 * Improves a build one change at a time. Every change a builder could make is solved, tuned and read with typical parts, and judged
 * with the present build's copies carried over; the few that promise most are drawn in copies of their own, and the best of those is
 * made. What promised nothing in one round is asked again only when the others are used up.
 */
final class Search {
    private static final int DRAWN_EACH_ROUND = 3;
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
     * @param start tuned and read
     * @param mostRounds changes at most
     * @param enough stop as soon as every line is met, without looking for margin
     */
    Found improve(Tried start, int mostRounds, boolean enough, double from, double to) {
        Tried best = start.drawn() ? start : looking.draw(start, copies);
        List<Step> steps = new ArrayList<>();
        Set<String> promising = new HashSet<>();
        for (int round = 0; round < mostRounds; round++) {
            progress.at(from + (to - from) * round / mostRounds, "change " + (round + 1));
            if (best.standing().penalty() < ENOUGH || (enough && best.standing().meets())) break;
            Tried now = best;
            List<Move> all = Move.all(now.build(), stock, onHand);
            Set<String> few = Set.copyOf(promising);
            List<Move> asked = few.isEmpty()
                    ? all
                    : all.stream().filter(m -> few.contains(key(m))).toList();
            Optional<Tip> made = best(now, asked, promising);
            if (made.isEmpty() && !few.isEmpty()) {
                promising.clear();
                made = best(now, all, promising);
            }
            if (made.isEmpty()) break;
            Move move = made.get().move();
            steps.add(new Step(
                    move,
                    now.build().part(move.part()).orElseThrow().label(),
                    now,
                    made.get().look()));
            best = made.get().look();
        }
        return new Found(best, steps);
    }

    private static String key(Move move) {
        return move.part() + Integer.signum(move.way()) + (move.way() == 0 ? move.to() : "");
    }

    private Optional<Tip> best(Tried now, List<Move> moves, Set<String> promising) {
        List<Tip> tips = moves.parallelStream()
                .flatMap(m -> tried(now, m).stream())
                .sorted(Comparator.comparingDouble(t -> t.look.standing().penalty()))
                .toList();
        double here = now.standing().penalty();
        tips.stream()
                .filter(t -> t.look.standing().penalty() < here)
                .limit(ASKED_AGAIN)
                .forEach(t -> promising.add(key(t.move)));
        List<Tip> drawn = tips.stream()
                .filter(t -> t.look.standing().penalty() < here - GAIN)
                .limit(DRAWN_EACH_ROUND)
                .map(t -> new Tip(t.move, looking.draw(t.look, copies)))
                .toList();
        return drawn.stream()
                .filter(t -> t.look.standing().penalty() < here - GAIN)
                .min(Comparator.comparingDouble(t -> t.look.standing().penalty()));
    }

    private Optional<Tip> tried(Tried now, Move move) {
        return moved(now.build(), move).flatMap(tuning::tuned).map(look -> new Tip(move, looking.beside(now, look)));
    }

    static Optional<Build> moved(Build build, Move move) {
        try {
            return Optional.of(Draft.with(build, move.changes()));
        } catch (BadInputException unfit) {
            return Optional.empty(); // a value beyond what its kind allows is no move
        }
    }
}
