package galena.stopwatch;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import java.util.ArrayList;
import java.util.List;

/** The measured circuits, and answers that must exist. Values are invented. */
public enum Bench {
    /** A grounded-gate Colpitts for about 1 MHz: three capacitors, a coil, a JFET. */
    OSCILLATOR,
    /** The oscillator driving a long-tailed pair into a tuned coil, with its bias network. */
    TRANSMITTER,
    /** The transmitter with its audio brought through 10 µF: what the carrier has to wait for is a tenth of a second. */
    COUPLED;

    /** @param trim position of the oscillator's trimmer, 0 to 1 */
    Equations equations(double trim) {
        List<Part> parts = new ArrayList<>(oscillator(trim));
        if (this != OSCILLATOR) parts.addAll(modulator());
        if (this == COUPLED) {
            parts.add(new Capacitor("Cline", "audio", "mod", 10e-6));
            parts.add(new Resistor("Rline", "audio", "ground", 600));
        }
        return Equations.of(Circuit.of(parts.toArray(Part[]::new)));
    }

    private static List<Part> oscillator(double trim) {
        Junction gate = Junction.silicon(1e-14, 1, 3e-12, 0.8, 0.5, 0);
        return List.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                Coil.ofQ("Lt", "rail", "drain", 180e-6, 80, 1e6),
                new Trimmer("Ct", "drain", "ground", 5e-12, 60e-12, trim, 0),
                new Capacitor("Cf", "drain", "source", 100e-12),
                new Capacitor("Cs", "source", "ground", 1000e-12),
                new Resistor("Rs", "source", "ground", 680),
                new Jfet("Q1", Polarity.N, "drain", "ground", "source", new Jfet.Model(8e-3, -2.5, 0.01, gate, gate)));
    }

    private static List<Part> modulator() {
        Bipolar.Model npn = new Bipolar.Model(1e-14, 200, 4, 80, 0.4e-9, 50e-9, 8e-12, 0.75, 0.35, 3e-12, 0.6, 0.33, 0);
        return List.of(
                new Capacitor("Cc", "drain", "base2", 3.3e-12),
                new Resistor("Ra", "rail", "bias", 15e3),
                new Resistor("Rb", "bias", "ground", 10e3),
                new Capacitor("Cbias", "bias", "ground", 100e-9),
                new Resistor("R2", "bias", "base2", 1e3),
                new Resistor("R3", "bias", "base3", 1e3),
                new Capacitor("C3", "base3", "ground", 100e-9),
                new Bipolar("Q2", Polarity.N, "rail", "base2", "tail", npn),
                new Bipolar("Q3", Polarity.N, "out", "base3", "tail", npn),
                new Bipolar("Q4", Polarity.N, "tail", "mod", "foot", npn),
                new Resistor("Re", "foot", "ground", 1e3),
                new Resistor("Rm1", "rail", "mod", 39e3),
                new Resistor("Rm2", "mod", "ground", 10e3),
                new Capacitor("Cm", "mod", "ground", 1e-9),
                Coil.ofQ("Lo", "rail", "out", 220e-6, 60, 1e6),
                new Trimmer("Co", "out", "rail", 60e-12, 160e-12, 0.5, 0));
    }

    static OperatingPoint.Found point(Equations equations) {
        if (OperatingPointLadder.climb(equations) instanceof OperatingPoint.Found found) return found;
        throw new IllegalStateException("no operating point");
    }

    static Startup startup(OperatingPoint.Found point) {
        return Startup.readiest(point).orElseThrow();
    }

    /** From nothing: operating point, startup, orbit. */
    static SteadyState.Found cold(Equations equations, Accuracy accuracy) {
        OperatingPoint.Found point = point(equations);
        return found(new SteadyOscillation(accuracy).solve(point, startup(point)));
    }

    static SteadyState.Found found(SteadyState state) {
        if (state instanceof SteadyState.Found found) return found;
        throw new IllegalStateException("no steady state: " + state);
    }
}
