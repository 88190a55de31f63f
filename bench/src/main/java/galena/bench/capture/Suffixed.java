package galena.bench.capture;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number with an engineering suffix, as headings and some data cells have it: {@code 1.00us}, {@code 100 MSa/s},
 * {@code -3.5 mV}, {@code x10}.
 *
 * @param value in the unit without its prefix
 * @param unit {@code s}, {@code V}, {@code Hz}, {@code Sa/s}, {@code V/div}, … or empty
 */
record Suffixed(double value, String unit) {
    private static final Pattern FORM =
            Pattern.compile("\\s*([-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d{1,3})?)\\s*([^\\s\\d].{0,11})?\\s*");
    private static final Pattern RATIO = Pattern.compile("\\s*(?:[xX×]\\s*(\\d+)|(\\d+)\\s*(?:[xX×]|:\\s*1))\\s*");
    private static final Map<Character, Double> PREFIX =
            Map.of('f', 1e-15, 'p', 1e-12, 'n', 1e-9, 'u', 1e-6, 'm', 1e-3, 'k', 1e3, 'K', 1e3, 'M', 1e6, 'G', 1e9);
    private static final Map<String, String> UNITS = Map.ofEntries(
            Map.entry("s", "s"),
            Map.entry("sec", "s"),
            Map.entry("secs", "s"),
            Map.entry("second", "s"),
            Map.entry("seconds", "s"),
            Map.entry("v", "V"),
            Map.entry("volt", "V"),
            Map.entry("volts", "V"),
            Map.entry("amp", "A"),
            Map.entry("ampere", "A"),
            Map.entry("hz", "Hz"),
            Map.entry("hertz", "Hz"),
            Map.entry("sa/s", "Sa/s"),
            Map.entry("s/s", "Sa/s"),
            Map.entry("sps", "Sa/s"),
            Map.entry("samples/s", "Sa/s"),
            Map.entry("v/div", "V/div"),
            Map.entry("volts/div", "V/div"),
            Map.entry("s/div", "s/div"),
            Map.entry("db", "dB"),
            Map.entry("dbm", "dBm"),
            Map.entry("pts", "points"),
            Map.entry("points", "points"),
            Map.entry("w", "W"));

    /** The number and unit in a text with a decimal point; empty if it is anything else. */
    static Optional<Suffixed> read(String text) {
        Matcher ratio = RATIO.matcher(text);
        if (ratio.matches() && !text.isBlank()) {
            String digits = ratio.group(1) != null ? ratio.group(1) : ratio.group(2);
            return Optional.of(new Suffixed(Double.parseDouble(digits), "x"));
        }
        Matcher form = FORM.matcher(text);
        if (!form.matches()) return Optional.empty();
        double number = Double.parseDouble(form.group(1));
        if (Double.isInfinite(number)) return Optional.empty();
        if (form.group(2) == null) return Optional.of(new Suffixed(number, ""));
        return unit(form.group(2)).map(u -> new Suffixed(number * u.value, u.unit));
    }

    /** A unit with its prefix: value is the factor. Empty for a word that is no unit. */
    static Optional<Suffixed> unit(String word) {
        String text = word.trim().replace('µ', 'u').replace('μ', 'u').replace("\uFFFD", "u");
        if (text.isEmpty()) return Optional.empty();
        String plain = named(text);
        if (!plain.isEmpty()) return Optional.of(new Suffixed(1, plain));
        Double factor = PREFIX.get(text.charAt(0));
        if (factor == null) return Optional.empty();
        if (text.length() == 1) return Optional.of(new Suffixed(factor, ""));
        String rest = named(text.substring(1));
        return rest.isEmpty() ? Optional.empty() : Optional.of(new Suffixed(factor, rest));
    }

    /** A lone small a is a name more often than an ampere. */
    private static String named(String word) {
        return word.equals("A") ? "A" : UNITS.getOrDefault(word.toLowerCase(Locale.ROOT), "");
    }

    /** Whether this can stand in a data cell. */
    boolean isSample() {
        return unit.isEmpty() || unit.equals("s") || unit.equals("V") || unit.equals("A") || unit.equals("Hz");
    }
}
