package galena.build.depth;

import java.util.OptionalDouble;
import java.util.function.DoubleFunction;

/**
 * The highest level that still keeps a limit, where every question is dear. What is used of the limit grows with the level by about
 * a power of it, so the next level asked for is a secant's on logarithms; a level that fails or can't be solved bounds it from above.
 */
final class CleanLevel {
    /** Used of the limit: a level that lies between these is taken, being within a hundredth of the highest or closer. */
    private static final double ENOUGH = 0.985, AIMED = 0.993;

    /** Shares of the level; where the oscillation quits above, each question is dearest. */
    private static final double CLOSE = 0.01, CLOSE_TO_NOTHING = 0.03;

    private static final int MOST_QUESTIONS = 10;

    /** Powers by which the use may grow; steeper is a corner, which halving finds. */
    private static final double LEAST_POWER = 0.7, USUAL_POWER = 0.9, MOST_POWER = 8;

    /** In one step no further than by these, as the power is only known nearby. */
    private static final double FARTHEST_UP = 1.6, FARTHEST_DOWN = 0.4;

    private final DoubleFunction<OptionalDouble> used;
    private double low, usedLow, high = Double.POSITIVE_INFINITY, usedHigh = Double.NaN;

    private CleanLevel(DoubleFunction<OptionalDouble> used) {
        this.used = used;
    }

    /**
     * @param first level to ask for, above zero
     * @param used at a level the share of the limit that is used, 1 at the limit; empty where there is no answer, as beyond it
     * @return the highest level asked for that keeps the limit; empty where none did
     */
    static OptionalDouble find(double first, DoubleFunction<OptionalDouble> used) {
        return new CleanLevel(used).found(first);
    }

    private OptionalDouble found(double first) {
        double level = first, power = USUAL_POWER;
        for (int k = 0; k < MOST_QUESTIONS; k++) {
            OptionalDouble there = used.apply(level);
            if (there.isPresent() && there.getAsDouble() <= 1) {
                low = level;
                usedLow = there.getAsDouble();
            } else {
                high = level;
                usedHigh = there.orElse(Double.NaN);
            }
            double close = Double.isNaN(usedHigh) ? CLOSE_TO_NOTHING : CLOSE;
            if (low > 0 && (usedLow >= ENOUGH || high - low < close * low)) break;
            if (low > 0 && usedHigh > usedLow)
                power = within(LEAST_POWER, Math.log(usedHigh / usedLow) / Math.log(high / low), MOST_POWER);
            level = next(power);
        }
        return low > 0 ? OptionalDouble.of(low) : OptionalDouble.empty();
    }

    private double next(double power) {
        if (low == 0)
            return high
                    * (Double.isNaN(usedHigh)
                            ? 0.6
                            : within(FARTHEST_DOWN, Math.pow(AIMED / usedHigh, 1 / power), 0.97));
        double aimed = low * within(1, Math.pow(AIMED / usedLow, 1 / power), FARTHEST_UP);
        if (Double.isInfinite(high)) return Math.max(aimed, low * (1 + CLOSE));
        double margin = 0.1 * (high - low);
        return Double.isNaN(usedHigh) ? Math.min(aimed, (low + high) / 2) : within(low + margin, aimed, high - margin);
    }

    private static double within(double least, double value, double most) {
        return Math.max(least, Math.min(most, value));
    }
}
