package galena.engine.part;

import java.util.List;

/**
 * Quartz or ceramic: a motional arm of L, C and R in series, and the holder's capacitance across it.
 *
 * @param motionalInductance henries
 * @param motionalCapacitance farads
 * @param motionalResistance ohms
 * @param shuntCapacitance farads
 */
public record Resonator(
        String name,
        String from,
        String to,
        double motionalInductance,
        double motionalCapacitance,
        double motionalResistance,
        double shuntCapacitance)
        implements Part {
    public Resonator {
        Require.named(name);
        Require.positive(name, "motional inductance", motionalInductance, "H");
        Require.positive(name, "motional capacitance", motionalCapacitance, "F");
        Require.positive(name, "motional resistance", motionalResistance, "Ω");
        Require.positive(name, "shunt capacitance", shuntCapacitance, "F");
    }

    /** Series-resonant frequency, Hz. */
    public double seriesFrequency() {
        return 1 / (2 * Math.PI * Math.sqrt(motionalInductance * motionalCapacitance));
    }

    /** From the series frequency (Hz), Q, motional and shunt capacitance (F). */
    public static Resonator ofFrequency(
            String name, String from, String to, double frequency, double q, double motional, double shunt) {
        Require.positive(name, "frequency", frequency, "Hz");
        Require.positive(name, "Q", q, "");
        Require.positive(name, "motional capacitance", motional, "F");
        double omega = 2 * Math.PI * frequency;
        return new Resonator(
                name, from, to, 1 / (omega * omega * motional), motional, 1 / (omega * motional * q), shunt);
    }

    /** The same with its frequency times a factor, by its motional inductance. */
    public Resonator retuned(double factor) {
        return new Resonator(
                name,
                from,
                to,
                motionalInductance / (factor * factor),
                motionalCapacitance,
                motionalResistance,
                shuntCapacitance);
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
