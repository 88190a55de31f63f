package galena.engine.part;

import java.util.List;

/**
 * An inductance with a series resistance, and its self-capacitance across both. L follows the temperature coefficient, the
 * resistance that of copper (0.393 % per kelvin, IEC 60028).
 *
 * @param inductance henries, above zero
 * @param seriesResistance ohms, zero or above
 * @param selfCapacitance farads, zero or above
 * @param temperatureCoefficient of the inductance, per kelvin
 */
public record Coil(
        String name,
        String from,
        String to,
        double inductance,
        double seriesResistance,
        double selfCapacitance,
        double temperatureCoefficient)
        implements Part {
    public Coil {
        Require.named(name);
        Require.positive(name, "inductance", inductance, "H");
        Require.notNegative(name, "series resistance", seriesResistance, "Ω");
        Require.notNegative(name, "self-capacitance", selfCapacitance, "F");
        Require.within(name, "temperature coefficient", temperatureCoefficient, -0.02, 0.02, "per kelvin");
    }

    /** A coil without self-capacitance, of the given Q (above zero) at the given frequency (Hz). */
    public static Coil ofQ(String name, String from, String to, double inductance, double q, double frequency) {
        Require.positive(name, "Q", q, "");
        Require.positive(name, "frequency of Q", frequency, "Hz");
        return new Coil(name, from, to, inductance, 2 * Math.PI * frequency * inductance / q, 0, 0);
    }

    /** The same with its inductance and its resistance each times a factor; equal factors keep the Q. */
    public Coil scaled(double inductanceFactor, double resistanceFactor) {
        return new Coil(
                name,
                from,
                to,
                inductance * inductanceFactor,
                seriesResistance * resistanceFactor,
                selfCapacitance,
                temperatureCoefficient);
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
