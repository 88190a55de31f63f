package galena.build.substitute;

import galena.build.quantity.Unit;
import galena.engine.part.Junction;
import java.util.List;

/**
 * Diodes by the voltage that they drop at a milliampere and by their emission coefficient, which is how much less they drop at a
 * hundredth of the current: n·kT/q per e-fold.
 *
 * @param typical that stands there
 * @param series its resistance, Ω
 */
record DiodeLaw(Junction typical, double series) implements Law {
    private static final double[] RESISTORS = {10e3, 1e6};
    private static final double CURRENT = 1e-3;

    /** kT/q at 25 °C, V; constants of the 2019 SI. */
    static final double THERMAL = 1.380649e-23 * 298.15 / 1.602176634e-19;

    private static final double LEAST_DROP = 0.15, MOST_DROP = 1.2;
    private static final double LEAST_EMISSION = 0.6, MOST_EMISSION = 3.8;

    @Override
    public List<Parameter> parameters() {
        double drop = typical.emission() * THERMAL * Math.log(CURRENT / typical.saturationCurrent());
        return List.of(
                new Parameter("drop of the junction at 1 mA", Unit.VOLT, drop, LEAST_DROP, MOST_DROP, 1),
                new Parameter(
                        "emission coefficient at this drop",
                        Unit.NUMBER,
                        typical.emission(),
                        LEAST_EMISSION,
                        MOST_EMISSION,
                        1));
    }

    private double saturation(double[] numbers) {
        return CURRENT * Math.exp(-numbers[0] / (numbers[1] * THERMAL));
    }

    @Override
    public String text(double[] numbers) {
        return Specimen.text(typical, series, saturation(numbers), numbers[1]);
    }

    @Override
    public double reading(int test, double[] numbers) {
        Junction junction = Junction.silicon(
                        saturation(numbers), numbers[1], 0, typical.builtIn(), typical.grading(), 0)
                .withLeakage(typical.leakage());
        return TestCircuit.forwardVoltage(junction, series, SUPPLY, RESISTORS[test]);
    }

    @Override
    public List<String> steps() {
        return List.of(
                "Anode through 10 kΩ to +9 V, cathode to 0 V; read the volts across the diode.",
                "Then the same with 1 MΩ, and a meter of 10 MΩ or more.");
    }

    @Override
    public List<String> shown() {
        return List.of("volts across the diode, 10 kΩ", "volts across the diode, 1 MΩ");
    }
}
