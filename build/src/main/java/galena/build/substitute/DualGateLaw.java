package galena.build.substitute;

import galena.build.quantity.Unit;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Mosfet;
import java.util.List;

/**
 * Dual-gate depletion MOSFETs by the current of the lower channel at zero and both channels' cut-offs. With gate 2 at half the supply
 * the upper channel is open, and a source resistor reads the lower one as it reads a JFET; with the gates' places exchanged it reads where
 * gate 2 shuts.
 *
 * @param typical that stands there
 * @param gate1 capacitance of gate 1 against the source, F
 * @param gate2 of gate 2
 * @param output of the drain
 */
record DualGateLaw(DualGateMosfet typical, double gate1, double gate2, double output) implements Law {
    private static final double SMALL = 100, LARGE = 10e3;
    private static final double FARTHEST = 4;

    @Override
    public List<Parameter> parameters() {
        double cutoff = -typical.lower().threshold(), upper = -typical.upper().threshold();
        double current = typical.lower().beta() * cutoff * cutoff;
        return List.of(
                new Parameter(
                        "current of gate 1's channel at zero",
                        Unit.AMPERE,
                        current,
                        current / FARTHEST,
                        current * FARTHEST,
                        1),
                new Parameter(
                        "cut-off of gate 1 at this current",
                        Unit.VOLT,
                        cutoff,
                        cutoff / FARTHEST,
                        cutoff * FARTHEST,
                        -1),
                new Parameter("cut-off of gate 2", Unit.VOLT, upper, upper / FARTHEST, upper * FARTHEST, -1));
    }

    private Mosfet.Model lower(double[] numbers) {
        Mosfet.Model m = typical.lower();
        return model(m, -numbers[1], numbers[0] / (numbers[1] * numbers[1]), gate1, 0);
    }

    private Mosfet.Model upper(double[] numbers) {
        Mosfet.Model m = typical.upper();
        return model(m, -numbers[2], m.beta(), gate2, output);
    }

    private static Mosfet.Model model(Mosfet.Model like, double threshold, double beta, double gate, double drain) {
        return new Mosfet.Model(threshold, beta, like.channelLengthModulation(), gate, 0, drain, like.leakage(), null);
    }

    @Override
    public String text(double[] numbers) {
        return "{lower: " + Specimen.text(lower(numbers)) + ", upper: " + Specimen.text(upper(numbers)) + "}";
    }

    @Override
    public double reading(int test, double[] numbers) {
        double half = SUPPLY / 2;
        return switch (test) {
            case 0 -> TestCircuit.sourceVoltage(lower(numbers), upper(numbers), SUPPLY, 0, half, SMALL);
            case 1 -> TestCircuit.sourceVoltage(lower(numbers), upper(numbers), SUPPLY, 0, half, LARGE);
            default -> TestCircuit.sourceVoltage(lower(numbers), upper(numbers), SUPPLY, half, 0, LARGE);
        };
    }

    @Override
    public List<String> steps() {
        return List.of(
                "Drain to +9 V, gate 2 to +4.5 V from two equal resistors of 100 kΩ, gate 1 to 0 V, source through 100 Ω to 0 V;"
                        + " read the volts across the resistor.",
                "Then the same with 10 kΩ.",
                "Then, still with 10 kΩ, gate 1 to +4.5 V and gate 2 to 0 V. Touch earth before the gates: static kills them.");
    }

    @Override
    public List<String> shown() {
        return List.of("volts across 100 Ω", "volts across 10 kΩ", "volts across 10 kΩ, gates exchanged");
    }

    @Override
    public String leavesOut() {
        return "Unknown specimens carry their capacitances at the inner net and none from drain to gate 1.";
    }
}
