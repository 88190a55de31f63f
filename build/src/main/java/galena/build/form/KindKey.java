package galena.build.form;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import galena.build.source.Nearest;
import galena.build.source.Node.Entry;
import galena.build.source.Node.Mapping;
import galena.build.source.Problem;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which kind a group is: the first key of each form is the one that tells. */
final class KindKey {
    /** Words of the trade and slips that no count of letters leads from to the key. */
    private static final Map<String, String> SAME = Map.ofEntries(
            Map.entry("inductor", "coil"),
            Map.entry("inductance", "coil"),
            Map.entry("choke", "coil"),
            Map.entry("winding", "coil"),
            Map.entry("rod", "loopstick"),
            Map.entry("ferrite", "loopstick"),
            Map.entry("condenser", "capacitor"),
            Map.entry("capacitance", "capacitor"),
            Map.entry("resistance", "resistor"),
            Map.entry("potentiometer", "preset"),
            Map.entry("pot", "preset"),
            Map.entry("varicap", "tuning_diode"),
            Map.entry("varactor", "tuning_diode"),
            Map.entry("fet", "jfet"),
            Map.entry("transistor", "npn"),
            Map.entry("bipolar", "npn"),
            Map.entry("quartz", "crystal"),
            Map.entry("source", "voltage"));

    private KindKey() {}

    static String of(Form form) {
        return form.fields().get(0).key();
    }

    static Optional<Form> choose(List<Form> kinds, String inWords, Mapping group, Notes notes) {
        List<Form> told =
                kinds.stream().filter(form -> group.entry(of(form)).isPresent()).toList();
        if (told.size() == 1) return Optional.of(told.get(0));
        List<String> keys = kinds.stream().map(KindKey::of).toList();
        String rule = "One key tells what it is: " + String.join(", ", keys) + ".";
        if (told.size() > 1) {
            String both = String.join(" and ", told.stream().map(KindKey::of).toList());
            notes.problems()
                    .add(new Problem(
                            group.place(), group.path(), "is " + both + " at once", rule, "Keep one of them."));
            return Optional.empty();
        }
        for (Entry entry : group.entries()) {
            Optional<String> spaced = Colon.spaced(entry.key(), keys);
            if (spaced.isEmpty()) continue;
            String path = group.path() + "." + entry.key().text();
            notes.problems().add(Colon.problem(entry.key(), path, spaced.get()));
            return Optional.empty();
        }
        Optional<String> nearest = group.entries().stream()
                .map(Entry::key)
                .flatMap(key -> meant(key.text(), keys).stream())
                .findFirst();
        String found = "names no kind of " + inWords;
        notes.problems()
                .add(nearest.map(n -> new Problem(group.place(), group.path(), found, rule, "Nearest: " + n))
                        .orElse(new Problem(group.place(), group.path(), found, rule)));
        return Optional.empty();
    }

    private static Optional<String> meant(String key, List<String> keys) {
        String same = SAME.get(key);
        return same != null && keys.contains(same) ? Optional.of(same) : Nearest.to(key, keys);
    }

    /** Each kind is asked for only where its key stands, so that an editor complains about the right one. */
    static ObjectNode schema(List<Form> kinds, String inWords, Definitions definitions) {
        ObjectNode schema = Definitions.object().put("type", "object");
        ArrayNode one = schema.putArray("oneOf");
        ArrayNode each = schema.putArray("allOf");
        for (Form kind : kinds) {
            one.add(requires(of(kind)));
            ObjectNode branch = each.addObject();
            branch.set("if", requires(of(kind)));
            branch.set("then", definitions.reference(inWords + "_" + of(kind), () -> Schema.group(kind, definitions)
                    .put("title", kind.name())));
        }
        return schema;
    }

    private static ObjectNode requires(String key) {
        ObjectNode schema = Definitions.object();
        schema.putArray("required").add(key);
        return schema;
    }
}
