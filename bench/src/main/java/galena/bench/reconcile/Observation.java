package galena.bench.reconcile;

import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.quantity.Quantity;
import galena.build.readings.Asked;
import galena.signal.Estimate;

/**
 * A logged reading as the fit takes it.
 *
 * @param entry as logged
 * @param asked of the model
 * @param value sizes as natural logarithms, levels in dB, mean voltages in V
 * @param sigma standard deviation of reading and model together, in the same
 */
record Observation(LogEntry entry, Asked asked, double value, double sigma) {
    private static final double CARRIER = 1e-4;
    private static final double LEVEL = 0.05;
    private static final double METER = 0.01;
    private static final double DECIBEL = 1;

    private static final double LAW_CARRIER = 1e-5;
    private static final double LAW_LEVEL = 0.01;
    private static final double LAW_METER = 0.003;
    private static final double LAW_DECIBEL = 0.5;

    static Observation of(LogEntry entry, Asked asked) {
        double value = entry.value().value();
        double own = entry.uncertainty()
                .map(Quantity::value)
                .map(half -> half / Estimate.NORMAL_95 / (asked.byRatio() ? Math.abs(value) : 1))
                .orElse(usual(asked.what(), value));
        return new Observation(
                entry, asked, asked.byRatio() ? Math.log(value) : value, Math.hypot(own, law(asked.what(), value)));
    }

    /** Whether it can be taken: a size is above zero. */
    static boolean isUsable(LogEntry entry, Asked asked) {
        return asked.canBeHad() && (!asked.byRatio() || entry.value().value() > 0);
    }

    /** What a reading without a noted uncertainty may be wrong by, one standard deviation; common practice. */
    private static double usual(What what, double value) {
        return switch (what) {
            case CARRIER -> CARRIER;
            case AMPLITUDE -> LEVEL;
            case CURRENT -> METER;
            case VOLTAGE -> METER * Math.max(1, Math.abs(value));
            default -> DECIBEL;
        };
    }

    /** What the device laws themselves may be wrong by, one standard deviation; common practice. */
    static double law(What what, double value) {
        return switch (what) {
            case CARRIER -> LAW_CARRIER;
            case AMPLITUDE -> LAW_LEVEL;
            case CURRENT -> LAW_METER;
            case VOLTAGE -> LAW_METER * Math.max(1, Math.abs(value));
            default -> LAW_DECIBEL;
        };
    }

    /** The same reading had it been this times larger, as it was meant. */
    Observation times(double factor) {
        double meant = asked.byRatio() ? value + Math.log(factor) : factor * value;
        return new Observation(entry, asked, meant, asked.byRatio() ? sigma : Math.abs(factor) * sigma);
    }

    /** With a larger error. */
    Observation loosened(double wider) {
        return new Observation(entry, asked, value, wider);
    }

    /** The logged unit's number for a value of the model's. */
    double shown(double modelled) {
        return asked.byRatio() ? Math.exp(modelled) : modelled;
    }
}
