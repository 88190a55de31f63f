package galena.build.source;

import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Says in a builder's words why a text is no YAML. */
final class YamlTrouble {
    /** What the parser says, what that means, and what helps. */
    private record Saying(String parser, String found, String remedy) {}

    private static final String RULE = "A key, a colon and a blank come before each value; nothing after this is read.";

    private static final List<Saying> SAYINGS = List.of(
            new Saying("\\t", "a tab stands here", "Indent with blanks."),
            new Saying("TAB", "a tab stands here", "Indent with blanks."),
            new Saying(
                    "mapping values are not allowed",
                    "a second colon in one line, or a line indented too far",
                    "Put a text that holds a colon in quotes, and start keys of one group in the same column."),
            new Saying(
                    "expected ',' or '}'",
                    "a comma or a closing } is missing before this",
                    "Separate keys in {…} by commas."),
            new Saying(
                    "expected ',' or ']'",
                    "a comma or a closing ] is missing before this",
                    "Separate items in […] by commas."),
            new Saying("could not find expected ':'", "a key without a colon", "Write key: value."),
            new Saying(
                    "expected <block end>",
                    "this line is indented unlike its neighbours",
                    "Start keys of one group in the same column."),
            new Saying(
                    "while scanning a quoted scalar",
                    "a quote is not closed",
                    "Close it with the sign that opened it."),
            new Saying(
                    "cannot start any token",
                    "a value starts with a sign that YAML keeps for itself",
                    "Put the value in quotes."),
            new Saying("while scanning an alias", "a * starts a value", "Put the value in quotes."),
            new Saying("while scanning an anchor", "a & starts a value", "Put the value in quotes."),
            new Saying("found unknown escape character", "a \\ stands in double quotes", "Use single quotes."));

    private YamlTrouble() {}

    static Problem problem(SourceFile file, YamlEngineException trouble) {
        if (trouble instanceof ReaderException reader) {
            return new Problem(
                    placeAt(file, reader.getPosition()),
                    "",
                    String.format("the character U+%04X stands here", reader.getCodePoint()),
                    "Text files hold no control characters.",
                    "Delete it.");
        }
        Place top = new Place(file.name(), 1, 1);
        if (!(trouble instanceof MarkedYamlEngineException marked))
            return new Problem(top, "", "cannot be read: " + trouble.getMessage(), RULE);
        Optional<Mark> mark = marked.getProblemMark().or(marked::getContextMark);
        Place place = mark.map(m -> new Place(file.name(), m.getLine() + 1, m.getColumn() + 1))
                .orElse(top);
        String said = marked.getContext() + "; " + marked.getProblem();
        return SAYINGS.stream()
                .filter(saying -> said.contains(saying.parser))
                .findFirst()
                .map(saying -> new Problem(place, "", saying.found, RULE, saying.remedy))
                .orElse(new Problem(place, "", "cannot be read: " + marked.getProblem(), RULE));
    }

    private static Place placeAt(SourceFile file, int codePoint) {
        String text = file.text();
        int index = Math.min(codePoint, text.codePointCount(0, text.length()));
        String before = text.substring(0, text.offsetByCodePoints(0, index));
        int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
        String lastLine = before.substring(before.lastIndexOf('\n') + 1);
        return new Place(file.name(), line, 1 + lastLine.codePointCount(0, lastLine.length()));
    }
}
