package galena.desk.page;

import galena.build.source.Place;
import galena.build.source.SourceFile;
import java.util.List;
import java.util.Optional;

/** The builder's own words in a build file: the comment beside a line, and the one above a group of lines. */
final class Reasons {
    private final List<String> lines;

    Reasons(SourceFile file) {
        lines = file.text().lines().toList();
    }

    /** The comment at the end of the line of a place. */
    Optional<String> beside(Place place) {
        if (place.line() > lines.size()) return Optional.empty();
        return comment(lines.get(place.line() - 1));
    }

    /** The comment over the block of lines that a place stands in, without a blank line between. */
    Optional<String> above(Place place) {
        int at = Math.min(place.line(), lines.size()) - 2;
        while (at >= 0 && !isComment(at) && !lines.get(at).isBlank()) at--;
        StringBuilder words = new StringBuilder();
        for (; at >= 0 && isComment(at); at--) {
            String text = lines.get(at).strip().replaceFirst("^#+\\s*", "");
            words.insert(0, words.length() == 0 ? text : text + " ");
        }
        return words.length() == 0 ? Optional.empty() : Optional.of(words.toString());
    }

    private boolean isComment(int line) {
        return lines.get(line).strip().startsWith("#");
    }

    /** A # begins a comment where a blank stands before it and no quotes are open. */
    private static Optional<String> comment(String line) {
        char quote = 0;
        for (int k = 0; k < line.length(); k++) {
            char c = line.charAt(k);
            if (quote != 0) {
                if (c == quote) quote = 0;
            } else if (c == '"' || c == '\'') {
                quote = c;
            } else if (c == '#' && k > 0 && Character.isWhitespace(line.charAt(k - 1))) {
                String text = line.substring(k + 1).strip();
                return text.isEmpty() ? Optional.empty() : Optional.of(text);
            }
        }
        return Optional.empty();
    }
}
