package galena.trade.coil;

import galena.trade.wire.OutOfRange;

/**
 * A coil is wound and measured; how many turns off or on make it what it should be. The measurement stands in for all
 * that the formula does not know of this former: its ratio to the reckoned inductance is taken to hold for the
 * changed coil too, which is good while the change is a modest part of the turns.
 *
 * @param calibration measured over reckoned inductance, eddy currents counted
 * @param turnsWanted exact turns for the wanted inductance
 * @param change whole turns to add, negative to take off
 */
public record TurnsChange(Interval calibration, Interval turnsWanted, int change) {
    /** Above it the change is no longer a trimming of the same coil. */
    private static final double MODEST = 4;

    /**
     * @param former as wound, its best figures
     * @param wound turns on it
     * @param measured inductance, self-capacitance taken out, with its uncertainty (H)
     * @param goal what is wanted; its frequency is the one measured at
     * @throws OutOfRange when measured and wanted differ more than fourfold, or the former can't hold the turns
     */
    public static TurnsChange of(Former former, int wound, Interval measured, WindingDesign.Goal goal) {
        OutOfRange.require(
                "wanted over measured inductance",
                goal.inductance() / measured.value(),
                1 / MODEST,
                MODEST,
                "Wind a trial nearer to what is wanted.");
        double alone = WindingDesign.inductance(former, wound, goal);
        double reckoned = alone + WindingDesign.shift(former.wind(wound), goal);
        Interval calibration =
                new Interval(measured.value() / reckoned, measured.low() / reckoned, measured.high() / reckoned);
        // eddy currents take the same share of the changed coil as of this one
        Interval scale = calibration.times(reckoned / alone);
        double value = turns(former, goal, scale.value());
        double fewest = turns(former, goal, scale.high()), most = turns(former, goal, scale.low());
        return new TurnsChange(calibration, new Interval(value, fewest, most), (int) Math.round(value) - wound);
    }

    private static double turns(Former former, WindingDesign.Goal goal, double scale) {
        double reckoned = goal.inductance() / scale;
        return WindingDesign.turnsFor(former, new WindingDesign.Goal(reckoned, goal.frequency(), goal.celsius()));
    }
}
