package galena.bench.reconcile;

import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.build.quantity.Quantity;
import galena.build.readings.Asked;
import galena.signal.Estimate;
import java.util.List;

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
    /** V: what a scope shows of a carrier at least. */
    private static final double SEEN = 1e-3;

    private static final double METER = 0.01;
    private static final double DECIBEL = 1;

    private static final double LAW_CARRIER = 1e-5;
    private static final double LAW_LEVEL = 0.01;
    private static final double LAW_METER = 0.003;
    private static final double LAW_DECIBEL = 0.5;

    /** dB: fainter harmonics are what is left of others that cancel, and each halving doubles what they may be wrong by. */
    private static final double FAINT = -55;

    /** Of its stated error: so much at least is a reading's own. */
    private static final double LEAST_OWN = 0.3;

    private static final double ROUGH_CARRIER = 1e-3;
    private static final double ROUGH_LEVEL = 0.03;
    private static final double ROUGH_DECIBEL = 1;

    static Observation of(LogEntry entry, Asked asked) {
        double value = entry.value().value();
        double own = entry.uncertainty()
                .map(Quantity::value)
                .map(half -> asked.error(value, unshared(half / Estimate.NORMAL_95, asked.gain() * value)))
                .orElse(usual(asked, value));
        return new Observation(entry, asked, asked.modelled(value), Math.hypot(own, law(asked.what(), value)));
    }

    /** What a reading errs by beyond what it shares with others of its instrument. */
    private static double unshared(double all, double shared) {
        return Math.sqrt(Math.max(all * all - shared * shared, LEAST_OWN * all * LEAST_OWN * all));
    }

    /** Whether it can be taken: a size is above zero, but for an amplitude, which says by 0 V that nothing swings. */
    static boolean isUsable(LogEntry entry, Asked asked) {
        boolean above = entry.value().value() > 0 || asked.what() == What.AMPLITUDE;
        return asked.canBeHad() && (!asked.byRatio() || above);
    }

    /** What a reading without a noted uncertainty may be wrong by, one standard deviation; common practice. */
    private static double usual(Asked asked, double value) {
        return switch (asked.what()) {
            case CARRIER -> CARRIER;
            case AMPLITUDE -> Math.max(LEVEL, asked.error(value, SEEN));
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
            default -> LAW_DECIBEL * Math.max(1, Math.pow(10, (FAINT - value) / 20));
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

    /** The same readings, less exact: where steps of a fit are long, exact ones hold it to a narrow bent valley. */
    static List<Observation> roughly(List<Observation> exact) {
        return exact.stream()
                .map(o -> o.loosened(Math.hypot(o.sigma(), rough(o.asked.what()))))
                .toList();
    }

    private static double rough(What what) {
        return switch (what) {
            case CARRIER -> ROUGH_CARRIER;
            case SECOND_HARMONIC, THIRD_HARMONIC -> ROUGH_DECIBEL;
            default -> ROUGH_LEVEL;
        };
    }

    /** The logged unit's number for a value of the model's. */
    double shown(double modelled) {
        return asked.shown(modelled);
    }
}
