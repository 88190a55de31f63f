package galena.engine;

import galena.engine.circuit.Circuit;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;

/** Circuits that several tests use. Values are invented. */
public final class Circuits {
    private Circuits() {}

    /** A small n-channel JFET of middling values. */
    public static Jfet.Model jfet(double saturationCurrent, double pinchOff) {
        Junction gate = Junction.silicon(1e-14, 1, 3e-12, 0.8, 0.5, 0);
        return new Jfet.Model(saturationCurrent, pinchOff, 0.01, gate, gate);
    }

    public static Bipolar.Model npn() {
        return new Bipolar.Model(1e-14, 200, 4, 80, 0.4e-9, 50e-9, 8e-12, 0.75, 0.35, 3e-12, 0.6, 0.33, 0);
    }

    /** Grounded-gate Colpitts for about 1 MHz. */
    public static Circuit groundedGateColpitts() {
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                Coil.ofQ("Lt", "rail", "drain", 180e-6, 80, 1e6),
                new Trimmer("Ct", "drain", "ground", 5e-12, 60e-12, 0.5, 0),
                new Capacitor("Cf", "drain", "source", 100e-12),
                new Capacitor("Cs", "source", "ground", 1000e-12),
                new Resistor("Rs", "source", "ground", 680),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                new Jfet("Q1", Polarity.N, "drain", "ground", "source", jfet(8e-3, -2.5)));
    }

    /**
     * Hartley with gate leak: the gate junction sets the amplitude. The sections share most of their flux, and strays sit at the
     * tap: a loosely coupled tap with nothing across it would ring far above the carrier.
     */
    public static Circuit gateLeakHartley() {
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                Coil.ofQ("La", "top", "tap", 90e-6, 80, 1e6),
                Coil.ofQ("Lb", "tap", "ground", 6e-6, 60, 1e6),
                new Coupling("Kab", "La", "Lb", 0.9),
                new Trimmer("Ct", "top", "ground", 100e-12, 220e-12, 0.5, 0),
                new Capacitor("Cs", "tap", "ground", 22e-12),
                new Capacitor("Cg", "top", "gate", 47e-12),
                new Resistor("Rg", "gate", "ground", 220e3),
                new Jfet("Q1", Polarity.N, "rail", "gate", "tap", jfet(8e-3, -2.5)));
    }

    /** Common-base bipolar Colpitts of moderate drive: a third of a milliampere into a loaded tank. */
    public static Circuit bipolarColpitts() {
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Resistor("R1", "rail", "base", 22e3),
                new Resistor("R2", "base", "ground", 10e3),
                new Capacitor("Cb", "base", "ground", 10e-9),
                Coil.ofQ("Lt", "rail", "collector", 22e-6, 60, 1e6),
                new Resistor("Rt", "rail", "collector", 4.7e3),
                new Capacitor("Cf", "collector", "emitter", 1.2e-9),
                new Capacitor("Ce", "emitter", "ground", 10e-9),
                new Resistor("Re", "emitter", "ground", 6.8e3),
                new Bipolar("Q1", Polarity.N, "collector", "base", "emitter", npn()));
    }

    /**
     * Grounded-gate Colpitts driving one base of a long-tailed pair into a tuned coil; the other base holds the bias. The oscillator
     * is loaded so that its drain stays above ground, and the coil is small enough for the collector to swing by half the
     * supply at full modulation.
     */
    public static Circuit transmitter() {
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                Coil.ofQ("Lt", "rail", "drain", 180e-6, 80, 1e6),
                new Resistor("Rd", "rail", "drain", 15e3),
                new Trimmer("Ct", "drain", "ground", 5e-12, 60e-12, 0.5, 0),
                new Capacitor("Cf", "drain", "source", 100e-12),
                new Capacitor("Cs", "source", "ground", 1000e-12),
                new Resistor("Rs", "source", "ground", 1e3),
                new Jfet("Q1", Polarity.N, "drain", "ground", "source", jfet(8e-3, -2.5)),
                new Capacitor("Cc", "drain", "base2", 3.3e-12),
                new Resistor("Ra", "rail", "bias", 15e3),
                new Resistor("Rb", "bias", "ground", 10e3),
                new Capacitor("Cbias", "bias", "ground", 100e-9),
                new Resistor("R2", "bias", "base2", 1e3),
                new Resistor("R3", "bias", "base3", 1e3),
                new Capacitor("C3", "base3", "ground", 100e-9),
                new Bipolar("Q2", Polarity.N, "rail", "base2", "tail", npn()),
                new Bipolar("Q3", Polarity.N, "out", "base3", "tail", npn()),
                new Bipolar("Q4", Polarity.N, "tail", "mod", "foot", npn()),
                new Resistor("Re", "foot", "ground", 2.2e3),
                new Resistor("Rm1", "rail", "mod", 39e3),
                new Resistor("Rm2", "mod", "ground", 10e3),
                new Capacitor("Cm", "mod", "ground", 1e-9),
                Coil.ofQ("Lo", "rail", "out", 22e-6, 60, 1e6),
                new Capacitor("Cp", "out", "rail", 910e-12),
                new Trimmer("Co", "out", "rail", 20e-12, 220e-12, 0.5, 0));
    }
}
