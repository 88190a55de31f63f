package galena.build.folder;

import galena.build.source.Nearest;
import galena.build.source.Node;
import galena.build.source.Node.Entry;
import galena.build.source.Node.Mapping;
import galena.build.source.Node.Scalar;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.source.Problems;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Checks that join one place of a build to another. They work on the tree, so that a mistake in one part neither hides
 * others nor makes them look unknown.
 */
final class BuildChecks {
    private final Problems problems;
    private final Map<String, Mapping> parts = new LinkedHashMap<>();
    private final Set<String> nets = new LinkedHashSet<>();

    private BuildChecks(Mapping top, Problems problems) {
        this.problems = problems;
        nets.add(BuildForm.GROUND);
        if (top.value("supply").orElse(null) instanceof Mapping supply) {
            nets.add(text(supply, "plus").orElse(BuildForm.RAIL));
            text(supply, "minus").ifPresent(nets::add);
        }
        if (top.value("parts").orElse(null) instanceof Mapping group)
            for (Entry entry : group.entries())
                if (entry.value() instanceof Mapping part) take(entry.key().text(), part);
    }

    static void check(Mapping top, Problems problems) {
        BuildChecks checks = new BuildChecks(top, problems);
        checks.names(top);
        checks.netsOf(top, "strays", "from", "to");
        checks.netsOf(top, "points", "at", "to");
        checks.couplings(top);
        checks.programme(top);
    }

    private void take(String name, Mapping part) {
        parts.put(name, part);
        for (PartKind kind : PartKind.values())
            if (part.entry(kind.key()).isPresent())
                kind.pins().forEach(pin -> text(part, pin).ifPresent(nets::add));
    }

    private static Optional<String> text(Mapping group, String key) {
        return group.value(key).flatMap(node -> node instanceof Scalar s ? Optional.of(s.text()) : Optional.empty());
    }

    private void names(Mapping top) {
        if (parts.containsKey(Supply.NAME))
            problems.add(new Problem(
                    keyPlace(top, Supply.NAME),
                    "parts." + Supply.NAME,
                    "is the name of the supply",
                    "No part may have it.",
                    "Rename the part."));
        if (!(top.value("points").orElse(null) instanceof Mapping points)) return;
        for (Entry point : points.entries())
            if (parts.containsKey(point.key().text()))
                problems.add(new Problem(
                        point.key().place(),
                        point.value().path(),
                        "is also the name of a part",
                        "Parts and test points have names of their own.",
                        "Rename one of the two."));
    }

    private static Place keyPlace(Mapping top, String part) {
        return top.value("parts")
                .flatMap(node -> ((Mapping) node).entry(part))
                .map(entry -> entry.key().place())
                .orElse(top.place());
    }

    /** Nets of strays or points must be nets of some part: a stray to nowhere is a slip of spelling. */
    private void netsOf(Mapping top, String group, String... keys) {
        List<Node> members = new ArrayList<>();
        Node node = top.value(group).orElse(null);
        if (node instanceof Node.Listing list) members.addAll(list.items());
        if (node instanceof Mapping named) named.entries().forEach(entry -> members.add(entry.value()));
        for (Node member : members) {
            if (!(member instanceof Mapping one)) continue;
            for (String key : keys) one.value(key).ifPresent(this::knownNet);
            if (keys.length == 2
                    && text(one, keys[0]).isPresent()
                    && text(one, keys[0]).equals(text(one, keys[1])))
                problems.add(new Problem(
                        one.place(),
                        one.path(),
                        "begins and ends at " + text(one, keys[0]).get(),
                        "It lies between two nets."));
        }
    }

    private void knownNet(Node node) {
        if (!(node instanceof Scalar scalar) || nets.contains(scalar.text()) || scalar.isEmpty()) return;
        problems.add(new Problem(
                node.place(),
                node.path(),
                "no pin is joined to a net \"" + scalar.text() + "\"",
                "The nets are " + String.join(", ", nets) + ".",
                Nearest.to(scalar.text(), nets).map(n -> "Nearest: " + n)));
    }

    private void couplings(Mapping top) {
        if (!(top.value("couplings").orElse(null) instanceof Node.Listing list)) return;
        List<Set<String>> seen = new ArrayList<>();
        for (Node item : list.items()) {
            if (!(item instanceof Mapping coupling)) continue;
            if (!(coupling.value("between").orElse(null) instanceof Node.Listing between)) continue;
            between.items().forEach(this::knownCoil);
            Set<String> pair = new LinkedHashSet<>();
            for (Node coil : between.items()) if (coil instanceof Scalar s) pair.add(s.text());
            if (pair.size() == 1 && between.items().size() == 2)
                problems.add(
                        new Problem(between.place(), between.path(), "couples a coil with itself", "Name two coils."));
            if (pair.size() == 2 && seen.contains(pair))
                problems.add(new Problem(
                        between.place(),
                        between.path(),
                        "this pair is coupled above already",
                        "One k holds for a pair."));
            seen.add(pair);
        }
    }

    private void knownCoil(Node node) {
        if (!(node instanceof Scalar scalar) || scalar.isEmpty()) return;
        Mapping part = parts.get(scalar.text());
        List<String> coils = parts.keySet().stream().filter(this::isCoil).toList();
        if (part != null && isCoil(scalar.text())) return;
        String found =
                part == null ? "no part is named \"" + scalar.text() + "\"" : "\"" + scalar.text() + "\" is no coil";
        String rule = coils.isEmpty() ? "There is no coil here." : "The coils are " + String.join(", ", coils) + ".";
        problems.add(new Problem(
                node.place(),
                node.path(),
                found,
                rule,
                Nearest.to(scalar.text(), coils).map(n -> "Nearest: " + n)));
    }

    private boolean isCoil(String name) {
        Mapping part = parts.get(name);
        return part != null
                && Arrays.stream(PartKind.values())
                        .anyMatch(
                                kind -> kind.isCoil() && part.entry(kind.key()).isPresent());
    }

    /** An audio source that takes its level from the intent needs one there. */
    private void programme(Mapping top) {
        if (top.find("intent.programme").isPresent()) return;
        for (Mapping part : parts.values())
            for (PartKind kind : List.of(PartKind.AUDIO, PartKind.STEREO)) {
                Optional<Node> audio = part.value(kind.key());
                if (audio.isEmpty() || !text(part, kind.key()).equals(Optional.of(PartForms.PROGRAMME))) continue;
                problems.add(new Problem(
                        audio.get().place(),
                        audio.get().path(),
                        "the intent has no programme",
                        "The level of the audio source comes from there.",
                        "Write a level here, or intent: {programme: {level: 300 mV, band: 60 Hz..4.5 kHz}}"));
            }
    }
}
