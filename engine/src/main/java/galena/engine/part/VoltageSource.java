package galena.engine.part;

import java.util.List;

/** An ideal voltage from {@code plus} to {@code minus}. Its current into the plus pin is an unknown. */
public record VoltageSource(String name, String plus, String minus, Wave wave) implements Part {
    public VoltageSource {
        Require.named(name);
    }

    @Override
    public List<String> nets() {
        return List.of(plus, minus);
    }

    @Override
    public List<String> pins() {
        return List.of("plus", "minus");
    }
}
