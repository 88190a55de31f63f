package galena.build.substitute;

import galena.build.quantity.Unit;
import galena.engine.part.Jfet;
import java.util.List;

/**
 * JFETs by saturation current and pinch-off. A small source resistor reads near the saturation current, a large one near pinch-off; two
 * readings give both, for the square law makes the root of the current fall in proportion to the voltage.
 */
record JfetLaw(Jfet.Model typical) implements Law {
    private static final double[] RESISTORS = {100, 10e3};
    private static final double FARTHEST = 6;

    @Override
    public List<Parameter> parameters() {
        double i = typical.saturationCurrent(), v = -typical.pinchOff();
        return List.of(
                new Parameter("saturation current at this pinch-off", Unit.AMPERE, i, i / FARTHEST, i * FARTHEST, 1),
                new Parameter("pinch-off at this saturation current", Unit.VOLT, v, v / FARTHEST, v * FARTHEST, -1));
    }

    @Override
    public String text(double[] numbers) {
        return Specimen.text(typical, numbers[0], -numbers[1]);
    }

    @Override
    public double reading(int test, double[] numbers) {
        Jfet.Model model = new Jfet.Model(
                numbers[0], -numbers[1], typical.channelLengthModulation(), typical.gateSource(), typical.gateDrain());
        return TestCircuit.sourceVoltage(model, SUPPLY, RESISTORS[test]);
    }

    @Override
    public List<String> steps() {
        return List.of(
                "Drain to +9 V, gate to 0 V, source through 100 Ω to 0 V; read the volts across the resistor.",
                "Then the same with 10 kΩ.");
    }

    @Override
    public List<String> shown() {
        return List.of("volts across 100 Ω", "volts across 10 kΩ");
    }
}
