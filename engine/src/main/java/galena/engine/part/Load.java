package galena.engine.part;

import java.util.List;

/**
 * What a probe or meter puts across two nets: a resistance with a capacitance beside it.
 *
 * @param resistance ohms
 * @param capacitance farads, zero or above
 */
public record Load(String name, String from, String to, double resistance, double capacitance) implements Part {
    public Load {
        Require.named(name);
        Require.positive(name, "resistance", resistance, "Ω");
        Require.notNegative(name, "capacitance", capacitance, "F");
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
