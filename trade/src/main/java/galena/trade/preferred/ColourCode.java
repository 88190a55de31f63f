package galena.trade.preferred;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Coloured bands of IEC 60062 on resistors: three bands (no tolerance band: 20 %), four, or five; a sixth band, the
 * temperature coefficient, is told apart by its place and not read. Recalled, not read again.
 */
public final class ColourCode {
    private static final List<String> DIGITS =
            List.of("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white");

    private static final Map<String, Double> TOLERANCES = Map.of(
            "brown", 0.01,
            "red", 0.02,
            "green", 0.005,
            "blue", 0.0025,
            "violet", 0.001,
            "gold", 0.05,
            "silver", 0.1);

    private static final double NO_BAND = 0.2;

    private ColourCode() {}

    /**
     * @param ohms value (Ω)
     * @param tolerance ± as a ratio
     */
    public record Marked(double ohms, double tolerance) {}

    /** Value and tolerance of three to six bands, read from the end where they crowd. */
    public static Marked read(List<String> bands) {
        if (bands.size() < 3 || bands.size() > 6) {
            throw new MarkingException(String.join(" ", bands), "is no row of bands", "Resistors carry three to six");
        }
        List<String> colours = bands.stream().map(ColourCode::known).toList();
        int figures = colours.size() >= 5 ? 3 : 2;
        StringBuilder number = new StringBuilder();
        for (int i = 0; i < figures; i++) number.append(digit(colours.get(i)));
        double ohms = Double.parseDouble(number + "e" + exponent(colours.get(figures)));
        double tolerance = colours.size() == 3 ? NO_BAND : tolerance(colours.get(figures + 1));
        return new Marked(ohms, tolerance);
    }

    /**
     * The bands of a value: four for two figures, five for three; three if the tolerance is 20 %.
     *
     * @param ohms (Ω)
     * @param tolerance ± as a ratio; one that a colour stands for
     */
    public static List<String> write(double ohms, double tolerance) {
        if (!(ohms > 0) || Double.isInfinite(ohms)) {
            throw new MarkingException(Double.toString(ohms), "has no bands", "A resistor has a value above zero");
        }
        BigDecimal exact = new BigDecimal(ohms).round(new MathContext(12)).stripTrailingZeros();
        if (exact.precision() > 3) {
            throw new MarkingException(Double.toString(ohms), "needs more than three figures", "Round it first");
        }
        boolean bare = Math.abs(tolerance - NO_BAND) < 1e-9;
        int figures = exact.precision() == 3 || (!bare && tolerance < 0.05 - 1e-9) ? 3 : 2;
        int exponent = exact.precision() - exact.scale() - figures;
        String digits = exact.scaleByPowerOfTen(-exponent).toBigInteger().toString();
        List<String> bands = new ArrayList<>();
        for (char digit : digits.toCharArray()) bands.add(DIGITS.get(digit - '0'));
        bands.add(multiplier(exponent, ohms));
        if (!bare) bands.add(toleranceColour(tolerance));
        else if (figures == 3) {
            throw new MarkingException(
                    Double.toString(ohms), "has three figures, which 20 % bands don't show", "Give a closer tolerance");
        }
        return bands;
    }

    private static String known(String colour) {
        String lower = colour.strip().toLowerCase(Locale.ROOT);
        if (DIGITS.contains(lower) || lower.equals("gold") || lower.equals("silver")) return lower;
        throw new MarkingException(
                colour, "is no band colour", "Known: " + String.join(", ", DIGITS) + ", gold, silver");
    }

    private static int digit(String colour) {
        int digit = DIGITS.indexOf(colour);
        if (digit < 0) {
            throw new MarkingException(colour, "stands for no digit", "Turn the part round: gold and silver come last");
        }
        return digit;
    }

    private static int exponent(String colour) {
        return switch (colour) {
            case "gold" -> -1;
            case "silver" -> -2;
            default -> DIGITS.indexOf(colour);
        };
    }

    private static String multiplier(int exponent, double ohms) {
        if (exponent == -1) return "gold";
        if (exponent == -2) return "silver";
        if (exponent >= 0 && exponent < DIGITS.size()) return DIGITS.get(exponent);
        throw new MarkingException(Double.toString(ohms), "lies outside what bands reach", "Use the letter code");
    }

    private static double tolerance(String colour) {
        Double tolerance = TOLERANCES.get(colour);
        if (tolerance == null) {
            throw new MarkingException(
                    colour, "stands for no tolerance", "Known: brown, red, green, blue, violet, gold, silver");
        }
        return tolerance;
    }

    private static String toleranceColour(double tolerance) {
        Optional<String> colour = TOLERANCES.entrySet().stream()
                .filter(e -> Math.abs(e.getValue() - tolerance) < 1e-9)
                .map(Map.Entry::getKey)
                .findFirst();
        return colour.orElseThrow(() -> new MarkingException(
                Double.toString(tolerance), "has no colour", "Known: 0.1 0.25 0.5 1 2 5 10 and 20 %"));
    }
}
