package galena.trade.coil;

import galena.trade.wire.OutOfRange;

/** Self-capacitance of a coil, when a published rule covers it. */
public sealed interface SelfCapacitance permits SelfCapacitance.Known, SelfCapacitance.NotKnown {
    /**
     * @param farads with what it may lie between
     * @param source whose rule
     */
    record Known(Interval farads, String source) implements SelfCapacitance {
        /**
         * Frequency at which this capacitance alone tunes an inductance (Hz).
         *
         * @param inductance H
         */
        public Interval selfResonance(double inductance) {
            OutOfRange.requirePositive("inductance (H)", inductance);
            return new Interval(
                    resonance(inductance, farads.value()),
                    resonance(inductance, farads.high()),
                    resonance(inductance, farads.low()));
        }

        private static double resonance(double inductance, double farads) {
            return 1 / (2 * Math.PI * Math.sqrt(inductance * farads));
        }
    }

    /** @param reason why no figure is given, and how to get one */
    record NotKnown(String reason) implements SelfCapacitance {}
}
