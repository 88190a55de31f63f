package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * From a wanted inductance and a {@link Former} to the turns, and all that can be said of the coil they make. Inductance
 * rises with every turn, so there is one answer or none.
 */
public final class WindingDesign {
    private static final int MOST_STEPS = 200;

    private WindingDesign() {}

    /**
     * What is wanted.
     *
     * @param inductance H
     * @param frequency at which the coil is to work (Hz)
     * @param celsius its temperature
     */
    public record Goal(double inductance, double frequency, double celsius) {
        public Goal {
            OutOfRange.requirePositive("wanted inductance (H)", inductance);
            OutOfRange.requirePositive("frequency (Hz)", frequency);
        }
    }

    /** Outcome of a design. */
    public sealed interface Design permits Wound, TooMuch, TooLittle {}

    /** The coil. */
    public record Wound(WindingSheet sheet) implements Design {}

    /**
     * The former filled up still gives too little.
     *
     * @param mostTurns that fit
     * @param most inductance they give (H)
     * @param share of the wanted inductance reached, below 1
     */
    public record TooMuch(double mostTurns, double most, double share) implements Design {}

    /**
     * One turn gives more than is wanted.
     *
     * @param least inductance of one turn (H)
     */
    public record TooLittle(double least) implements Design {}

    /** The nearest whole number of turns for the goal. */
    public static Design design(Former former, Goal goal) {
        double most = former.mostTurns();
        double greatest = inductance(former, most, goal);
        if (greatest < goal.inductance()) return new TooMuch(most, greatest, greatest / goal.inductance());
        double least = inductance(former, 1, goal);
        if (least > goal.inductance()) return new TooLittle(least);
        double exact = turnsFor(former, goal);
        return new Wound(WindingSheet.of(former, exact, (int) Math.round(exact), goal));
    }

    /** All formers, or wires, that reach the goal, highest Q first; those without a Q follow in the order given. */
    public static List<WindingSheet> best(List<? extends Former> formers, Goal goal) {
        List<WindingSheet> sheets = new ArrayList<>();
        for (Former former : formers) {
            if (design(former, goal) instanceof Wound wound) sheets.add(wound.sheet());
        }
        sheets.sort(Comparator.comparingDouble(s -> s.losses() instanceof WindingSheet.Known known
                ? -known.losses().q().value()
                : 0));
        return sheets;
    }

    /**
     * Turns, not whole, that give the goal's inductance.
     *
     * @throws OutOfRange when the former can't reach it
     */
    static double turnsFor(Former former, Goal goal) {
        double most = former.mostTurns();
        double greatest = inductance(former, most, goal), least = inductance(former, 1, goal);
        OutOfRange.require(
                "inductance asked of the former (H)",
                goal.inductance(),
                least,
                greatest,
                "Another former or wire is needed.");
        if (goal.inductance() == least) return 1;
        if (goal.inductance() == greatest) return most;
        return new BracketingNthOrderBrentSolver(1e-10, 1e-9, 5)
                .solve(MOST_STEPS, n -> inductance(former, n, goal) / goal.inductance() - 1, 1, most);
    }

    static double inductance(Former former, double turns, Goal goal) {
        return former.wind(turns).inductance(goal.frequency(), goal.celsius());
    }
}
