package galena.engine.part;

import java.util.List;

/**
 * A battery at one state of charge: an EMF behind a resistance.
 *
 * @param emf volts, open circuit
 * @param internalResistance ohms, zero or above
 */
public record Battery(String name, String plus, String minus, double emf, double internalResistance) implements Part {
    public Battery {
        Require.named(name);
        Require.finite(name, "EMF", emf, "V");
        Require.notNegative(name, "internal resistance", internalResistance, "Ω");
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
