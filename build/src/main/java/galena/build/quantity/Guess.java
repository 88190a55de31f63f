package galena.build.quantity;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Says what is wrong with a text that is not a quantity, and finds what was probably meant. Every spelling offered has
 * been read by the strict reading first.
 */
final class Guess {
    private static final Pattern DECIMAL_COMMA = Pattern.compile("(.*\\d),(\\d.*)");
    private static final Pattern THOUSANDS = Pattern.compile("[+-]?\\d{1,3}(,\\d{3})+(?!\\d).*");
    private static final Pattern WITH_TOLERANCE = Pattern.compile("(.*\\d)[BCDFGJKM]");
    /** Moulded chokes print R for the decimal point of microhenries; on a resistor it means ohms. */
    private static final Pattern POINT_IS_R = Pattern.compile("(\\d+)R(\\d+)");

    /** 4k7 5 %: the tolerance is a value of its own. */
    private static final Pattern AND_TOLERANCE = Pattern.compile("(.*\\S)\\s+(?:±|\\+/-)?\\s*(\\d+(?:\\.\\d+)?)\\s*%");

    private static final Pattern BLANK_THOUSANDS = Pattern.compile("(\\d{1,3})((?:[ \u00A0\u202F]\\d{3})+)(?!\\d)(.*)");

    private static final Pattern OTHER_RANGE = Pattern.compile(
            "(.*?[\\w\u00B5\u03BC\u2126\u03A9])\\s*(?:\\.{3,}|\u2026|\u2013|\u2014|-|~| to | bis )\\s*(\\d.*)");
    private static final Pattern OTHER_AT = Pattern.compile("(.*\\d)\\s*(?:at|bei|,|/|\\()\\s*(\\d[^)]*)\\)?");

    private Guess() {}

    static BadQuantity why(String text, Unit unit) {
        if (text.length() > Spelling.LONGEST) return tooLong(text, rule(unit));
        Matcher both = AND_TOLERANCE.matcher(text);
        if (unit.hasLetterCodes() && both.matches() && readable(both.group(1), unit)) {
            String nearest = both.group(1) + ", tolerance: " + both.group(2) + " %";
            return new BadQuantity(found(text, unit), rule(unit), Optional.of(nearest));
        }
        return new BadQuantity(found(text, unit), rule(unit), either(spellings(text, unit)));
    }

    static BadQuantity whyNoRange(String text, Unit unit) {
        if (text.length() > Spelling.LONGEST) return tooLong(text, rangeRule(unit));
        Optional<Spelling.Ends> ends = Spelling.Ends.of(text, unit);
        if (ends.isPresent()) return whyBadEnds(text, ends.get(), unit);
        Matcher other = OTHER_RANGE.matcher(text);
        List<String> nearest = other.matches() ? ranges(other.group(1), other.group(2), unit) : List.of();
        String found = nearest.isEmpty()
                ? quoted(text) + " is no range"
                : quoted(text) + " is not written with two dots between its ends";
        return new BadQuantity(found, rangeRule(unit), either(nearest));
    }

    private static BadQuantity whyBadEnds(String text, Spelling.Ends ends, Unit unit) {
        if (readable(ends.low(), unit) && readable(ends.high(), unit)) {
            List<String> turned = List.of(ends.high() + Spelling.RANGE + ends.low());
            return new BadQuantity(
                    quoted(text) + " runs downwards", rangeRule(unit), either(validRanges(turned, unit)));
        }
        String bad = readable(ends.high(), unit) ? ends.low() : ends.high();
        String found = bad.isEmpty()
                ? quoted(text) + " lacks one end"
                : isBare(bad) ? quoted(text) + " has no unit" : found(bad, unit) + ", in " + quoted(text);
        String left = text.substring(0, text.indexOf(Spelling.RANGE));
        return new BadQuantity(found, rangeRule(unit), either(ranges(left, ends.high(), unit)));
    }

    private static BadQuantity tooLong(String text, String rule) {
        return new BadQuantity(quoted(text) + " is too long for a quantity", rule, Optional.empty());
    }

    static BadQuantity whyNoFrequency(String text, Unit unit) {
        if (text.length() > Spelling.LONGEST) return tooLong(text, rule(unit));
        List<String> nearest = new ArrayList<>();
        Matcher other = OTHER_AT.matcher(text);
        if (other.matches()) {
            for (String value : spellings(Spelling.trim(other.group(1)), unit))
                for (String at : spellings(Spelling.trim(other.group(2)), Unit.HERTZ)) nearest.add(value + " @ " + at);
        } else if (readable(text, unit)) {
            nearest.add(text + " @ 1 MHz");
        }
        return new BadQuantity(
                quoted(text) + " names no frequency",
                "The value holds at one frequency, written after an @: 85 @ 1 MHz.",
                either(nearest));
    }

    static BadQuantity whyBadSide(String value, String frequency, Unit unit) {
        boolean first = !readable(value, unit);
        List<String> nearest = new ArrayList<>();
        for (String v : spellings(value, unit))
            for (String f : spellings(frequency, Unit.HERTZ)) nearest.add(v + " @ " + f);
        return new BadQuantity(
                first ? found(value, unit) : found(frequency, Unit.HERTZ),
                rule(first ? unit : Unit.HERTZ),
                either(nearest));
    }

