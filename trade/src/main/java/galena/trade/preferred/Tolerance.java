package galena.trade.preferred;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Tolerance letters of IEC 60062. Recalled, not read again.
 *
 * @param below greatest deviation downwards, as a positive ratio, or in farads if {@code absolute}
 * @param above greatest deviation upwards
 * @param absolute true for capacitors under 10 pF, whose letters mean picofarads
 */
public record Tolerance(double below, double above, boolean absolute) {
    private static final Map<String, Double> PERCENT = Map.ofEntries(
            Map.entry("E", 0.005),
            Map.entry("L", 0.01),
            Map.entry("P", 0.02),
            Map.entry("W", 0.05),
            Map.entry("B", 0.1),
            Map.entry("C", 0.25),
            Map.entry("D", 0.5),
            Map.entry("F", 1.0),
            Map.entry("G", 2.0),
            Map.entry("H", 3.0),
            Map.entry("J", 5.0),
            Map.entry("K", 10.0),
            Map.entry("M", 20.0),
            Map.entry("N", 30.0));

    private static final Map<String, double[]> UNEVEN = Map.of(
            "Q", new double[] {10, 30},
            "T", new double[] {10, 50},
            "S", new double[] {20, 50},
            "Z", new double[] {20, 80});

    private static final Map<String, Double> PICOFARADS = Map.of("B", 0.1, "C", 0.25, "D", 0.5, "F", 1.0, "G", 2.0);

    /** Capacitors below this (F) carry absolute tolerances. */
    public static final double ABSOLUTE_BELOW = 10e-12;

    /** What a letter means on a resistor, or on a capacitor of 10 pF and more. */
    public static Tolerance ofLetter(String letter) {
        Double even = PERCENT.get(letter);
        if (even != null) return new Tolerance(even / 100, even / 100, false);
        double[] uneven = UNEVEN.get(letter);
        if (uneven != null) return new Tolerance(uneven[0] / 100, uneven[1] / 100, false);
        throw new MarkingException(letter, "is no tolerance letter", "Known: B C D E F G H J K L M N P Q S T W Z");
    }

    /** What a letter means on a capacitor of this value (F). */
    public static Tolerance ofLetter(String letter, double capacitance) {
        if (capacitance >= ABSOLUTE_BELOW * (1 - 1e-9)) return ofLetter(letter);
        Double picofarads = PICOFARADS.get(letter);
        if (picofarads == null) {
            throw new MarkingException(
                    letter, "is no tolerance letter for a capacitor under 10 pF", "Known there: B C D F G");
        }
        return new Tolerance(picofarads / 1e12, picofarads / 1e12, true);
    }

    /** The letter of this tolerance, if there is one. */
    public Optional<String> letter() {
        if (absolute) {
            return PICOFARADS.entrySet().stream()
                    .filter(e -> close(e.getValue() / 1e12, below) && close(e.getValue() / 1e12, above))
                    .map(Map.Entry::getKey)
                    .findFirst();
        }
        Optional<String> even = PERCENT.entrySet().stream()
                .filter(e -> close(e.getValue() / 100, below) && close(e.getValue() / 100, above))
                .map(Map.Entry::getKey)
                .findFirst();
        if (even.isPresent()) return even;
        return UNEVEN.entrySet().stream()
                .filter(e -> close(e.getValue()[0] / 100, below) && close(e.getValue()[1] / 100, above))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private static boolean close(double a, double b) {
        return Math.abs(a - b) <= 1e-9 * Math.abs(a);
    }

    /** Least and greatest value of a part of this nominal value. */
    public List<Double> limits(double nominal) {
        return absolute
                ? List.of(nominal - below, nominal + above)
                : List.of(nominal * (1 - below), nominal * (1 + above));
    }
}
