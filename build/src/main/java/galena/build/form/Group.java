package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Node;
import java.util.Optional;

/** A group of keys as a value. */
public record Group(Form form) implements Type {
    @Override
    public Optional<Object> read(Node node, Notes notes) {
        return form.read(node, notes).map(Object.class::cast);
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        return Schema.group(form, definitions);
    }
}
