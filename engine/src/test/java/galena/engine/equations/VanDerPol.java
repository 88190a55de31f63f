package galena.engine.equations;

import galena.engine.circuit.Circuit;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Resistor;
import java.util.Map;

/**
 * B. van der Pol's oscillator, x″ − μ(1 − x²)x′ + x = 0: a tank with the conductance i = (μ/Z)(v³/3U² − v), which no part has.
 * Its falling line is laid over the part "feed", its cube over the part "loss". x is v/U, time is counted in 1/ω₀.
 */
public final class VanDerPol {
    /** Volts to one unit of x. */
    public static final double UNIT = 0.1;

    private static final double INDUCTANCE = 100e-6;
    private static final double CAPACITANCE = 250e-12;
    private static final double NOTHING = 1e-15;

    private VanDerPol() {}

    /** rad/s to one unit of frequency. */
    public static double angular() {
        return 1 / Math.sqrt(INDUCTANCE * CAPACITANCE);
    }

    public static Equations of(double mu) {
        Circuit circuit = Circuit.of(
                new Coil("L", "a", "ground", INDUCTANCE, 0, 0, 0),
                new Capacitor("C", "a", "ground", CAPACITANCE),
                new Resistor("feed", "a", "ground", 1 / NOTHING),
                new Resistor("loss", "a", "ground", 1 / NOTHING));
        double siemens = mu / Math.sqrt(INDUCTANCE / CAPACITANCE);
        return Equations.of(
                circuit,
                Map.of(
                        "feed", assembly -> new Power(assembly, -siemens, 1),
                        "loss", assembly -> new Power(assembly, siemens / (3 * UNIT * UNIT), 3)));
    }

    /** i = factor · v^exponent from the only net to ground. */
    private static final class Power implements Element {
        private final double factor;
        private final int exponent;
        private final int entry;

        Power(Assembly assembly, double factor, int exponent) {
            this.factor = factor;
            this.exponent = exponent;
            entry = assembly.entry(1, 1);
        }

        @Override
        public void add(double[] x, int offset, Evaluation e) {
            double v = x[offset + 1];
            e.i[1] += factor * (exponent == 1 ? v : v * v * v);
            e.g[entry] += factor * (exponent == 1 ? 1 : 3 * v * v);
        }

        @Override
        public double power(double[] x, int offset, Evaluation e) {
            double v = x[offset + 1];
            return factor * (exponent == 1 ? v * v : v * v * v * v);
        }
    }
}
