package galena.trade.source;

/**
 * A unit as printed, taken apart into SI prefix and base unit: "pF", "µA", "MHz", "ohm". Empty stands for a pure number.
 *
 * @param factor what the printed number is multiplied with; a power of ten from −15 to 9
 * @param base SI base or derived unit without prefix; "Ω" for "ohm"
 */
public record PrintedUnit(double factor, String base) {
    private static final String PREFIXES = "fpnµumkMG";
    private static final double[] FACTORS = {1e-15, 1e-12, 1e-9, 1e-6, 1e-6, 1e-3, 1e3, 1e6, 1e9};

    /** Reads a printed unit. Case matters: m is milli, M is mega. */
    public static PrintedUnit of(String printed) {
        if (printed.equals("ohm")) return new PrintedUnit(1, "Ω");
        if (printed.equals("nV/sqrt(Hz)")) return new PrintedUnit(1e-9, "V/√Hz");
        if (printed.length() > 1 && !printed.equals("Hz") && !printed.equals("eV")) {
            int prefix = PREFIXES.indexOf(printed.charAt(0));
            if (prefix >= 0) return new PrintedUnit(FACTORS[prefix], printed.substring(1));
        }
        return new PrintedUnit(1, printed);
    }

    public double toSi(double number) {
        // 1e-12 and its kin aren't exact in binary: dividing by the exact power of ten rounds once, not twice.
        return factor < 1 ? number / Math.rint(1 / factor) : number * factor;
    }
}
