package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Node;
import galena.build.source.Node.Mapping;
import java.util.List;
import java.util.Optional;

/**
 * A group of one of several kinds, told by the first key of each.
 *
 * @param inWords what all of them are, for sentences: "supply"
 * @param kinds their forms
 */
public record Choice(String inWords, List<Form> kinds) implements Type {
    public Choice {
        kinds = List.copyOf(kinds);
    }

    @Override
    public Optional<Object> read(Node node, Notes notes) {
        if (!(node instanceof Mapping group))
            return notes.bad(node, node.kind() + " stands here", "Write a " + inWords + " as {kind: value, …}.");
        return KindKey.choose(kinds, inWords, group, notes)
                .flatMap(form -> form.read(group, notes))
                .map(Object.class::cast);
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        return KindKey.schema(kinds, inWords, definitions);
    }
}
