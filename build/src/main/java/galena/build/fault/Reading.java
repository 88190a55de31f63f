package galena.build.fault;

import galena.build.quantity.Unit;

/**
 * One reading that a builder can take of a transmitter, its audio at rest.
 *
 * @param what quantity
 * @param at the test point for a carrier level, the net for a direct voltage; empty for what belongs to the whole
 * @param where to put the tip, in words: "TP1", "Q1 source"; empty for what belongs to the whole
 */
public record Reading(What what, String at, String where) {
    /** What is read. */
    public enum What {
        /** Frequency on a receiver or a counter, Hz; there is none when nothing oscillates. */
        CARRIER("carrier", Unit.HERTZ),
        /** Current drawn from the supply, A. */
        SUPPLY("supply current", Unit.AMPERE),
        /** Peak of the carrier at a test point through its probe, V. */
        LEVEL("carrier level", Unit.VOLT),
        /** Mean voltage of a net against ground, V, on a meter of 10 MΩ behind 100 kΩ at its tip. */
        DIRECT("direct voltage", Unit.VOLT),
        /** Peak audio voltage of a net with a 1 kHz tone at the programme's level, V; the oscillator at rest. */
        AUDIO("audio voltage", Unit.VOLT);

        private final String words;
        private final Unit unit;

        What(String words, Unit unit) {
            this.words = words;
            this.unit = unit;
        }

        public Unit unit() {
            return unit;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** "direct voltage at Q1 source" */
    @Override
    public String toString() {
        return where.isEmpty() ? what.toString() : what + " at " + where;
    }
}
