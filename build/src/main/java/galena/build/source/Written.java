package galena.build.source;

import java.util.regex.Pattern;

/** How a text is written as a YAML scalar of one line. */
final class Written {
    /** Plain text that no YAML reader takes for anything else, in braces or out of them. */
    private static final Pattern PLAIN = Pattern.compile(
            "[\\p{L}\\p{N}.+\\-](?:[\\p{L}\\p{N}\\p{S}./%()@+*\\-_°µ² ]*[\\p{L}\\p{N}\\p{S}./%)+_°µ²])?");

    private Written() {}

    /** The text in the wished style; where that can't hold it, in double quotes. */
    static String as(String text, Node.Style style) {
        boolean printable = text.codePoints().noneMatch(Character::isISOControl);
        return switch (style) {
            case SINGLE_QUOTED -> printable ? "'" + text.replace("'", "''") + "'" : doubleQuoted(text);
            case PLAIN -> isPlain(text) ? text : doubleQuoted(text);
            case DOUBLE_QUOTED, BLOCK -> doubleQuoted(text);
        };
    }

    private static boolean isPlain(String text) {
        boolean markUp = text.contains(": ")
                || text.contains(" #")
                || text.startsWith("- ")
                || text.startsWith("---")
                || text.equals("-");
        return PLAIN.matcher(text).matches() && !markUp;
    }

    private static String doubleQuoted(String text) {
        StringBuilder out = new StringBuilder("\"");
        text.codePoints().forEach(c -> {
            if (c == '"' || c == '\\') out.append('\\').appendCodePoint(c);
            else if (Character.isISOControl(c)) out.append(String.format("\\u%04X", c));
            else out.appendCodePoint(c);
        });
        return out.append('"').toString();
    }
}
