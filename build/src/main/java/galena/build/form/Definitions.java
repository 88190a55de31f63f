package galena.build.form;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;

/** The shared pieces of a schema, each written once under {@code $defs}. */
public final class Definitions {
    private final Map<String, ObjectNode> pieces = new TreeMap<>();

    /** A reference to a piece, which is made when first asked for. */
    ObjectNode reference(String name, Supplier<ObjectNode> piece) {
        if (!pieces.containsKey(name)) pieces.put(name, piece.get());
        return object().put("$ref", "#/$defs/" + name);
    }

    ObjectNode asJson() {
        ObjectNode all = object();
        pieces.forEach(all::set);
        return all;
    }

    static ObjectNode object() {
        return JsonNodeFactory.instance.objectNode();
    }
}
