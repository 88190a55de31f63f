package galena.trade.preferred;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Three- and four-digit codes of IEC 60062: two or three figures and the power of ten, in picofarads on capacitors, in
 * ohms on resistors. A last digit of 9 on a capacitor multiplies by 0.1, an 8 by 0.01. On resistors an R marks the
 * decimal point of small values, which {@link LetterCode} reads.
 */
public enum DigitCode {
    CAPACITANCE(-12),
    RESISTANCE(0);

    private final int unitExponent;

    DigitCode(int unitExponent) {
        this.unitExponent = unitExponent;
    }

    /**
     * Value in F or Ω of three or four digits. "100" on a capacitor is 10 pF.
     *
     * @throws MarkingException if it isn't three or four digits
     */
    public double read(String code) {
        String digits = code.strip();
        if (!digits.matches("[0-9]{3,4}")) {
            throw new MarkingException(code, "is no digit code", "Two or three figures and a power of ten, as 472");
        }
        int last = digits.charAt(digits.length() - 1) - '0';
        int power = this == CAPACITANCE && last >= 8 ? last - 10 : last;
        String figures = digits.substring(0, digits.length() - 1);
        double value = Double.parseDouble(figures + "e" + (power + unitExponent));
        if (value == 0 && this == CAPACITANCE) {
            throw new MarkingException(code, "is nothing at all", "A capacitor has a value above zero");
        }
        return value;
    }

    /**
     * Code of a value.
     *
     * @param value in SI
     * @param figures 2 for a three-digit code, 3 for a four-digit code
     * @throws MarkingException if it doesn't fit
     */
    public String write(double value, int figures) {
        if (figures != 2 && figures != 3) throw new IllegalArgumentException("two or three figures, not " + figures);
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new MarkingException(Double.toString(value), "has no code", "A part has a value above zero");
        }
        BigDecimal exact = new BigDecimal(value).round(new MathContext(12)).scaleByPowerOfTen(-unitExponent);
        int power = exact.precision() - exact.scale() - figures;
        BigDecimal mantissa = exact.scaleByPowerOfTen(-power).stripTrailingZeros();
        if (mantissa.scale() > 0) {
            throw new MarkingException(
                    Double.toString(value), "needs more than " + figures + " figures", "Round it, or take four digits");
        }
        int lowest = this == CAPACITANCE ? -2 : 0;
        int highest = this == CAPACITANCE ? 7 : 9;
        if (power < lowest || power > highest) {
            throw new MarkingException(Double.toString(value), "lies outside what digits reach", "Use the letter code");
        }
        return mantissa.toBigInteger().toString() + (power < 0 ? power + 10 : power);
    }
}
