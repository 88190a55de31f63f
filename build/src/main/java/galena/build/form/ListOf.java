package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Node;
import galena.build.source.Node.Listing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Values in a row.
 *
 * @param item the type of each
 * @param fewest least number of items
 * @param most greatest number of items
 */
public record ListOf(Type item, int fewest, int most) implements Type {
    public static ListOf any(Type item) {
        return new ListOf(item, 0, Integer.MAX_VALUE);
    }

    @Override
    public Optional<Object> read(Node node, Notes notes) {
        if (!(node instanceof Listing list))
            return notes.bad(
                    node, node.kind() + " stands here, not a list", "Write [one, other], or each on a line after a -.");
        if (list.items().size() < fewest || list.items().size() > most) {
            String due = fewest == most ? String.valueOf(fewest) : fewest + " to " + most;
            return notes.bad(node, "the list has " + list.items().size() + " items", "It takes " + due + ".");
        }
        List<Object> values = new ArrayList<>();
        for (Node each : list.items()) item.read(each, notes).ifPresent(values::add);
        return values.size() == list.items().size() ? Optional.of(List.copyOf(values)) : Optional.empty();
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        ObjectNode schema = Definitions.object().put("type", "array");
        schema.set("items", item.schema(definitions));
        if (fewest > 0) schema.put("minItems", fewest);
        if (most < Integer.MAX_VALUE) schema.put("maxItems", most);
        return schema;
    }
}
