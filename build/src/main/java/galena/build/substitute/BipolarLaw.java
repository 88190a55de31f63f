package galena.build.substitute;

import galena.build.quantity.Unit;
import galena.engine.part.Bipolar;
import java.util.List;

/** Bipolar transistors by current gain, read as volts across a collector resistor with the base fed through another. */
record BipolarLaw(Bipolar.Model typical, boolean npn) implements Law {
    private static final double BASE = 1e6, COLLECTOR = 1e3;
    private static final double FARTHEST = 12, LEAST = 2;

    @Override
    public List<Parameter> parameters() {
        double beta = typical.forwardBeta();
        return List.of(
                new Parameter("current gain", Unit.NUMBER, beta, Math.max(LEAST, beta / FARTHEST), beta * FARTHEST, 1));
    }

    @Override
    public String text(double[] numbers) {
        return Specimen.text(typical, numbers[0]);
    }

    @Override
    public double reading(int test, double[] numbers) {
        return TestCircuit.collectorVoltage(typical.withForwardBeta(numbers[0]), SUPPLY, BASE, COLLECTOR);
    }

    @Override
    public List<String> steps() {
        return List.of("Emitter to 0 V, base through 1 MΩ and collector through 1 kΩ to " + (npn ? "+" : "−")
                + "9 V; read the volts across the collector's resistor.");
    }

    @Override
    public List<String> shown() {
        return List.of("volts across 1 kΩ");
    }

    /** Then the transistor is as good as a closed switch. */
    @Override
    public double saturates() {
        return 0.9 * SUPPLY;
    }
}
