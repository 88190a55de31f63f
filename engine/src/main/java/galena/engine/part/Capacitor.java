package galena.engine.part;

import java.util.List;

/**
 * C(T) = capacitance · (1 + temperatureCoefficient · (T − 25 °C)).
 *
 * @param capacitance farads at 25 °C, above zero
 * @param temperatureCoefficient per kelvin (an N750 part has −750e-6)
 */
public record Capacitor(String name, String from, String to, double capacitance, double temperatureCoefficient)
        implements Part {
    public Capacitor {
        Require.named(name);
        Require.positive(name, "capacitance", capacitance, "F");
        Require.within(name, "temperature coefficient", temperatureCoefficient, -0.02, 0.02, "per kelvin");
    }

    public Capacitor(String name, String from, String to, double capacitance) {
        this(name, from, to, capacitance, 0);
    }

    /** The same with its capacitance times a factor. */
    public Capacitor scaled(double factor) {
        return new Capacitor(name, from, to, capacitance * factor, temperatureCoefficient);
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
