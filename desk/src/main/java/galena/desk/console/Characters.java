package galena.desk.console;

import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.util.HashMap;
import java.util.Map;

/**
 * Rewrites text for a screen with fewer characters. Every sign that Galena's pages use has a spelling in ASCII here; a letter of
 * the builder's own without one becomes a question mark, as Java would print it. Stateless but for its encoder: one thread.
 */
final class Characters {
    private static final Map<Character, String> SPELLED = spelled();

    private final CharsetEncoder encoder;

    Characters(Charset charset) {
        encoder = charset.newEncoder();
    }

    private static Map<Character, String> spelled() {
        Map<Character, String> signs = new HashMap<>();
        String[][] table = {
            {"µ", "u"},
            {"μ", "u"},
            {"Ω", "ohm"},
            {"Ω", "ohm"},
            {"°", "deg "},
            {"±", "+-"},
            {"−", "-"},
            {"–", "-"},
            {"—", "-"},
            {"×", "x"},
            {"·", "*"},
            {"…", "..."},
            {"→", "->"},
            {"←", "<-"},
            {"≤", "<="},
            {"≥", ">="},
            {"≈", "~"},
            {"√", "sqrt "},
            {"²", "^2"},
            {"³", "^3"},
            {"½", "1/2"},
            {"“", "\""},
            {"”", "\""},
            {"‘", "'"},
            {"’", "'"},
            {"λ", "lambda"},
            {"π", "pi"},
            {"Δ", "d"},
            {"∞", "inf"},
            {"\u00a0", " "},
            {"\u2009", " "},
            {"\u202f", " "},
            {"─", "-"},
            {"│", "|"},
            {"┌", "+"},
            {"┐", "+"},
            {"└", "+"},
            {"┘", "+"},
            {"├", "+"},
            {"┤", "+"},
            {"┬", "+"},
            {"┴", "+"},
            {"┼", "+"},
            {"═", "="},
            {"✓", "+"},
            {"✗", "x"},
            {"•", "*"},
            {"ä", "ae"},
            {"ö", "oe"},
            {"ü", "ue"},
            {"ß", "ss"},
            {"é", "e"},
            {"è", "e"}
        };
        for (String[] row : table) signs.put(row[0].charAt(0), row[1]);
        return Map.copyOf(signs);
    }

    boolean canShow(String text) {
        return encoder.canEncode(text);
    }

    String shown(String text) {
        if (canShow(text)) return text;
        StringBuilder out = new StringBuilder(text.length() + 16);
        for (int k = 0; k < text.length(); k++) {
            char sign = text.charAt(k);
            if (encoder.canEncode(sign)) out.append(sign);
            else out.append(SPELLED.getOrDefault(sign, "?"));
        }
        return out.toString();
    }
}