    static String quoted(String text) {
        return '"' + (text.length() > 40 ? text.substring(0, 40) + "…" : text) + '"';
    }

    private static String found(String text, Unit unit) {
        if (text.isEmpty()) return "nothing is written";
        if (DECIMAL_COMMA.matcher(text).matches()) return quoted(text) + " has a comma";
        Matcher number = Spelling.NUMBER.matcher(text);
        if (!number.matches()) return quoted(text) + " is no number with a unit";
        String suffix = number.group(4);
        if (suffix.isEmpty()) return quoted(text) + " has no unit";
        if (unit == Unit.NUMBER) return quoted(text) + " has " + quoted(suffix) + " behind the number";
        if (unit == Unit.HENRY && POINT_IS_R.matcher(text).matches()) return quoted(text) + " has R for the point";
        for (Unit other : Unit.values())
            if (other != unit && !isBarePrefix(suffix) && readable(text, other))
                return quoted(text) + " is " + other.noun() + ", not " + unit.noun();
        if (unit.hasLetterCodes() && AND_TOLERANCE.matcher(text).matches())
            return quoted(text) + " carries a tolerance";
        if (BLANK_THOUSANDS.matcher(text).matches()) return quoted(text) + " has a blank among its digits";
        if (unit.hasLetterCodes() && WITH_TOLERANCE.matcher(text).matches())
            return quoted(text) + " ends with a tolerance letter";
        return quoted(text) + " has an unknown unit, " + quoted(suffix);
    }

    /** "47M": names no unit, so it can't be the wrong one. */
    private static boolean isBarePrefix(String suffix) {
        return suffix.length() == 1 && "fpnu\u00B5\u03BCmkKMGT".contains(suffix) && !suffix.equals("m");
    }

    private static String rule(Unit unit) {
        String allowed = unit == Unit.NUMBER ? unit.examples() : "written as " + unit.examples();
        return "This is " + unit.noun() + ", " + allowed + ".";
    }

    private static String rangeRule(Unit unit) {
        return "This is a range with two dots, of " + unit.noun().replaceFirst("^an? ", "")
                + " from low to high, each end as " + unit.examples() + ".";
    }

    private static List<String> ranges(String left, String right, Unit unit) {
        List<String> candidates = new ArrayList<>();
        String usual = unit.usual();
        for (String high : spellings(Spelling.trim(right), unit)) {
            String low = Spelling.trim(left);
            candidates.add(low + Spelling.RANGE + high);
            for (String mended : spellings(low, unit)) candidates.add(mended + Spelling.RANGE + high);
        }
        candidates.add(Spelling.trim(left) + Spelling.RANGE + Spelling.trim(right) + " " + usual);
        List<String> valid = validRanges(candidates, unit);
        return valid.isEmpty() ? valid : valid.subList(0, 1);
    }

    private static List<String> validRanges(List<String> candidates, Unit unit) {
        return candidates.stream()
                .filter(text -> Spelling.strictRange(text, unit).isPresent())
                .toList();
    }

    /** Valid spellings near the text, best first: the text itself if it is valid. */
    private static List<String> spellings(String text, Unit unit) {
        if (readable(text, unit)) return List.of(text);
        if (text.length() > Spelling.LONGEST) return List.of();
        Set<String> candidates = new LinkedHashSet<>();
        if (THOUSANDS.matcher(text).matches()) candidates.addAll(UnitGuess.mended(text.replace(",", ""), unit));
        Matcher comma = DECIMAL_COMMA.matcher(text);
        if (comma.matches()) candidates.addAll(UnitGuess.mended(comma.group(1) + "." + comma.group(2), unit));
        candidates.addAll(UnitGuess.mended(text, unit));
        Matcher blanks = BLANK_THOUSANDS.matcher(text);
        if (blanks.matches())
            candidates.addAll(
                    UnitGuess.mended(blanks.group(1) + blanks.group(2).replaceAll("\\D", "") + blanks.group(3), unit));
        Matcher choke = POINT_IS_R.matcher(text);
        if (unit == Unit.HENRY && choke.matches()) candidates.add(choke.group(1) + "." + choke.group(2) + " µH");
        Matcher tolerance = WITH_TOLERANCE.matcher(text);
        if (unit.hasLetterCodes() && tolerance.matches()) candidates.add(tolerance.group(1));
        candidates.removeIf(candidate -> !readable(candidate, unit));
        return List.copyOf(candidates);
    }

    private static boolean isBare(String text) {
        Matcher number = Spelling.NUMBER.matcher(text);
        return number.matches() && number.group(4).isEmpty();
    }

    private static boolean readable(String text, Unit unit) {
        return Spelling.strictly(text, unit).isPresent();
    }

    private static Optional<String> either(List<String> spellings) {
        return spellings.isEmpty() ? Optional.empty() : Optional.of(String.join(" or ", spellings));
    }
}
