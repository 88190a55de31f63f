package galena.build.quantity;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A quantity as people note a reading: {@code 987.2 kHz ± 50 Hz}, {@code 100 pF ± 2 %}, or without its uncertainty. The sign is
 * also written {@code +-} and {@code +/-}.
 *
 * @param value as read
 * @param stated half-width of what the reading may be, in the same unit, if it was written
 */
public record Uncertain(Quantity value, Optional<Quantity> stated) {
    private static final Pattern SIGN = Pattern.compile("\\s*(?:±|\\+/?[-−])\\s*");
    /** Whole digits, then a point or the letter of 4k7, then more digits. */
    private static final Pattern DIGITS = Pattern.compile("(\\d+)(?:([.]|[A-Za-zµΩ])(\\d+))?");

    /**
     * @param text a quantity, with or without {@code ± half-width}; the half-width may be a percentage of the value
     * @throws BadQuantity if either cannot be read, or the half-width is below zero
     */
    public static Uncertain read(String text, Unit unit) throws BadQuantity {
        Matcher sign = SIGN.matcher(text);
        int from = Math.min(1, text.length()); // a sign at the very start belongs to the number
        if (!sign.find(from)) return new Uncertain(Quantity.read(text, unit), Optional.empty());
        Quantity value = Quantity.read(text.substring(0, sign.start()), unit);
        String behind = text.substring(sign.end());
        boolean share = unit != Unit.FRACTION && behind.strip().endsWith("%");
        Quantity half = share
                ? Quantity.of(
                        Math.abs(value.value())
                                * Quantity.read(behind, Unit.FRACTION).value(),
                        unit)
                : Quantity.read(behind, unit);
        if (half.value() < 0)
            throw new BadQuantity(
                    '"' + behind.strip() + "\" is below zero", "An uncertainty is zero or more.", Optional.empty());
        return new Uncertain(value, Optional.of(half));
    }

    /** The stated half-width, or half of the last digit that was written (SI). */
    public double half() {
        return stated.map(Quantity::value).orElseGet(this::halfOfLastDigit);
    }

    private double halfOfLastDigit() {
        Matcher digits = DIGITS.matcher(value.text());
        if (!digits.find()) throw new IllegalStateException("a quantity has digits: " + value.text());
        int decimals = digits.group(3) == null ? 0 : digits.group(3).length();
        // the unit's factor, from the same text with ones for its digits, since 0 V has a last digit too
        String ones = digits.group().replaceAll("\\d", "1");
        String text = value.text().substring(digits.start());
        try {
            double factor = Quantity.read(ones + text.substring(digits.group().length()), value.unit())
                            .value()
                    / Double.parseDouble(ones.replaceAll("[^\\d]", "."));
            return 0.5 * Math.pow(10, -decimals) * Math.abs(factor);
        } catch (BadQuantity impossible) {
            throw new IllegalStateException("only digits were changed in " + value.text(), impossible);
        }
    }
}
