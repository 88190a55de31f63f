package galena.engine.part;

import java.util.List;

/** An ideal current into pin {@code from}, through the source and out of pin {@code to}. */
public record CurrentSource(String name, String from, String to, Wave wave) implements Part {
    public CurrentSource {
        Require.named(name);
    }

    @Override
    public List<String> nets() {
        return List.of(from, to);
    }

    @Override
    public List<String> pins() {
        return List.of("from", "to");
    }
}
