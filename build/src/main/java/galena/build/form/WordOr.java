package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Node;
import galena.build.source.Node.Scalar;
import java.util.Optional;

/** One of a few words, or a value of another type. */
public record WordOr(Words words, Type other) implements Type {
    @Override
    public Optional<Object> read(Node node, Notes notes) {
        if (!(node instanceof Scalar scalar)) return other.read(node, notes);
        if (words.known().contains(scalar.text())) return Optional.of(scalar.text());
        return other instanceof Group ? words.read(node, notes) : other.read(node, notes);
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        ObjectNode either = Definitions.object();
        either.putArray("anyOf").add(words.schema(definitions)).add(other.schema(definitions));
        return either;
    }
}
