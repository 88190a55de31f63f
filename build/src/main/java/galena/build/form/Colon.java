package galena.build.form;

import galena.build.source.Node.Scalar;
import galena.build.source.Problem;
import java.util.List;
import java.util.Optional;

/** A colon without its blank: YAML reads {@code resistor:1k} as one key. */
final class Colon {
    private Colon() {}

    /** "resistor: 1k" if the key is a known one with its value stuck to it. */
    static Optional<String> spaced(Scalar key, List<String> known) {
        int colon = key.text().indexOf(':');
        if (colon < 0 || !known.contains(key.text().substring(0, colon))) return Optional.empty();
        return Optional.of(key.text().replaceFirst(":\\s*", ": "));
    }

    static Problem problem(Scalar key, String path, String spaced) {
        return new Problem(
                key.place(),
                path,
                "lacks a blank behind the colon",
                "A blank parts a key and its value.",
                "Nearest: " + spaced);
    }
}
