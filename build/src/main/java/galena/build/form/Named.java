package galena.build.form;

import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Node;
import galena.build.source.Node.Entry;
import galena.build.source.Node.Mapping;
import galena.build.source.Problem;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Groups under names that the builder chooses; each is one of several kinds, told by its key.
 *
 * @param inWords what all of them are, for sentences: "part"
 * @param kinds their forms
 */
public record Named(String inWords, List<Form> kinds) implements Type {
    public Named {
        kinds = List.copyOf(kinds);
    }

    /** Groups of a single kind. */
    public static Named of(Form form) {
        return new Named(form.name(), List.of(form));
    }

    @Override
    public Optional<Object> read(Node node, Notes notes) {
        if (!(node instanceof Mapping group))
            return notes.bad(node, node.kind() + " stands here", "Write a name, a colon and the keys in braces.");
        Map<String, Filled> named = new LinkedHashMap<>();
        for (Entry entry : group.entries()) {
            Optional<Filled> filled = nameIsGood(entry, notes) ? kind(entry, notes) : Optional.empty();
            filled.ifPresent(f -> named.put(entry.key().text(), f));
        }
        return named.size() == group.entries().size() ? Optional.of(named) : Optional.empty();
    }

    private static boolean nameIsGood(Entry entry, Notes notes) {
        String name = entry.key().text();
        if (Text.NAME.fits(name)) return true;
        notes.problems()
                .add(new Problem(
                        entry.key().place(),
                        entry.value().path(),
                        Notes.quoted(name) + " is no name",
                        Text.NAME.inWords()));
        return false;
    }

    private Optional<Filled> kind(Entry entry, Notes notes) {
        if (kinds.size() == 1) return kinds.get(0).read(entry.value(), notes);
        if (entry.value() instanceof Mapping group)
            return KindKey.choose(kinds, inWords, group, notes).flatMap(form -> form.read(group, notes));
        notes.bad(
                entry.value(),
                entry.value().kind() + " stands here",
                "Write a " + inWords + " as {kind: value, pins …}.");
        return Optional.empty();
    }

    @Override
    public ObjectNode schema(Definitions definitions) {
        ObjectNode schema = Definitions.object().put("type", "object");
        schema.putObject("propertyNames").put("pattern", "^" + Text.NAME.shape() + "$");
        schema.set(
                "additionalProperties",
                kinds.size() == 1
                        ? Schema.group(kinds.get(0), definitions)
                        : KindKey.schema(kinds, inWords, definitions));
        return schema;
    }
}
