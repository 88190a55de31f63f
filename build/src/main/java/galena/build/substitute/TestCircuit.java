package galena.build.substitute;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Bipolar;
import galena.engine.part.Diode;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Mosfet;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import java.util.List;

/** What a voltmeter shows in the test circuits, by the same device equations as the build's. */
final class TestCircuit {
    /** Of a diode whose sheet gives no resistance, Ω: far below what any voltmeter tells. */
    private static final double LEAST = 1e-3;

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

    /** Volts across a diode, its resistance included, fed from a supply through a resistor. */
    static double forwardVoltage(Junction junction, double series, double supply, double resistor) {
        Circuit circuit = Circuit.of(List.of(
                new VoltageSource("supply", "rail", "ground", new Wave.Direct(supply)),
                new Resistor("resistor", "rail", "anode", resistor),
                new Resistor("its own resistance", "anode", "inner", Math.max(series, LEAST)),
                new Diode("device", "inner", "ground", junction)));
        return solved(circuit).voltage("anode");
    }

    /** Volts across the source resistor of a dual-gate MOSFET: drain at a supply, gates at voltages of their own. */
    static double sourceVoltage(
            Mosfet.Model lower, Mosfet.Model upper, double supply, double gate1, double gate2, double resistor) {
        Circuit circuit = Circuit.of(List.of(
                new VoltageSource("supply", "rail", "ground", new Wave.Direct(supply)),
                new VoltageSource("bias 1", "gate 1", "ground", new Wave.Direct(gate1)),
                new VoltageSource("bias 2", "gate 2", "ground", new Wave.Direct(gate2)),
                new DualGateMosfet("device", Polarity.N, "rail", "gate 2", "gate 1", "source", lower, upper),
                new Resistor("source resistor", "source", "ground", resistor)));
        return solved(circuit).voltage("source");
    }

    private static OperatingPoint.Found solved(Circuit circuit) {
        if (OperatingPointLadder.climb(Equations.of(circuit)) instanceof OperatingPoint.Found point) return point;
        throw new IllegalStateException("a test circuit of one device has no operating point");
    }
}
