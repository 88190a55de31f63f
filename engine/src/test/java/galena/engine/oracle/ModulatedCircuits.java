package galena.engine.oracle;

import static galena.engine.oracle.HandLaws.channel;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import java.util.ArrayList;
import java.util.List;

/** Circuits with a slow source and their equations worked out by hand, of short memory so that a run in time settles. */
final class ModulatedCircuits {
    private static final double TWO_PI_MEGA = 2 * Math.PI * 1e6;
    static final double CARRIER = 1e6;

    private ModulatedCircuits() {}

    private static VoltageSource direct(String name, String plus, String minus, double volts) {
        return new VoltageSource(name, plus, minus, new Wave.Direct(volts));
    }

    /**
     * A square law multiplies: the drain current of a saturated JFET without memory, carrier and slow source in series at its gate,
     * feeds a bare tank tuned to the carrier. Class A.
     */
    static ModulatedCircuit multipliedTank() {
        Junction none = Junction.silicon(1e-30, 1, 0, 0.8, 0.5, 0);
        double l = 100e-6, r = TWO_PI_MEGA * l / 40, c = 1 / (TWO_PI_MEGA * TWO_PI_MEGA * l);
        Circuit circuit = Circuit.of(
                direct("B", "rail", "ground", 20),
                new Coil("L", "rail", "drain", l, r, 0, 0),
                new Capacitor("C", "rail", "drain", c),
                direct("A", "slow", "ground", 0),
                direct("V", "bias", "slow", -1.5),
                new VoltageSource("S", "gate", "bias", new Wave.Sine(0, 0.2, CARRIER, 0)),
                new Jfet("Q", Polarity.N, "drain", "gate", "ground", new Jfet.Model(4e-3, -3, 0, none, none)));
        return new ModulatedCircuit(
                "square-law multiplier into a bare tank",
                circuit,
                new String[] {"drain", "current of L"},
                1,
                "L",
                1.1,
                100,
                2,
                (t, y, slow, dy) -> {
                    double gate = slow - 1.5 + 0.2 * Math.sin(TWO_PI_MEGA * t);
                    double drawn = channel(4e-3, -3, 0, gate, y[0], 0) + 1e-12 * (2 * y[0] - gate);
                    dy[0] = (y[1] - drawn) / c;
                    dy[1] = (20 - y[0] - r * y[1]) / l;
                });
    }

    /** The long-tailed pair with the foot of its tail resistor on the slow source. */
    static ModulatedCircuit tailModulatedPair() {
        List<Part> parts =
                new ArrayList<>(ReducedCircuits.longTailedPair().circuit().parts());
        parts.removeIf(p -> p.name().equals("Re"));
        parts.add(direct("A", "foot", "ground", 0));
        parts.add(new Resistor("Re", "tail", "foot", 8.2e3));
        double resistance = TWO_PI_MEGA * 10e-6 / 50;
        return new ModulatedCircuit(
                "long-tailed pair modulated at its tail",
                Circuit.of(parts),
                new String[] {"rail", "tank", "tail", "current of Lt"},
                3,
                "Lt",
                6,
                1000,
                1,
                (t, y, slow, dy) -> {
                    double rail = y[0], tank = y[1], tail = y[2], coil = y[3];
                    ReducedCircuits.Transistor q1 = ReducedCircuits.Transistor.at(rail, tank, tail);
                    ReducedCircuits.Transistor q2 = ReducedCircuits.Transistor.at(tank, rail, tail);
                    double across = (rail - tank) / 390, c12 = q1.ofCollector() + q2.ofCollector();
                    double[] v = {
                        (9 - rail) / 2 - coil - across - q1.collector() - q2.base(),
                        coil + across - q1.base() - q2.collector(),
                        q1.base() + q1.collector() + q2.base() + q2.collector() - (tail - slow) / 8.2e3
                    };
                    double[][] c = {
                        {100e-9 + c12 + q2.ofEmitter(), -c12, -q2.ofEmitter()},
                        {-c12, 2.2e-9 + c12 + q1.ofEmitter(), -q1.ofEmitter()},
                        {-q2.ofEmitter(), -q1.ofEmitter(), q1.ofEmitter() + q2.ofEmitter()}
                    };
                    HandLaws.solve(c, v);
                    System.arraycopy(v, 0, dy, 0, 3);
                    dy[3] = (rail - tank - resistance * coil) / 10e-6;
                });
    }

    /** The bipolar Colpitts with its emitter resistor's foot on the slow source. */
    static ModulatedCircuit emitterModulated() {
        List<Part> parts = new ArrayList<>(Circuits.bipolarColpitts().parts());
        parts.removeIf(p -> p.name().equals("Re") || p.name().equals("B"));
        parts.add(direct("B", "rail", "ground", 9));
        parts.add(direct("A", "foot", "ground", 0));
        parts.add(new Resistor("Re", "emitter", "foot", 6.8e3));
        double resistance = TWO_PI_MEGA * 22e-6 / 60;
        return new ModulatedCircuit(
                "emitter-modulated common-base Colpitts",
                Circuit.of(parts),
                new String[] {"base", "collector", "emitter", "current of Lt"},
                3,
                "Lt",
                1.3,
                1000,
                2,
                (t, y, slow, dy) -> {
                    double base = y[0], collector = y[1], emitter = y[2], coil = y[3];
                    ReducedCircuits.Transistor q = ReducedCircuits.Transistor.at(collector, base, emitter);
                    double cbe = q.ofEmitter(), cbc = q.ofCollector();
                    double[] v = {
                        (9 - base) / 22e3 - base / 10e3 - q.base(),
                        coil + (9 - collector) / 4.7e3 - q.collector(),
                        q.base() + q.collector() - (emitter - slow) / 6.8e3
                    };
                    double[][] c = {
                        {10e-9 + cbe + cbc, -cbc, -cbe},
                        {-cbc, 1.2e-9 + cbc, -1.2e-9},
                        {-cbe, -1.2e-9, 11.2e-9 + cbe}
                    };
                    HandLaws.solve(c, v);
                    System.arraycopy(v, 0, dy, 0, 3);
                    dy[3] = (9 - collector - resistance * coil) / 22e-6;
                });
    }
}
