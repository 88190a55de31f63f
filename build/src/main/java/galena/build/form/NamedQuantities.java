package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.Node;
import galena.build.source.Node.Entry;
import galena.build.source.Node.Mapping;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Quantities under names that the builder chose: {@code {Ct: 40 %, Pm: 90 %}}.
 *
 * @param unit of each
 * @param low least, in SI
 * @param high greatest, in SI
 */
public record NamedQuantities(Unit unit, double low, double high) implements Type {
    @Override
    public Optional<Object> read(Node node, Notes notes) {
        if (!(node instanceof Mapping group))
            return notes.bad(node, node.kind() + " stands here", "Write {name: value, name: value}.");
        Type each = Quantities.one(unit, low, high);
        Map<String, Quantity> named = new LinkedHashMap<>();
        for (Entry entry : group.entries())
            each.read(entry.value(), notes).ifPresent(q -> named.put(entry.key().text(), (Quantity) q));
        return named.size() == group.entries().size() ? Optional.of(named) : Optional.empty();
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        ObjectNode schema = Definitions.object().put("type", "object");
        schema.putObject("propertyNames").put("pattern", "^" + Text.NAME.shape() + "$");
        schema.set("additionalProperties", Quantities.one(unit, low, high).schema(definitions));
        return schema;
    }
}
