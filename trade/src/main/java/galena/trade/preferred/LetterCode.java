package galena.trade.preferred;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Letter and digit codes of IEC 60062 (ed. 6, 2016): the letter is the multiplier and stands where the decimal point
 * would. 4K7 is 4700 Ω, R47 is 0.47 Ω, 4n7 is 4.7 nF. For coils the same rule is a custom of the trade, not of the
 * standard; there R marks the point in microhenries.
 */
public enum LetterCode {
    RESISTANCE("Ω", "RKMGT", 0, "4K7"),
    CAPACITANCE("F", "pnµm", -12, "4n7"),
    INDUCTANCE("H", "nµm", -9, "4µ7");

    private static final Pattern CODE = Pattern.compile("(\\d*)(\\p{L})(\\d*)");
    private static final int FIGURES = 4;

    private final String unit;
    private final String letters;
    private final int lowest;
    private final String example;

    LetterCode(String unit, String letters, int lowest, String example) {
        this.unit = unit;
        this.letters = letters;
        this.lowest = lowest;
        this.example = example;
    }

    /** SI unit of the values. */
    public String unit() {
        return unit;
    }

    /**
     * Value in Ω, F or H of a code. k stands for K, u and μ for µ; otherwise case matters.
     *
     * @throws MarkingException if it can't be read
     */
    public double read(String code) {
        Matcher parts = CODE.matcher(code.strip());
        if (!parts.matches() || (parts.group(1).isEmpty() && parts.group(3).isEmpty())) {
            throw new MarkingException(
                    code, "is no letter code", "Digits with one letter for the decimal point, as " + example);
        }
        int exponent = exponent(parts.group(2), code);
        String whole = parts.group(1).isEmpty() ? "0" : parts.group(1);
        String fraction = parts.group(3);
        double value = Double.parseDouble(whole + "." + (fraction.isEmpty() ? "0" : fraction) + "e" + exponent);
        if (value == 0) throw new MarkingException(code, "is nothing at all", "A part has a value above zero");
        return value;
    }

    private int exponent(String letter, String code) {
        if (this == INDUCTANCE && letter.equals("R")) return -6;
        String standard =
                switch (letter) {
                    case "k" -> this == RESISTANCE ? "K" : letter;
                    case "u", "μ" -> "µ";
                    default -> letter;
                };
        int index = letters.indexOf(standard);
        if (index < 0) {
            throw new MarkingException(
                    code,
                    "has the letter " + letter + ", which marks no " + name().toLowerCase(Locale.ROOT),
                    "Letters here: " + String.join(" ", letters.split("")) + ", case matters (m milli, M mega)");
        }
        return lowest + 3 * index;
    }

    /**
     * Shortest code of a value, with the letter that leaves one to three digits before it: 4K7, 470R, 470p rather than
     * n47. Below the least letter the point comes first: R47, p47.
     *
     * @param value in SI
     * @throws MarkingException if no letter reaches it or it needs more than four figures
     */
    public String write(double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new MarkingException(Double.toString(value), "has no code", "A part has a value above zero");
        }
        BigDecimal figures = new BigDecimal(value).round(new MathContext(12)).stripTrailingZeros();
        if (figures.precision() > FIGURES) {
            throw new MarkingException(
                    Double.toString(value), "needs more than four figures", "Codes hold up to four; round it first");
        }
        int index = Math.floorDiv(figures.precision() - figures.scale() - 1 - lowest, 3);
        int used = Math.max(0, Math.min(letters.length() - 1, index));
        BigDecimal mantissa = figures.scaleByPowerOfTen(-(lowest + 3 * used));
        if (mantissa.compareTo(new BigDecimal(10_000)) >= 0 || mantissa.compareTo(new BigDecimal("0.01")) < 0) {
            throw new MarkingException(
                    Double.toString(value),
                    "lies outside the letters " + letters,
                    "Write it as a number with its unit");
        }
        BigDecimal whole = mantissa.setScale(0, RoundingMode.DOWN);
        String fraction =
                mantissa.subtract(whole).stripTrailingZeros().toPlainString().replaceFirst("^0\\.?", "");
        return (whole.signum() == 0 ? "" : whole.toPlainString()) + letters.charAt(used) + fraction;
    }
}
