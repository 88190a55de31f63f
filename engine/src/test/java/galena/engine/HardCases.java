package galena.engine;

import galena.engine.circuit.Circuit;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Jfet;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;

/** Circuits built to be nasty to a verdict. Values are invented. */
public final class HardCases {
    private HardCases() {}

    /** The bipolar Colpitts with audio brought to its base through 10 µF: a second of memory beside a microsecond of carrier. */
    public static Circuit coupledThroughTenMicrofarads(double ohms) {
        return Circuits.bipolarColpitts()
                .plus(new Capacitor("Ca", "audio", "base", 10e-6), new Resistor("Ra", "audio", "ground", ohms));
    }

    /** A Colpitts that runs on the inductive side of a 1 MHz quartz of Q 1e5. */
    public static Circuit quartz() {
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Resistor("R1", "rail", "base", 100e3),
                new Resistor("R2", "base", "ground", 100e3),
                Resonator.ofFrequency("X", "base", "ground", 1e6, 1e5, 10e-15, 4e-12),
                new Capacitor("C1", "base", "emitter", 330e-12),
                new Capacitor("C2", "emitter", "ground", 330e-12),
                new Resistor("Re", "emitter", "ground", 2.7e3),
                new Bipolar("Q1", Polarity.N, "rail", "base", "emitter", Circuits.npn()));
    }

    /** The same quartz drawn as its coil, its femtofarads and its holder: the coil's own voltage is a thousand times the supply. */
    public static Circuit quartzDrawn() {
        double omega = 2 * Math.PI * 1e6, henries = 1 / (omega * omega * 10e-15);
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Resistor("R1", "rail", "base", 100e3),
                new Resistor("R2", "base", "ground", 100e3),
                new Coil("Lx", "base", "mid", henries, omega * henries / 1e5, 0, 0),
                new Capacitor("Cx", "mid", "ground", 10e-15),
                new Capacitor("C0", "base", "ground", 4e-12),
                new Capacitor("C1", "base", "emitter", 330e-12),
                new Capacitor("C2", "emitter", "ground", 330e-12),
                new Resistor("Re", "emitter", "ground", 2.7e3),
                new Bipolar("Q1", Polarity.N, "rail", "base", "emitter", Circuits.npn()));
    }

    /** A bipolar stage on a coil in series with its capacitor, whose conduction lasts a hundredth of the period. */
    public static Circuit seriesTank(double q) {
        double omega = 2 * Math.PI * 1e6, farads = 33e-12, henries = 1 / (omega * omega * farads);
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Resistor("R1", "rail", "base", 47e3),
                new Resistor("R2", "base", "ground", 47e3),
                new Coil("Lx", "base", "mid", henries, omega * henries / q, 0, 0),
                new Capacitor("Cx", "mid", "ground", farads),
                new Capacitor("C1", "base", "emitter", 680e-12),
                new Capacitor("C2", "emitter", "ground", 680e-12),
                new Resistor("Re", "emitter", "ground", 2.7e3),
                new Bipolar("Q1", Polarity.N, "rail", "base", "emitter", Circuits.npn()));
    }

    /**
     * A gate-leak Hartley of low pinch-off and a loaded tank that forgets in microseconds, under a leak that takes a millisecond:
     * the tank quits before the gate has recovered.
     */
    public static Circuit longGateLeak() {
        return Circuits.gateLeakHartley()
                .with(new Capacitor("Cg", "top", "gate", 4.7e-9))
                .with(Coil.ofQ("Lb", "tap", "ground", 2e-6, 60, 1e6))
                .with(new Jfet("Q1", Polarity.N, "rail", "gate", "tap", Circuits.jfet(8e-3, -1.2)))
                .plus(new Resistor("Rl", "top", "ground", 2e3));
    }

    /**
     * The gate-leak Hartley with its gate held beyond pinch-off by a battery: dead at rest, alive once the tank's swing opens the
     * channel.
     *
     * @param bias volts below ground
     * @param load ohms across the tank
     * @param leak ohms
     */
    public static Circuit heldBeyondPinchOff(double bias, double load, double leak) {
        return Circuits.gateLeakHartley()
                .with(new Resistor("Rg", "gate", "bias", leak))
                .plus(new Battery("V", "ground", "bias", bias, 100), new Resistor("Rl", "top", "ground", load));
    }

    /** A cross-coupled pair across one of two tuned circuits that share some of their flux: two frequencies, either of which stays. */
    public static Circuit twoTanks(double k) {
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                Coil.ofQ("L1", "rail", "a", 22e-6, 80, 1e6),
                Coil.ofQ("L2", "rail", "b", 22e-6, 80, 1e6),
                new Coupling("K12", "L1", "L2", -0.95),
                new Capacitor("C1", "a", "b", 280e-12),
                Coil.ofQ("L3", "c", "ground", 88e-6, 80, 1e6),
                new Capacitor("C3", "c", "ground", 280e-12),
                new Coupling("K13", "L1", "L3", k),
                new Coupling("K23", "L2", "L3", -k),
                new Bipolar("Q1", Polarity.N, "a", "b2", "tail", Circuits.npn()),
                new Bipolar("Q2", Polarity.N, "b", "a2", "tail", Circuits.npn()),
                new Capacitor("Ca", "a", "a2", 100e-12),
                new Capacitor("Cb", "b", "b2", 100e-12),
                new Resistor("Ra", "bias", "a2", 10e3),
                new Resistor("Rb", "bias", "b2", 10e3),
                new Battery("V", "bias", "ground", 3, 100),
                new Resistor("Rt", "tail", "ground", 4.7e3));
    }

    /** Two transistors that hold each other off or on, with a tank that only listens. */
    public static Circuit latch() {
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Resistor("R1", "rail", "a", 4.7e3),
                new Resistor("R2", "rail", "b", 4.7e3),
                new Resistor("R3", "a", "base2", 47e3),
                new Resistor("R4", "b", "base1", 47e3),
                new Coil("Lt", "b", "t", 180e-6, 20, 0, 0),
                new Capacitor("Ct", "t", "ground", 140e-12),
                new Bipolar("Q1", Polarity.N, "a", "base1", "ground", Circuits.npn()),
                new Bipolar("Q2", Polarity.N, "b", "base2", "ground", Circuits.npn()));
    }

    /** A grounded-gate Colpitts whose drain works into a heavy load: it needs most of its supply. */
    public static Circuit onSupply(double volts) {
        return Circuit.of(
                new Battery("B", "rail", "ground", volts, 2),
                Coil.ofQ("Lt", "rail", "drain", 180e-6, 80, 1e6),
                new Trimmer("Ct", "drain", "ground", 5e-12, 60e-12, 0.5, 0),
                new Capacitor("Cf", "drain", "source", 100e-12),
                new Capacitor("Cs", "source", "ground", 1000e-12),
                new Resistor("Rs", "source", "ground", 680),
                new Resistor("Rload", "rail", "drain", 15e3),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                new Jfet("Q1", Polarity.N, "drain", "ground", "source", Circuits.jfet(8e-3, -2.5)));
    }

    /** A base whose decoupling takes half a millisecond to charge. */
    public static Circuit slowBase() {
        return Circuits.bipolarColpitts().with(new Capacitor("Cb", "base", "ground", 68e-9));
    }

    /** The bipolar Colpitts with a hundredth of its feedback. */
    public static Circuit nonStarter() {
        return Circuits.bipolarColpitts().with(new Capacitor("Cf", "collector", "emitter", 10e-12));
    }
}
