package galena.trade.source;

import java.math.BigDecimal;

/**
 * A unit as printed, taken apart into SI prefix and base unit: "pF", "µA", "MHz", "ohm". Empty stands for a pure number.
 *
 * @param exponent power of ten that the printed number is multiplied with, −15 to 9
 * @param base SI base or derived unit without prefix; "Ω" for "ohm"
 */
public record PrintedUnit(int exponent, String base) {
    private static final String PREFIXES = "fpnµumkMG";
    private static final int[] EXPONENTS = {-15, -12, -9, -6, -6, -3, 3, 6, 9};

    /** Reads a printed unit. Case matters: m is milli, M is mega. */
    public static PrintedUnit of(String printed) {
        if (printed.equals("ohm")) return new PrintedUnit(0, "Ω");
        if (printed.equals("nV/sqrt(Hz)")) return new PrintedUnit(-9, "V/√Hz");
        if (printed.length() > 1 && !printed.equals("Hz") && !printed.equals("eV")) {
            int prefix = PREFIXES.indexOf(printed.charAt(0));
            if (prefix >= 0) return new PrintedUnit(EXPONENTS[prefix], printed.substring(1));
        }
        return new PrintedUnit(0, printed);
    }

    /** A printed number in SI, shifted as a decimal: 4.7 pF is the double nearest to 4.7e-12. */
    public double toSi(double number) {
        return BigDecimal.valueOf(number).scaleByPowerOfTen(exponent).doubleValue();
    }
}
