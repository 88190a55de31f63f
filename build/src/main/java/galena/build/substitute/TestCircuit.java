package galena.build.substitute;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Bipolar;
import galena.engine.part.Jfet;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import java.util.List;

/** What a voltmeter shows in the test circuits, by the same device equations as the build's. */
final class TestCircuit {
    private TestCircuit() {}

    /** Volts across the source resistor (Ω): drain at a supply (V), gate at its other end with the resistor. */
    static double sourceVoltage(Jfet.Model model, double supply, double resistor) {
        Circuit circuit = Circuit.of(List.of(
                new VoltageSource("supply", "rail", "ground", new Wave.Direct(supply)),
                new Jfet("device", Polarity.N, "rail", "ground", "source", model),
                new Resistor("source resistor", "source", "ground", resistor)));
        return solved(circuit).voltage("source");
    }

    /** Volts across the collector resistor: base through a resistor at the supply, emitter at its other end. */
    static double collectorVoltage(Bipolar.Model model, double supply, double base, double collector) {
        Circuit circuit = Circuit.of(List.of(
                new VoltageSource("supply", "rail", "ground", new Wave.Direct(supply)),
                new Resistor("base resistor", "rail", "base", base),
                new Resistor("collector resistor", "rail", "collector", collector),
                new Bipolar("device", Polarity.N, "collector", "base", "ground", model)));
        return supply - solved(circuit).voltage("collector");
    }

    private static OperatingPoint.Found solved(Circuit circuit) {
        if (OperatingPointLadder.climb(Equations.of(circuit)) instanceof OperatingPoint.Found point) return point;
        throw new IllegalStateException("a test circuit of one device has no operating point");
    }
}
