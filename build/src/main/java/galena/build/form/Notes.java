package galena.build.form;

import galena.build.quantity.BadQuantity;
import galena.build.source.Node;
import galena.build.source.Node.Scalar;
import galena.build.source.Problem;
import galena.build.source.Problems;
import java.util.Optional;

/**
 * Takes the problems of one value.
 *
 * @param problems where they go
 * @param rule the rule of the value's key, a whole sentence
 */
public record Notes(Problems problems, String rule) {
    /** Notes under another rule. */
    public Notes under(String otherRule) {
        return new Notes(problems, otherRule);
    }

    /** Always empty, so that a reading can end with it. */
    public Optional<Object> bad(Node node, String found) {
        problems.add(new Problem(node.place(), node.path(), found, rule));
        return Optional.empty();
    }

    /** Always empty. */
    public Optional<Object> bad(Node node, String found, String remedy) {
        problems.add(new Problem(node.place(), node.path(), found, rule, remedy));
        return Optional.empty();
    }

    /** Always empty. A nearest spelling says enough; without one the forms that are read follow the rule. */
    Optional<Object> bad(Node node, BadQuantity bad) {
        return bad(
                node,
                bad.found(),
                bad.nearest().map(nearest -> "Nearest: " + nearest).orElse(bad.rule()));
    }

    /** The text of a single value; empty, and noted, if it is a group or a list or nothing at all. */
    Optional<String> text(Node node) {
        if (node instanceof Scalar scalar && !scalar.text().isBlank()) return Optional.of(scalar.text());
        bad(node, node instanceof Scalar ? "nothing is written" : node.kind() + " stands here, not a single value");
        return Optional.empty();
    }

    static String quoted(String text) {
        return '"' + (text.length() > 40 ? text.substring(0, 40) + "…" : text) + '"';
    }
}
