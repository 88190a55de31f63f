package galena.build.form;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Nearest;
import galena.build.source.Node;
import java.util.List;
import java.util.Optional;

/** One of a few words. */
public record Words(List<String> known) implements Type {
    public Words {
        known = List.copyOf(known);
    }

    public static Words of(String... known) {
        return new Words(List.of(known));
    }

    @Override
    public Optional<Object> read(Node node, Notes notes) {
        Optional<String> text = notes.text(node);
        if (text.isEmpty()) return Optional.empty();
        if (known.contains(text.get())) return Optional.of(text.get());
        String all = "Known: " + String.join(", ", known) + ".";
        return notes.bad(
                node,
                Notes.quoted(text.get()) + " is not known here",
                Nearest.to(text.get(), known).map(n -> "Nearest: " + n).orElse(all));
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        ObjectNode schema = Definitions.object();
        ArrayNode words = schema.putArray("enum");
        known.forEach(words::add);
        return schema;
    }
}
