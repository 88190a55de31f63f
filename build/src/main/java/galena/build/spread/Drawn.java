package galena.build.spread;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import java.util.List;
import java.util.Map;

/**
 * One drawn build, solved and trimmed.
 *
 * @param number in its sequence; with the seed it calls the same build back
 * @param temperature °C
 * @param charge of the battery, 0 to 1; 1 where there is none
 * @param values by {@link Quantity}, in the order of the constants; a figure that could not be had is missing from the map
 * @param voltages mean of every net against ground while it runs on its channel, V; empty where nothing runs
 * @param failures what of the intent it does not meet, in words; empty for a good build
 * @param numbers the draw in the unit cube
 */
public record Drawn(
        long number,
        double temperature,
        double charge,
        Map<Quantity, Double> values,
        Map<String, Double> voltages,
        List<String> failures,
        double[] numbers) {
    public Drawn {
        values = Map.copyOf(values);
        voltages = Map.copyOf(voltages);
        failures = List.copyOf(failures);
    }

    /** Whether everything the intent names is met. */
    public boolean isGood() {
        return failures.isEmpty();
    }

    /** What is read of every drawn build; units as in {@link Figure}. */
    public enum Quantity {
        /** Startup margin, a fraction. */
        MARGIN("startup margin", Unit.FRACTION),
        /** Carrier as set in the file, before trimming, Hz. */
        AS_SET("carrier before trimming", Unit.HERTZ),
        /** Position of the trimmer that puts the carrier on its channel, a fraction. */
        TRIM("position of the trimmer on channel", Unit.FRACTION),
        /** By how much the carrier misses its channel at the trimmer's stop, Hz; of the copies alone that do. */
        MISSED("carrier beside its channel at the trimmer's stop", Unit.HERTZ),
        /** Peak carrier current in the output coil, A. */
        OUTPUT("carrier current in the output coil", Unit.AMPERE),
        /** Strongest harmonic of that current, dB. */
        HARMONIC("strongest harmonic of that current", Unit.DECIBEL),
        /** Supply current, A. */
        SUPPLY("supply current", Unit.AMPERE),
        /** Peak audio voltage at the source that gives the wanted depth, presets as set, V. */
        AUDIO("audio for the wanted depth", Unit.VOLT),
        /** Negative modulation peak with the audio at its own level, presets as set, a fraction. */
        DEPTH("negative peak at the audio's level", Unit.FRACTION),
        /** Envelope distortion at the wanted depth, a fraction. */
        DISTORTION("envelope distortion at the wanted depth", Unit.FRACTION);

        private final String words;
        private final Unit unit;

        Quantity(String words, Unit unit) {
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
}
