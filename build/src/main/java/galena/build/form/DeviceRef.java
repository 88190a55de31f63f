package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Node;
import galena.build.source.Node.Mapping;
import java.util.Optional;

/**
 * A device by its type number, or by its parameters in words. Whether the type number is known is asked later, of the
 * library.
 *
 * @param parameters the group of parameters
 */
public record DeviceRef(Form parameters) implements Type {
    private static final Text TYPE_NUMBER = new Text("[A-Za-z0-9][A-Za-z0-9 /\\-]{1,23}", "A type number, as 2N3904.");

    @Override
    public Optional<Object> read(Node node, Notes notes) {
        if (node instanceof Mapping) return parameters.read(node, notes).map(Object.class::cast);
        return TYPE_NUMBER.read(node, notes);
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        ObjectNode either = Definitions.object();
        either.putArray("anyOf").add(TYPE_NUMBER.schema(definitions)).add(Schema.group(parameters, definitions));
        return either;
    }
}
