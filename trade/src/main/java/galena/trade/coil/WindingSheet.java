package galena.trade.coil;

import galena.trade.wire.OutOfRange;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Everything a winder needs to know of one coil.
 *
 * @param exactTurns that would give the wanted inductance
 * @param winding the coil with whole turns
 * @param inductance what it gives at the goal's frequency, eddy currents counted, with all the former's uncertainties
 *     and the formula's (H)
 * @param contributions what each uncertain input does to it: greatest change either way (H)
 * @param oneTurnLess inductance with one turn off (H); of the coil itself when it has but one
 * @param oneTurnMore with one turn more (H); of the coil itself when no more fit
 * @param turnsToSpare that the former would still take
 * @param dcResistance at the goal's temperature (Ω)
 * @param losses at the goal's frequency, or why not
 * @param selfCapacitance or why not
 */
public record WindingSheet(
        double exactTurns,
        Winding winding,
        Interval inductance,
        Map<String, Double> contributions,
        double oneTurnLess,
        double oneTurnMore,
        double turnsToSpare,
        double dcResistance,
        LossFigure losses,
        SelfCapacitance selfCapacitance) {
    public WindingSheet {
        contributions = Collections.unmodifiableMap(new LinkedHashMap<>(contributions)); // keeps the order
    }

    /** Share of the inductance that eddy currents may take where they are not solved: as packed thick layers show. */
    private static final double EDDIES_UNKNOWN = 0.08;

    /** Losses, if they can be reckoned. */
    public sealed interface LossFigure permits Known, NotKnown {}

    /** Losses by cause; {@code losses.q()} is the Q. */
    public record Known(Losses losses) implements LossFigure {}

    /** @param reason why there is no figure */
    public record NotKnown(String reason) implements LossFigure {}

    static WindingSheet of(Former former, double exactTurns, int turns, WindingDesign.Goal goal) {
        Winding winding = former.wind(turns);
        double alone = winding.inductance(goal.frequency(), goal.celsius()), shift = WindingDesign.shift(winding, goal);
        double value = alone + shift;
        Map<String, Double> contributions = new LinkedHashMap<>();
        double low = value, high = value;
        for (Former.Variation variation : former.variations()) {
            double down = WindingDesign.inductance(variation.low(), turns, goal) - alone;
            double up = WindingDesign.inductance(variation.high(), turns, goal) - alone;
            low += Math.min(0, Math.min(down, up));
            high += Math.max(0, Math.max(down, up));
            contributions.put(variation.input(), Math.max(Math.abs(down), Math.abs(up)));
        }
        double model = winding.modelError() * value;
        contributions.put("formula", model);
        if (turns > TurnField.MOST_TURNS) {
            low -= EDDIES_UNKNOWN * value;
            contributions.put("eddy currents", EDDIES_UNKNOWN * value);
        }
        boolean room = turns + 1 <= former.mostTurns();
        return new WindingSheet(
                exactTurns,
                winding,
                new Interval(value, low - model, high + model),
                contributions,
                turns > 1 ? WindingDesign.inductance(former, turns - 1, goal) + shift : value,
                room ? WindingDesign.inductance(former, turns + 1, goal) + shift : value,
                former.mostTurns() - turns,
                winding.dcResistance(goal.celsius()),
                losses(winding, goal),
                winding.selfCapacitance());
    }

    private static LossFigure losses(Winding winding, WindingDesign.Goal goal) {
        try {
            return new Known(winding.losses(goal.frequency(), goal.celsius()));
        } catch (OutOfRange notCovered) {
            return new NotKnown(String.valueOf(notCovered.getMessage()));
        }
    }
}
