package galena.engine.equations;

import galena.engine.circuit.Circuit;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.CurrentSource;
import galena.engine.part.Diode;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Load;
import galena.engine.part.Mosfet;
import galena.engine.part.OpAmp;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * One kind of part on its own, to be put on any nets.
 *
 * @param name of the kind
 * @param pins nets it takes
 * @param parts the part, with whatever it cannot be without, on the given nets
 */
record Specimen(String name, int pins, Function<String[], List<Part>> parts) {
    private static final Junction GATE = Junction.silicon(1e-14, 1.1, 3e-12, 0.8, 0.5, 0);
    private static final Junction DIODE = Junction.silicon(3e-9, 1.8, 2e-12, 0.6, 0.4, 4e-9);
    private static final Junction TUNING = Junction.silicon(1e-13, 1, 500e-12, 0.9, 1.2, 0);
    private static final Junction HYPERABRUPT = Junction.silicon(1e-13, 1, 500e-12, 0.7, 1, 0);
    private static final Jfet.Model JFET = new Jfet.Model(8e-3, -2.5, 0.02, GATE, GATE);
    private static final Mosfet.Model MOSFET = new Mosfet.Model(
            -1.2, 6e-3, 0.03, 3e-12, 0.5e-12, 1e-12, 1e-9, Junction.silicon(1e-13, 1, 4e-12, 0.8, 0.5, 0));
    private static final Bipolar.Model BIPOLAR =
            new Bipolar.Model(1e-14, 200, 4, 80, 0.4e-9, 50e-9, 8e-12, 0.75, 0.35, 3e-12, 0.6, 0.33, 0);
    private static final Bipolar.Model WITH_BASE_RESISTANCE = new Bipolar.Model(
            1e-14, 200, 4, Double.POSITIVE_INFINITY, 0.4e-9, 50e-9, 8e-12, 0.75, 0.35, 0, 0.6, 0.33, 150);

    private static final OpAmp.Model AMPLIFIER =
            new OpAmp.Model(1e5, 1e6, 0.5e6, 1.2, 1.5, 75, 20e-3, 1.5e-3, 80e-9, 2e6);

    static Stream<Specimen> all() {
        return Stream.of(
                new Specimen("resistor", 2, n -> List.of(new Resistor("X", n[0], n[1], 4.7e3, 1e-3))),
                new Specimen("preset", 3, n -> List.of(new Preset("X", n[0], n[1], n[2], 22e3, 0.3))),
                new Specimen("capacitor", 2, n -> List.of(new Capacitor("X", n[0], n[1], 330e-12, -750e-6))),
                new Specimen("trimmer", 2, n -> List.of(new Trimmer("X", n[0], n[1], 5e-12, 60e-12, 0.4, 1e-4))),
                new Specimen("coil", 2, n -> List.of(new Coil("X", n[0], n[1], 180e-6, 12, 6e-12, 5e-5))),
                new Specimen("coupled windings", 4, Specimen::coupled),
                new Specimen(
                        "resonator", 2, n -> List.of(Resonator.ofFrequency("X", n[0], n[1], 1e6, 5e4, 10e-15, 4e-12))),
                new Specimen("voltage source", 2, n -> List.of(new VoltageSource("X", n[0], n[1], new Wave.Direct(3)))),
                new Specimen(
                        "current source", 2, n -> List.of(new CurrentSource("X", n[0], n[1], new Wave.Direct(2e-3)))),
                new Specimen("battery", 2, n -> List.of(new Battery("X", n[0], n[1], 9, 1.5))),
                new Specimen("load", 2, n -> List.of(new Load("X", n[0], n[1], 10e6, 12e-12))),
                new Specimen("diode", 2, n -> List.of(new Diode("X", n[0], n[1], DIODE))),
                new Specimen("tuning diode", 2, n -> List.of(new Diode("X", n[0], n[1], TUNING))),
                new Specimen("tuning diode of grading 1", 2, n -> List.of(new Diode("X", n[0], n[1], HYPERABRUPT))),
                jfet(Polarity.N),
                jfet(Polarity.P),
                bipolar(Polarity.N, BIPOLAR),
                bipolar(Polarity.P, BIPOLAR),
                bipolar(Polarity.N, WITH_BASE_RESISTANCE),
                mosfet(Polarity.N),
                mosfet(Polarity.P),
                dual(Polarity.N),
                dual(Polarity.P),
                new Specimen("op-amp", 5, n -> List.of(new OpAmp("X", n[0], n[1], n[2], n[3], n[4], AMPLIFIER))));
    }

    static Specimen jfet(Polarity polarity) {
        return new Specimen(polarity + " JFET", 3, n -> List.of(new Jfet("X", polarity, n[0], n[1], n[2], JFET)));
    }

    static Specimen bipolar(Polarity polarity, Bipolar.Model model) {
        return new Specimen(
                polarity + " bipolar" + (model.baseResistance() > 0 ? " with base resistance" : ""),
                3,
                n -> List.of(new Bipolar("X", polarity, n[0], n[1], n[2], model)));
    }

    static Specimen bipolar(Polarity polarity) {
        return bipolar(polarity, BIPOLAR);
    }

    static Specimen mosfet(Polarity polarity) {
        return new Specimen(polarity + " MOSFET", 3, n -> List.of(new Mosfet("X", polarity, n[0], n[1], n[2], MOSFET)));
    }

    static Specimen dual(Polarity polarity) {
        return new Specimen(
                polarity + " dual-gate MOSFET",
                4,
                n -> List.of(new DualGateMosfet("X", polarity, n[0], n[1], n[2], n[3], MOSFET, MOSFET)));
    }

    private static List<Part> coupled(String[] n) {
        return List.of(
                new Coil("X", n[0], n[1], 180e-6, 12, 6e-12, 5e-5),
                new Coil("Y", n[2], n[3], 20e-6, 2, 0, 0),
                new Coupling("K", "X", "Y", -0.7));
    }

    /** On nets of its own, at a temperature (°C). */
    Equations equations(double celsius) {
        return on(celsius, "p0", "p1", "p2", "p3", "p4");
    }

    /** On given nets. */
    Equations on(double celsius, String... nets) {
        return Equations.of(Circuit.of(parts.apply(nets)).atTemperature(celsius));
    }

    @Override
    public String toString() {
        return name;
    }
}
