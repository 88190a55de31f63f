package galena.build.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * How values of a unit are shown: percent, °C, hours or the SI unit itself.
 *
 * @param factor SI units in one shown unit
 * @param zero what the shown scale calls zero (SI)
 * @param symbol behind the number
 * @param prefixes that may precede the symbol, smallest first, as {@link Unit#prefixes()}
 */
record Face(BigDecimal factor, BigDecimal zero, String symbol, String prefixes) {
    private static final double TWO_HOURS = 7200;
    private static final double TWO_MINUTES = 120;

    /** The face for values about as large as {@code value} (SI): hours from two hours up, minutes from two up. */
    static Face of(double value, Unit unit) {
        return switch (unit) {
            case FRACTION -> plain(Scales.PERCENT, unit.symbol());
            case KELVIN -> new Face(BigDecimal.ONE, Scales.ZERO_CELSIUS, unit.symbol(), "");
            case PPM_PER_KELVIN -> plain(Scales.PPM, unit.symbol());
            case COULOMB -> new Face(Scales.HOUR, BigDecimal.ZERO, unit.symbol(), unit.prefixes());
            case FARAD -> si(unit, unit.prefixes().replace("m", "")); // 4700 µF: the trade never writes mF
            case SECOND ->
                Math.abs(value) >= TWO_HOURS
                        ? plain(Scales.HOUR, "h")
                        : Math.abs(value) >= TWO_MINUTES ? plain(Scales.MINUTE, "min") : si(unit, unit.prefixes());
            default -> si(unit, unit.prefixes());
        };
    }

    private static Face plain(BigDecimal factor, String symbol) {
        return new Face(factor, BigDecimal.ZERO, symbol, "");
    }

    private static Face si(Unit unit, String prefixes) {
        return new Face(BigDecimal.ONE, BigDecimal.ZERO, unit.symbol(), prefixes);
    }

    /** The number on this face of a value in SI. */
    BigDecimal number(double value) {
        BigDecimal fromZero = new BigDecimal(Double.toString(value)).subtract(zero);
        return fromZero.divide(factor, new MathContext(Math.max(20, fromZero.precision() + 10)));
    }

    /** The prefix that leaves one to three figures before the point, as far as this face has prefixes; blank for none. */
    char prefix(int leadingPower) {
        char best = ' ';
        int bestPower = 0;
        for (int i = 0; i < prefixes.length(); i++) {
            char prefix = prefixes.charAt(i);
            int power = Prefix.exponent(prefix);
            boolean fits = power <= leadingPower;
            boolean closer = fits ? power > bestPower || bestPower > leadingPower : best == ' ' && leadingPower < 0;
            if (closer) {
                best = prefix;
                bestPower = power;
            }
        }
        return leadingPower >= 0 && bestPower < 0 ? ' ' : best;
    }

    String join(String digits, char prefix) {
        String tail = (prefix == ' ' ? "" : Prefix.printed(prefix)) + symbol;
        boolean close = tail.isEmpty() || tail.equals(Unit.RATIO.symbol());
        return digits + (close ? "" : " ") + tail;
    }
}
