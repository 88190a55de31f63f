package galena.build.readings;

import galena.build.folder.Build;
import galena.build.folder.LogEntry;
import galena.build.folder.LogEntry.What;
import galena.signal.Estimate;
import java.util.Optional;
import org.hipparchus.util.FastMath;

/**
 * One reading asked for. What modulation does is not among them: see {@link #canBeHad}.
 *
 * @param floor of an amplitude, V: below about this its errors are volts, above it shares
 * @param instrument by which an amplitude was read, if it is named: its readings share an error
 * @param gain that error, one standard deviation, as a share of the reading
 */
public record Asked(What what, Situation situation, double floor, Optional<String> instrument, double gain) {
    /** V: what a scope still shows where nothing swings. */
    private static final double SHOWN_OF_NOTHING = 2e-3;
    /** In standard deviations of a reading: from there on its errors count as shares of it. */
    private static final double CLEAR = 3;

    /** Of a scope with its probe: ±3 % at 95 % (common practice). */
    private static final double GAIN = 0.015;

    public Asked {
        if (!(floor > 0)) throw new IllegalArgumentException("the floor is above zero, not " + floor);
    }

    /** With a usual floor. */
    public Asked(What what, Situation situation) {
        this(what, situation, SHOWN_OF_NOTHING, Optional.empty(), 0);
    }

    /** A logged reading. */
    public static Asked of(Build build, LogEntry entry) {
        double floor = entry.uncertainty()
                .map(half -> CLEAR * half.value() / Estimate.NORMAL_95)
                .filter(f -> f > 0)
                .orElse(SHOWN_OF_NOTHING);
        Situation situation = Situation.of(build, entry);
        Optional<String> instrument =
                entry.what() == What.AMPLITUDE ? entry.circumstances().instrument() : Optional.empty();
        if (instrument.isEmpty()) return new Asked(entry.what(), situation, floor, instrument, 0);
        double value = Math.max(entry.value().value(), floor);
        double stated = entry.uncertainty()
                .map(half -> half.value() / Estimate.NORMAL_95 / value)
                .orElse(GAIN);
        return new Asked(entry.what(), situation, floor, instrument, Math.min(stated, GAIN));
    }

    /** Of an instrument by which nothing else was read. */
    Asked alone() {
        return new Asked(what, situation, floor, Optional.empty(), 0);
    }

    /** Whether this model answers it: the carrier unmodulated, levels and mean values; at a point where one is needed. */
    public boolean canBeHad() {
        return switch (what) {
            case CARRIER, CURRENT -> true;
            case VOLTAGE, AMPLITUDE, SECOND_HARMONIC, THIRD_HARMONIC ->
                situation.point().isPresent();
            case POSITIVE_PEAK, NEGATIVE_PEAK, DISTORTION, SWING -> false;
        };
    }

    /** Whether its errors are shares of it: the model then gives its natural logarithm. */
    public boolean byRatio() {
        return switch (what) {
            case CARRIER, CURRENT, AMPLITUDE -> true;
            default -> false;
        };
    }

    /** The model's value for a number in the log's unit; of an amplitude the natural logarithm, straight below the floor. */
    public double modelled(double read) {
        if (what == What.AMPLITUDE) return FastMath.asinh(read / floor) + Math.log(floor / 2);
        return byRatio() ? Math.log(read) : read;
    }

    /** The number in the log's unit for a value of the model's. */
    public double shown(double modelled) {
        if (what == What.AMPLITUDE) return floor * Math.sinh(Math.max(0, modelled - Math.log(floor / 2)));
        return byRatio() ? Math.exp(modelled) : modelled;
    }

    /** What a small error of a reading, in the log's unit, is in the model's. */
    public double error(double read, double error) {
        if (what == What.AMPLITUDE) return error / Math.hypot(read, floor);
        return byRatio() ? error / Math.abs(read) : error;
    }
}
