package galena.trade.battery;

import galena.trade.source.Basis;

/** How long a battery lasts at a steady current. */
public sealed interface Endurance {
    /**
     * It falls to the end voltage after some hours.
     *
     * @param hours typical
     * @param lowHours with the least capacity held; equal to {@code hours} where one figure is held
     * @param highHours with the greatest
     * @param usedCharge part of the delivered charge used by then, 0..1; 1 when it is spent before the end voltage
     * @param spent whether its charge ran out above the end voltage
     * @param basis weakest of what went in: a typical shape, not a promise
     */
    record Lasts(double hours, double lowHours, double highHours, double usedCharge, boolean spent, Basis basis)
            implements Endurance {}

    /**
     * Even fresh it stays below the end voltage.
     *
     * @param freshVoltage terminal voltage at that current (V)
     */
    record TooLow(double freshVoltage) implements Endurance {}
}
