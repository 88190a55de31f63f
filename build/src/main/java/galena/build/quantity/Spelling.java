package galena.build.quantity;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The strict reading of quantities. What is refused here goes to {@link Guess} for the nearest valid spelling. */
final class Spelling {
    /** Blanks that editors put between number and unit: plain, no-break, narrow no-break, thin. */
    static final String BLANKS = "[ \\t\u00A0\u202F\u2009]*";

    /** Sign (the minus also as U+2212), digits with a point, an exponent, then the rest. */
    static final Pattern NUMBER =
            Pattern.compile("([+\\-\u2212]?)(\\d+\\.?\\d*|\\.\\d+)((?:[eE][+-]?\\d{1,3})?)" + BLANKS + "(.*)");

    /** IEC 60062, letter and digit code: the letter stands where the decimal point is. 4k7, R47, 1G0. */
    private static final Pattern LETTER_CODE =
            Pattern.compile("(\\d*)([RKkMGTmnpfu\u00B5\u03BC])(\\d+)" + BLANKS + "(.*)");

    static final String RANGE = "..";

    /** More digits or exponent than any part has; keeps the arithmetic finite and quick. */
    static final int LONGEST = 60;

    private Spelling() {}

    /** The same grammar as one regular expression; signs of expressions are escaped as ECMA-262 and Java both read. */
    static String pattern(Unit unit) {
        String suffixes = Scales.of(unit).keySet().stream()
                .sorted()
                .map(suffix -> suffix.replaceAll("([.^/*+])", "\\\\$1"))
                .collect(Collectors.joining("|"));
        String number = "[+\\-\u2212]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+\\-]?\\d{1,3})?\\s*(?:" + suffixes + ")";
        if (!unit.hasLetterCodes()) return "(?:" + number + ")";
        String letters = (unit == Unit.OHM ? "R" : "")
                + unit.prefixes().replace("k", "kK").replace("u", "u\u00B5\u03BC");
        String units = String.join("|", unit.spellings().split(" "));
        return "(?:" + number + "|\\d*[" + letters + "]\\d+\\s*(?:" + units + ")?)";
    }

    static String trim(String text) {
        int start = 0;
        int end = text.length();
        while (start < end && isBlank(text.charAt(start))) start++;
        while (end > start && isBlank(text.charAt(end - 1))) end--;
        return text.substring(start, end);
    }

    private static boolean isBlank(char c) {
        return Character.isWhitespace(c) || Character.isSpaceChar(c);
    }

    static double read(String text, Unit unit) throws BadQuantity {
        OptionalDouble value = strictly(text, unit);
        if (value.isPresent()) return value.getAsDouble();
        throw Guess.why(text, unit);
    }

    /** The value in SI, or empty if the text is not that kind of quantity. */
    static OptionalDouble strictly(String text, Unit unit) {
        if (text.isEmpty() || text.length() > LONGEST) return OptionalDouble.empty();
        Matcher code = LETTER_CODE.matcher(text);
        if (unit.hasLetterCodes() && code.matches()) return letterCode(code, unit);
        Matcher number = NUMBER.matcher(text);
        if (!number.matches()) return OptionalDouble.empty();
        BigDecimal scale = Scales.of(unit).get(number.group(4));
        if (scale == null) return OptionalDouble.empty();
        String sign = number.group(1).equals("\u2212") ? "-" : number.group(1);
        return finite(new BigDecimal(sign + number.group(2) + number.group(3)), scale, offset(unit, number.group(4)));
    }

    private static OptionalDouble letterCode(Matcher code, Unit unit) {
        String letter = code.group(2);
        String tail = code.group(4);
        boolean point = letter.equals("R") && unit == Unit.OHM;
        BigDecimal scale = point
                ? BigDecimal.ONE
                : letter.equals("R") ? null : Scales.of(unit).get(letter);
        boolean unitFollows =
                tail.isEmpty() || List.of(unit.spellings().split(" ")).contains(tail);
        if (scale == null || !unitFollows) return OptionalDouble.empty();
        return finite(new BigDecimal("0" + code.group(1) + "." + code.group(3)), scale, BigDecimal.ZERO);
    }

    private static OptionalDouble finite(BigDecimal number, BigDecimal scale, BigDecimal offset) {
        double value = number.multiply(scale).add(offset).doubleValue();
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }

    private static BigDecimal offset(Unit unit, String suffix) {
        return unit == Unit.KELVIN && !suffix.equals("K") ? Scales.ZERO_CELSIUS : BigDecimal.ZERO;
    }

    static Range readRange(String text, Unit unit) throws BadQuantity {
        Optional<Range> range = strictRange(text, unit);
        if (range.isPresent()) return range.get();
        throw Guess.whyNoRange(text, unit);
    }

    /** The range, or empty if the text is not one of that kind or runs downwards. */
    static Optional<Range> strictRange(String text, Unit unit) {
        Optional<Ends> ends = Ends.of(text, unit);
        if (ends.isEmpty()) return Optional.empty();
        OptionalDouble low = strictly(ends.get().low, unit);
        OptionalDouble high = strictly(ends.get().high, unit);
        if (low.isEmpty() || high.isEmpty() || low.getAsDouble() > high.getAsDouble()) return Optional.empty();
        return Optional.of(new Range(
                new Quantity(low.getAsDouble(), unit, ends.get().low),
                new Quantity(high.getAsDouble(), unit, ends.get().high),
                text));
    }

    /** The two sides of a range as texts; the left has borrowed the suffix of the right if it had none. */
    record Ends(String low, String high) {
        static Optional<Ends> of(String text, Unit unit) {
            int dots = text.indexOf(RANGE);
            if (dots < 0) return Optional.empty();
            String left = trim(text.substring(0, dots));
            String right = trim(text.substring(dots + RANGE.length()));
            Matcher bare = NUMBER.matcher(left);
            boolean borrows = bare.matches()
                    && bare.group(4).isEmpty()
                    && strictly(left, unit).isEmpty();
            return Optional.of(new Ends(borrows ? left + suffix(right) : left, right));
        }
    }

    /** What follows the number, with its blank: " pF", "k". A letter code lends its letter. */
    private static String suffix(String side) {
        Matcher code = LETTER_CODE.matcher(side);
        if (code.matches()) return code.group(2) + code.group(4);
        Matcher number = NUMBER.matcher(side);
        return number.matches() ? side.substring(number.end(3)) : "";
    }

    static AtFrequency readAtFrequency(String text, Unit unit) throws BadQuantity {
        int at = text.indexOf('@');
        if (at < 0) throw Guess.whyNoFrequency(text, unit);
        String left = trim(text.substring(0, at));
        String right = trim(text.substring(at + 1));
        if (strictly(left, unit).isEmpty() || strictly(right, Unit.HERTZ).isEmpty())
            throw Guess.whyBadSide(left, right, unit);
        Quantity value = Quantity.read(left, unit);
        Quantity frequency = Quantity.read(right, Unit.HERTZ);
        if (frequency.value() <= 0)
            throw new BadQuantity(
                    Guess.quoted(frequency.text()) + " after the @ is not above zero",
                    "The frequency at which the value holds is above zero.",
                    Optional.empty());
        return new AtFrequency(value, frequency, text);
    }
}
