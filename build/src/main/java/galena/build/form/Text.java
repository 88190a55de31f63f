package galena.build.form;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Node;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A text of a given shape.
 *
 * @param shape a regular expression that ECMA-262 and Java both read
 * @param inWords what the shape allows, a whole sentence
 */
public record Text(String shape, String inWords) implements Type {
    /** Any text at all. */
    public static final Text ANY = new Text("[\\s\\S]+", "Any text.");

    /** Names of parts, points and nets: they appear in paths, commands and drawings. */
    public static final Text NAME = new Text(
            "[A-Za-z][A-Za-z0-9_+\\-]{0,31}",
            "A name starts with a letter and goes on with letters, digits, _, + or -.");

    /** A day, or a moment of one, ISO 8601. */
    public static final Text MOMENT = new Text(
            "\\d{4}-\\d{2}-\\d{2}(?:[T ]\\d{2}:\\d{2}(?::\\d{2})?(?:Z|[+\\-]\\d{2}:\\d{2})?)?",
            "A day is written 2026-03-07, a moment 2026-03-07 19:30.");

    public boolean fits(String text) {
        return Pattern.matches(shape, text);
    }

    @Override
    public Optional<Object> read(Node node, Notes notes) {
        Optional<String> text = notes.text(node);
        if (text.isEmpty()) return Optional.empty();
        return fits(text.get())
                ? Optional.of(text.get())
                : notes.bad(node, Notes.quoted(text.get()) + " can't be read here", inWords);
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        ObjectNode schema = Definitions.object();
        ArrayNode types = schema.putArray("type").add("string");
        if (fits("40673")) types.add("number"); // YAML takes digits for a number
        if (fits("true")) types.add("boolean");
        return schema.put("pattern", "^(?:" + shape + ")$");
    }
}
