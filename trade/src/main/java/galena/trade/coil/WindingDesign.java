package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * From a wanted inductance and a {@link Former} to the turns, and all that can be said of the coil they make.
 * Inductance rises with every turn, so there is one answer or none.
 */
public final class WindingDesign {
    private static final int MOST_STEPS = 200;

    /**
     * Eddy currents take a few per cent, which change little with the turns: the second pass leaves 1e-3 of the whole
     * at worst.
     */
    private static final int SHIFT_PASSES = 2;

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
    public sealed interface Design permits Wound, DoesNotFit, OneTurnIsTooMuch {}

    /** The coil. */
    public record Wound(WindingSheet sheet) implements Design {}

    /**
     * The former filled up still gives too little.
     *
     * @param mostTurns that fit
     * @param most inductance they give (H)
     * @param share of the wanted inductance reached, below 1
     */
    public record DoesNotFit(double mostTurns, double most, double share) implements Design {}

    /**
     * One turn gives more than is wanted.
     *
     * @param least inductance of one turn (H)
     */
    public record OneTurnIsTooMuch(double least) implements Design {}

    /** The nearest whole number of turns for the goal. */
    public static Design design(Former former, Goal goal) {
        double most = former.mostTurns();
        double greatest = inductance(former, most, goal);
        if (greatest < goal.inductance()) return new DoesNotFit(most, greatest, greatest / goal.inductance());
        double least = inductance(former, 1, goal);
        if (least > goal.inductance()) return new OneTurnIsTooMuch(least);
        double exact = turnsFor(former, goal);
        for (int pass = 0; pass < SHIFT_PASSES; pass++) {
            double raised = goal.inductance() - shift(former.wind(exact), goal);
            if (raised > greatest) return new DoesNotFit(most, greatest, greatest / raised);
            exact = turnsFor(former, new Goal(raised, goal.frequency(), goal.celsius()));
        }
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

    /** What eddy currents take (H); 0 for coils of too many turns to be solved, whose sheet has the wider interval. */
    static double shift(Winding winding, Goal goal) {
        if (winding.turns() > TurnField.MOST_TURNS) return 0;
        return winding.inductanceShift(goal.frequency(), goal.celsius());
    }

    /** Inductance at the goal's frequency, without what eddy currents take (H). */
    static double inductance(Former former, double turns, Goal goal) {
        return former.wind(turns).inductance(goal.frequency(), goal.celsius());
    }
}
