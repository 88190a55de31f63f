package galena.build.fault;

import galena.build.fault.Reading.What;
import galena.build.figure.Figure;
import galena.build.predict.PointReading;
import galena.build.predict.Prediction.Oscillation;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How far a reading may lie from its typical value in a sound build, and by the same measure in a faulty one. Sizes (levels,
 * currents, frequencies) spread by ratio, voltages by difference.
 */
public final class Windows {
    /** A voltmeter and the eye together, relative (common practice). */
    private static final double METER = 0.03;

    /** What a meter shows as nothing worth telling, V. */
    private static final double SMALLEST_VOLTAGE = 0.03;

    /** A level read from a screen through a probe, by ratio (common practice). */
    private static final double SCREEN = 1.2;

    /** What a screen shows as no carrier, V. */
    private static final double NO_LEVEL = 0.02;

    /** What a meter shows as no current, A. */
    private static final double NO_CURRENT = 20e-6;

    /** What drowns beside the carrier, V. */
    private static final double NO_AUDIO = 5e-3;

    /** Audio levels follow the tolerance of a few resistors. */
    private static final double AUDIO = 1.25;

    private final Map<Reading, Figure.Known> sound;
    private final Symptoms healthy;

    private Windows(Map<Reading, Figure.Known> sound, Symptoms healthy) {
        this.sound = sound;
        this.healthy = healthy;
    }

    /** What a reading may be: both ends in its unit. */
    record Span(double low, double high) {
        boolean apartFrom(Span other) {
            return high < other.low || low > other.high;
        }
    }

    /**
     * @param study of the build
     * @param oscillation its prediction, with windows of every net, of the carrier and the supply current
     * @param points read through their probes
     * @param spread windows of mean voltages over drawn builds, by net, which are better than the prediction's; may be empty
     */
    public static Windows of(
            FaultStudy study, Oscillation oscillation, List<PointReading> points, Map<String, Figure.Known> spread) {
        Map<Reading, Figure.Known> sound = new LinkedHashMap<>();
        for (Reading reading : study.readings()) {
            switch (reading.what()) {
                case CARRIER -> sound.put(reading, oscillation.carrier());
                case SUPPLY -> put(sound, reading, oscillation.supplyCurrent());
                case LEVEL ->
                    points.stream()
                            .filter(p -> p.point().name().equals(reading.at()))
                            .forEach(p -> sound.put(reading, p.peak()));
                case DIRECT -> {
                    oscillation.meanVoltages().forEach(f -> {
                        if (f instanceof Figure.Known k && k.at().equals(reading.at())) sound.put(reading, k);
                    });
                    if (spread.containsKey(reading.at())) put(sound, reading, spread.get(reading.at()));
                }
                case AUDIO -> {
                    // by ratio alone
                }
            }
        }
        return new Windows(sound, study.healthy());
    }

    private static void put(Map<Reading, Figure.Known> sound, Reading reading, Figure figure) {
        if (figure instanceof Figure.Known k) sound.put(reading, k);
    }

    /** Around the sound build's own reading: the window to print beside it. */
    Span sound(Reading reading) {
        return around(reading, healthy.value(reading).orElse(0));
    }

    /** Around a value that a copy with typical parts reads. */
    Span around(Reading reading, double value) {
        Figure.Known window = sound.get(reading);
        return switch (reading.what()) {
            case DIRECT -> difference(window, value);
            case AUDIO -> ratio(value, 1 / AUDIO, AUDIO, NO_AUDIO);
            case CARRIER -> byWindow(window, value, 1.002, 0);
            case SUPPLY -> byWindow(window, value, 1 + METER, NO_CURRENT);
            case LEVEL -> byWindow(window, value, SCREEN, NO_LEVEL);
        };
    }

    private static Span difference(Figure.@Nullable Known window, double value) {
        double least = Math.max(SMALLEST_VOLTAGE, METER * Math.abs(value));
        if (window == null) return new Span(value - least, value + least);
        return new Span(
                value - Math.max(least, window.value() - window.low()),
                value + Math.max(least, window.high() - window.value()));
    }

    private static Span byWindow(Figure.@Nullable Known window, double value, double least, double nothing) {
        if (window == null || !(window.low() > 0)) return ratio(value, 1 / least, least, nothing);
        double down = Math.min(1 / least, window.low() / window.value());
        double up = Math.max(least, window.high() / window.value());
        return ratio(value, down, up, nothing);
    }

    private static Span ratio(double value, double down, double up, double nothing) {
        if (Math.abs(value) <= nothing) return new Span(Math.min(0, value), nothing);
        double a = value * down, b = value * up;
        return new Span(Math.min(a, b), Math.max(a, b));
    }

    /** How far two spans are apart, against the width of what is sound; zero where they meet. */
    double distance(Reading reading, Span one, Span other) {
        if (!one.apartFrom(other)) return 0;
        double gap = Math.max(other.low - one.high, one.low - other.high);
        if (reading.what() == What.DIRECT) return gap / Math.max(SMALLEST_VOLTAGE, one.high - one.low);
        double size = Math.max(Math.abs(one.high), Math.abs(other.high));
        return gap / size;
    }
}
