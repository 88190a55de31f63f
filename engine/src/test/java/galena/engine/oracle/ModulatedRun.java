package galena.engine.oracle;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.ode.sampling.StepNormalizer;

/**
 * A {@link ModulatedCircuit} run in time by Hipparchus's DormandPrince853 until it has settled, then one slow period more, read
 * out as the lines beside the carrier: the slow period holds a whole number of carrier cycles, so that a discrete Fourier sum
 * over it is exact.
 */
final class ModulatedRun {
    private static final double TOLERANCE = 1e-9;
    private static final int SAMPLES_A_CYCLE = 32;
    private static final int LINES = 24;

    private final ModulatedCircuit circuit;
    private final double carrier;
    private final double[] swing;

    /**
     * @param carrier mean frequency with modulation, Hz
     * @param swing of each state
     */
    ModulatedRun(ModulatedCircuit circuit, double carrier, double[] swing) {
        this.circuit = circuit;
        this.carrier = carrier;
        this.swing = swing;
    }

    double slow() {
        return carrier / circuit.cycles();
    }

    /** The complex envelope of the coil's current on equally spaced points of the last slow period. */
    double[][] envelope(double[] start) {
        double period = 1 / slow(), settled = circuit.settling() * period;
        double[] y = integrator()
                .integrate(equations(), new ODEState(0, start), settled)
                .getPrimaryState();
        int samples = circuit.cycles() * SAMPLES_A_CYCLE;
        double[] current = new double[samples + 2];
        DormandPrince853Integrator reading = integrator();
        reading.addStepHandler(new StepNormalizer(period / samples, (state, last) -> {
            int k = (int) Math.rint((state.getTime() - settled) / period * samples);
            current[k] = state.getPrimaryState()[circuit.coil()];
        }));
        reading.integrate(equations(), new ODEState(settled, y), settled + period);
        return lines(current, samples);
    }

    private static double[][] sum(double[][] line) {
        int points = 2 * LINES + 1;
        double[][] z = new double[2][points];
        for (int j = 0; j < points; j++) {
            for (int k = -LINES; k <= LINES; k++) {
                double angle = 2 * Math.PI * k * j / points, c = Math.cos(angle), s = Math.sin(angle);
                z[0][j] += line[0][k + LINES] * c - line[1][k + LINES] * s;
                z[1][j] += line[0][k + LINES] * s + line[1][k + LINES] * c;
            }
        }
        return z;
    }

    private double[][] lines(double[] current, int samples) {
        double[][] line = new double[2][2 * LINES + 1];
        for (int k = -LINES; k <= LINES; k++) {
            long turns = (long) circuit.cycles() + k;
            double re = 0, im = 0;
            for (int p = 0; p < samples; p++) {
                double angle = 2 * Math.PI * (turns * p % samples) / samples;
                re += 2 * current[p] * Math.cos(angle) / samples;
                im -= 2 * current[p] * Math.sin(angle) / samples;
            }
            line[0][k + LINES] = re;
            line[1][k + LINES] = im;
        }
        return sum(line);
    }

    private DormandPrince853Integrator integrator() {
        double[] absolute = new double[swing.length], relative = new double[swing.length];
        for (int k = 0; k < swing.length; k++) {
            absolute[k] = TOLERANCE * swing[k];
            relative[k] = TOLERANCE;
        }
        var integrator = new DormandPrince853Integrator(1e-18, 0.004 / carrier, absolute, relative);
        integrator.setInitialStepSize(1e-5 / carrier);
        return integrator;
    }

    private OrdinaryDifferentialEquation equations() {
        return new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return swing.length;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double[] dy = new double[y.length];
                circuit.slopes().at(t, y, circuit.level() * Math.sin(2 * Math.PI * slow() * t), dy);
                return dy;
            }
        };
    }
}
