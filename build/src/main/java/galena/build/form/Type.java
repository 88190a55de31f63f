package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Node;
import java.util.Optional;

/** A kind of value: how it is read and how it is described to an editor. */
public interface Type {
    /**
     * The value, or empty after at least one problem has been noted.
     *
     * @param node what stands in the file
     * @param notes takes the problems, and knows the rule of the key
     */
    Optional<Object> read(Node node, Notes notes);

    /** The JSON Schema of the value. */
    ObjectNode schema(Definitions definitions);
}
