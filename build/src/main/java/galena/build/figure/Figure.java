package galena.build.figure;

import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;

/** One number that a person is shown, or why there is none. */
public sealed interface Figure {
    /** What it is of: "carrier", "harmonic 2 of tank voltage". */
    String quantity();

    /** As text, no finer than its interval; for a missing one the reason. */
    String text();

    /**
     * A number with its interval.
     *
     * @param value in the SI unit of {@code unit}
     * @param low lower end of the interval, at most {@code value}
     * @param high upper end, at least {@code value}
     * @param basis where it comes from: "predicted, tolerances at 95 %", "measured, 10x probe"
     * @param quantity what it is of
     * @param at where: a net, a part, a distance; empty when there is one only
     */
    record Known(double value, Unit unit, double low, double high, String basis, String quantity, String at)
            implements Figure {
        public Known {
            if (!Double.isFinite(value) || !(low <= value) || !(value <= high)) {
                throw new IllegalArgumentException(
                        quantity + ": " + value + " does not lie in its interval " + low + " to " + high);
            }
        }

        @Override
        public String text() {
            return Engineering.within(value, low, high, unit);
        }

        /** "998.6 kHz (985 to 1012 kHz)" in the unit's own steps. */
        public String interval() {
            return Engineering.within(low, low, low + (high - low), unit) + " to "
                    + Engineering.within(high, high - (high - low), high, unit);
        }

        public double halfWidth() {
            return (high - low) / 2;
        }
    }

    /**
     * No number.
     *
     * @param reason in words that follow "not known: "
     */
    record Missing(String quantity, String reason) implements Figure {
        @Override
        public String text() {
            return "not known: " + reason;
        }
    }
}
