package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.FileVersion;
import galena.build.source.Node;
import java.util.Optional;

/** The version line. Its value was checked before the form is read, by {@link FileVersion}. */
record Version() implements Type {
    @Override
    public Optional<Object> read(Node node, Notes notes) {
        return Optional.of(FileVersion.CURRENT);
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        return Definitions.object().put("const", FileVersion.CURRENT);
    }
}
