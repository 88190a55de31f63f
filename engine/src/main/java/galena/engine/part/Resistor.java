package galena.engine.part;

import java.util.List;

/**
 * R(T) = resistance · (1 + temperatureCoefficient · (T − 25 °C)).
 *
 * @param resistance ohms at 25 °C, above zero
 * @param temperatureCoefficient per kelvin
 */
public record Resistor(String name, String from, String to, double resistance, double temperatureCoefficient)
        implements Part {
    public Resistor {
        Require.named(name);
        Require.positive(name, "resistance", resistance, "Ω");
        Require.within(name, "temperature coefficient", temperatureCoefficient, -0.02, 0.02, "per kelvin");
    }

    public Resistor(String name, String from, String to, double resistance) {
        this(name, from, to, resistance, 0);
    }

    /** The same with its resistance times a factor. */
    public Resistor scaled(double factor) {
        return new Resistor(name, from, to, resistance * factor, temperatureCoefficient);
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
