package galena.engine.part;

import java.util.List;

/**
 * A capacitor with a position: C = minimum + position · (maximum − minimum), with the temperature law of
 * {@link Capacitor}. Real trimmers follow this to about a tenth of their span (common practice).
 *
 * @param minimum farads
 * @param maximum farads
 * @param position 0 to 1
 * @param temperatureCoefficient per kelvin
 */
public record Trimmer(
        String name,
        String from,
        String to,
        double minimum,
        double maximum,
        double position,
        double temperatureCoefficient)
        implements Part {
    public Trimmer {
        Require.named(name);
        Require.positive(name, "minimum", minimum, "F");
        Require.within(name, "maximum", maximum, minimum, 1, "F");
        Require.within(name, "position", position, 0, 1, "");
        Require.within(name, "temperature coefficient", temperatureCoefficient, -0.02, 0.02, "per kelvin");
    }

    /** Farads at this position, 25 °C. */
    public double capacitance() {
        return minimum + position * (maximum - minimum);
    }

    /** The same trimmer, turned. */
    public Trimmer at(double newPosition) {
        return new Trimmer(name, from, to, minimum, maximum, newPosition, temperatureCoefficient);
    }

    /** The same with both ends of its range times a factor. */
    public Trimmer scaled(double factor) {
        return new Trimmer(name, from, to, minimum * factor, maximum * factor, position, temperatureCoefficient);
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
