package galena.build.form;

import galena.build.source.Nearest;
import galena.build.source.Node;
import galena.build.source.Node.Entry;
import galena.build.source.Node.Mapping;
import galena.build.source.Node.Scalar;
import galena.build.source.Problem;
import galena.build.source.Problems;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The keys that a group may have.
 *
 * @param name what the group is, with its article: "a trimmer"
 * @param fields its keys
 * @param check what joins one key to another; asked even if some values failed, which it then finds written but empty
 */
public record Form(String name, List<Field> fields, Check check) {
    /** A rule that joins several keys of one group. */
    public interface Check {
        /** Adds a problem for each breach. */
        void check(Filled group, Problems problems);
    }

    /** What is left of 4,7k in braces: the comma split it. */
    private static final Pattern AFTER_COMMA = Pattern.compile("\\d.*");

    public Form {
        fields = List.copyOf(fields);
    }

    public static Form of(String name, Field... fields) {
        return new Form(name, Arrays.asList(fields), (group, problems) -> {});
    }

    /** This form with a rule that joins several keys. */
    public Form checked(Check rule) {
        return new Form(name, fields, rule);
    }

    /** This form with more keys. */
    public Form with(Field... more) {
        List<Field> all = new ArrayList<>(fields);
        all.addAll(Arrays.asList(more));
        return new Form(name, all, check);
    }

    public Optional<Field> field(String key) {
        return fields.stream().filter(f -> f.key().equals(key)).findFirst();
    }

    public List<String> keys() {
        return fields.stream().map(Field::key).toList();
    }

    /** The group's values; empty after a problem in any of them has been noted. */
    public Optional<Filled> read(Node node, Notes notes) {
        if (!(node instanceof Mapping group)) {
            notes.bad(
                    node,
                    (isNothing(node) ? "nothing" : node.kind()) + " stands here",
                    "Write " + name + " as {key: value, …}.");
            return Optional.empty();
        }
        Map<String, Object> values = new LinkedHashMap<>();
        boolean sound = true;
        for (int i = 0; i < group.entries().size(); i++) {
            if (i + 1 < group.entries().size() && uncut(group, i + 1).isPresent()) continue; // told at its second half
            Optional<Object> value = value(group, i, notes);
            String key = group.entries().get(i).key().text();
            value.ifPresent(v -> values.put(key, v));
            sound &= value.isPresent();
        }
        sound &= hasAllNeeded(group, notes);
        Filled filled = new Filled(this, group, values);
        int before = notes.problems().count();
        check.check(filled, notes.problems());
        return sound && notes.problems().count() == before ? Optional.of(filled) : Optional.empty();
    }

    private Optional<Object> value(Mapping group, int index, Notes notes) {
        Entry entry = group.entries().get(index);
        Optional<Field> field = field(entry.key().text());
        if (field.isEmpty()) return unknownKey(group, index, notes);
        return field.get().type().read(entry.value(), notes.under(field.get().rule()));
    }

    private static boolean isNothing(Node node) {
        return node instanceof Scalar scalar && scalar.isEmpty();
    }

    private boolean hasAllNeeded(Mapping group, Notes notes) {
        boolean all = true;
        for (Field field : fields) {
            boolean checkedBefore = field.type() instanceof Version;
            if (!field.required() || checkedBefore || group.entry(field.key()).isPresent()) continue;
            notes.problems()
                    .add(new Problem(
                            group.place(), group.path(), field.missing(), field.rule(), "Add " + field.key() + ": …"));
            all = false;
        }
        return all;
    }

    private Optional<Object> unknownKey(Mapping group, int index, Notes notes) {
        Scalar key = group.entries().get(index).key();
        String path = group.path().isEmpty() ? key.text() : group.path() + "." + key.text();
        Optional<String> uncut = uncut(group, index);
        if (uncut.isPresent()) {
            notes.problems()
                    .add(new Problem(
                            key.place(),
                            path,
                            "the comma before " + Notes.quoted(key.text()) + " splits the value in two",
                            "Inside braces a comma separates keys; the decimal sign is a point.",
                            "Nearest: " + uncut.get()));
            return Optional.empty();
        }
        Optional<String> spaced = Colon.spaced(key, keys());
        if (spaced.isPresent()) {
            notes.problems().add(Colon.problem(key, path, spaced.get()));
            return Optional.empty();
        }
        List<String> unused =
                keys().stream().filter(k -> group.entry(k).isEmpty()).toList();
        String known = "The keys of " + name + " are " + String.join(", ", keys()) + ".";
        Problem problem = Nearest.to(key.text(), unused)
                .map(near -> new Problem(key.place(), path, "is no key of " + name, known, "Nearest: " + near))
                .orElse(new Problem(key.place(), path, "is no key of " + name, known));
        notes.problems().add(problem);
        return Optional.empty();
    }

    /** "resistor: 4.7k" if what was cut is {resistor: 4,7k}. */
    private static Optional<String> uncut(Mapping group, int index) {
        Entry entry = group.entries().get(index);
        if (!group.braces() || index == 0 || !isNothing(entry.value())) return Optional.empty();
        Matcher tail = AFTER_COMMA.matcher(entry.key().text());
        Entry before = group.entries().get(index - 1);
        boolean digits =
                before.value() instanceof Scalar scalar && scalar.text().matches(".*\\d");
        if (!tail.matches() || !digits) return Optional.empty();
        return Optional.of(before.key().text() + ": " + ((Scalar) before.value()).text() + "."
                + entry.key().text());
    }
}
