package galena.build.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Prints quantities with SI prefixes in steps of a thousand, and no finer than they are known. */
public final class Engineering {
    /** An interval's half-width is given two figures when it starts with 1, so that 1.4 isn't shown as 1. */
    private static final double TWO_FIGURES_BELOW = 2;

    private Engineering() {}

    /**
     * @param value in the SI unit of {@code unit}, finite
     * @param significant figures to print, 1 or more
     * @return "4.70 kΩ"
     */
    public static String print(double value, Unit unit, int significant) {
        if (significant < 1) throw new IllegalArgumentException("figures to print: " + significant);
        Face face = Face.of(value, unit);
        BigDecimal rounded = face.number(value).round(new MathContext(significant, RoundingMode.HALF_EVEN));
        if (rounded.signum() == 0) return face.join("0", ' ');
        return scaled(rounded, leading(rounded) - significant + 1, face);
    }

    /**
     * A value no finer than its interval: the last figure printed is the first that the interval's half-width moves.
     *
     * @param value in the SI unit of {@code unit}
     * @param low lower end of the interval (SI)
     * @param high upper end (SI), not below {@code low}
     */
    public static String within(double value, double low, double high, Unit unit) {
        if (!(low <= high)) throw new IllegalArgumentException("an interval runs upwards: " + low + " to " + high);
        Face face = Face.of(value, unit);
        BigDecimal half = face.number(high).subtract(face.number(low)).divide(BigDecimal.valueOf(2));
        if (half.signum() == 0) return exact(value, unit);
        int place = leading(half);
        if (half.movePointLeft(place).doubleValue() < TWO_FIGURES_BELOW) place--;
        return scaled(face.number(value).setScale(-place, RoundingMode.HALF_EVEN), place, face);
    }

    /** The shortest text that reads back to the same number where the unit's factor is a power of ten: "4.7 kΩ". */
    public static String exact(double value, Unit unit) {
        Face face = Face.of(value, unit);
        BigDecimal number = face.number(value).stripTrailingZeros();
        if (number.signum() == 0) return face.join("0", ' ');
        return scaled(number, -number.scale(), face);
    }

    /** Power of ten of the first figure: 0 for 4.7, 3 for 4700. */
    private static int leading(BigDecimal number) {
        return number.precision() - number.scale() - 1;
    }

    /** @param place power of ten of the last figure to print, before the prefix is taken out */
    private static String scaled(BigDecimal rounded, int place, Face face) {
        char prefix = face.prefix(rounded.signum() == 0 ? place : leading(rounded));
        int exponent = prefix == ' ' ? 0 : Prefix.exponent(prefix);
        int decimals = Math.max(0, exponent - place);
        String digits = rounded.movePointLeft(exponent)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .toPlainString();
        return face.join(digits, prefix);
    }
}
