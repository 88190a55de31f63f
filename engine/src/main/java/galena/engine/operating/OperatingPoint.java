package galena.engine.operating;

import galena.engine.equations.Equations;

/** What the search for an operating point came to. */
public sealed interface OperatingPoint {
    /** The methods, in the order in which they are tried. */
    enum Rung {
        /** Newton from zero with a line search: enough for nearly every circuit of this kind. */
        NEWTON("Newton's method"),
        /** All sources raised together from zero, each step from the last: follows one branch. */
        SUPPLY_STEPPING("raising the supply in steps"),
        /** The circuit's own switch-on with strongly damped steps, until it rests: finds a point when branches fold. */
        DAMPED_SWITCH_ON("a damped switch-on");

        private final String words;

        Rung(String words) {
            this.words = words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /**
     * The operating point.
     *
     * @param x unknowns by number, ground first; volts and amperes; not to be changed
     * @param rung the method that held
     * @param iterations Newton iterations spent on that rung
     * @param residual the largest remaining current (A) or voltage (V) of any row
     */
    record Found(Equations equations, double[] x, Rung rung, int iterations, double residual)
            implements OperatingPoint {
        /** Volts at a net. */
        public double voltage(String net) {
            return x[equations.net(net)];
        }

        /** Amperes into the first pin of a coil, battery, resonator or voltage source. */
        public double current(String part) {
            return x[
                    equations
                            .current(part)
                            .orElseThrow(() -> new IllegalArgumentException(part + " has no current of its own"))];
        }
    }

    /**
     * No operating point was reached on any rung.
     *
     * @param net where the currents failed to balance by most on the first rung, in words
     * @param part a part at that place whose current depends most sharply on voltage
     * @param imbalance amperes or volts left there
     * @param reachedSupply share of the supply at which stepping stopped, 0 to 1
     */
    record NotFound(String net, String part, double imbalance, double reachedSupply) implements OperatingPoint {
        @Override
        public String toString() {
            return String.format(
                    java.util.Locale.ROOT,
                    "no operating point: %s does not balance (%.3g left), %s is the steepest part there; with the supply"
                            + " raised in steps it holds up to %.0f %%",
                    net,
                    imbalance,
                    part,
                    100 * reachedSupply);
        }
    }
}
