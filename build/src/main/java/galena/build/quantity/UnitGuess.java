package galena.build.quantity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Mends the unit behind a number. What comes out may still be no quantity: {@link Guess} reads each before it is offered. */
final class UnitGuess {
    private static final Pattern MARKING = Pattern.compile("[1-9]\\d[0-69]");

    /** How farads were written on old parts and sheets. */
    private static final Map<String, String> OLD_UNITS =
            Map.of("mfd", "µF", "mf", "µF", "ufd", "µF", "mmfd", "pF", "mmf", "pF", "uuf", "pF", "pfd", "pF");

    /** Two slips in a unit are as many as can be mended without inventing. */
    private static final int SLIPS = 2;

    private UnitGuess() {}

    /** The text with its unit mended: added where it lacks, in the right case, or without its slips. */
    static List<String> mended(String text, Unit unit) {
        Matcher number = Spelling.NUMBER.matcher(text);
        if (!number.matches()) return List.of(text);
        String digits = number.group(1) + number.group(2) + number.group(3);
        String suffix = number.group(4);
        if (suffix.isEmpty()) return withUnit(digits, unit);
        if (Scales.of(unit).containsKey(suffix)) return List.of(text);
        List<String> near = near(suffix, unit);
        return near.stream().map(known -> digits + " " + known).toList();
    }

    /** Spellings of the unit that differ from the suffix in case alone, else the one with the fewest slips. */
    private static List<String> near(String suffix, Unit unit) {
        List<String> known = new ArrayList<>(Scales.of(unit).keySet());
        known.removeIf(spelling -> isNeverMeant(spelling, unit));
        String old = OLD_UNITS.get(suffix.toLowerCase(Locale.ROOT));
        if (unit == Unit.FARAD && old != null) return List.of(old);
        known.sort(Comparator.comparingInt((String spelling) -> slips(spelling, suffix))
                .thenComparing(spelling -> !spelling.startsWith(suffix.substring(0, 1)))
                .thenComparing(spelling -> !spelling.endsWith(unit.symbol()))
                .thenComparing(Comparator.naturalOrder()));
        List<String> sameButCase =
                known.stream().filter(suffix::equalsIgnoreCase).sorted().toList();
        // a capital M is mega; a small m before the wrong case is a slip for either
        if (suffix.startsWith("M")) sameButCase = starting(sameButCase, "M");
        if (!sameButCase.isEmpty()) return sameButCase;
        return known.stream()
                .filter(spelling -> slips(spelling, suffix) <= Math.min(SLIPS, spelling.length() - 1))
                .limit(1)
                .toList();
    }

    private static List<String> starting(List<String> spellings, String prefix) {
        List<String> fit = spellings.stream().filter(s -> s.startsWith(prefix)).toList();
        return fit.isEmpty() ? spellings : fit;
    }

    /** Read but never proposed: K for k, and prefixes that no part of the kind has. */
    private static boolean isNeverMeant(String spelling, Unit unit) {
        boolean huge = unit == Unit.FARAD || unit == Unit.HENRY;
        return (spelling.startsWith("K") && spelling.length() > 1) || (huge && spelling.matches("[kM].?"));
    }

    private static List<String> withUnit(String digits, Unit unit) {
        List<String> spelled = new ArrayList<>();
        double value = Double.parseDouble(digits.replace('\u2212', '-'));
        if (unit == Unit.FRACTION && Math.abs(value) <= 1 && value != 0) spelled.add(Engineering.exact(value, unit));
        else spelled.add(digits + (unit.usual().isEmpty() ? "" : (unit == Unit.RATIO ? "" : " ") + unit.usual()));
        if (unit == Unit.SECOND && Math.abs(value) >= 1) spelled.add(0, digits + " h");
        if (unit == Unit.FARAD && MARKING.matcher(digits).matches())
            spelled.add(Engineering.exact(marking(digits), unit));
        return spelled;
    }

    /** IEC 60062, three-character code: two figures and a power of ten, in pF; a last 9 means a tenth. Farad. */
    private static double marking(String digits) {
        int power = digits.charAt(2) == '9' ? -1 : digits.charAt(2) - '0';
        return Double.parseDouble(digits.substring(0, 2) + "e" + (power - 12));
    }

    /** Single-letter changes between two words: Levenshtein's distance, without regard to case. */
    private static int slips(String a, String b) {
        String from = a.toLowerCase(Locale.ROOT);
        String to = b.toLowerCase(Locale.ROOT);
        int[] row = new int[to.length() + 1];
        for (int j = 0; j <= to.length(); j++) row[j] = j;
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.length(); j++) {
                int change = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[to.length()];
    }
}
