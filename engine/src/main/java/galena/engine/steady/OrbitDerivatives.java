package galena.engine.steady;

import galena.engine.equations.Equations;

/**
 * Derivatives of a found steady state by parameters of its circuit: exact for the discrete equations, from one linear solve with
 * the factors of the last Newton step for each parameter. How the equations change with the parameter at fixed x is taken as a
 * central difference of two circuits; being smooth in every parameter and evaluated at one x, that costs no accuracy worth
 * naming (1e-9 relative). One per thread.
 */
public final class OrbitDerivatives {
    private final Orbit orbit;
    private final OrbitSystem system;
    private final Waveforms waveforms;
    private final Closing.Free free;
    private final double[] extra = new double[Closing.MOST_FREE];

    public OrbitDerivatives(SteadyState.Found found) {
        orbit = found.coarse().copy();
        Equations equations = found.waveforms().equations();
        double drive = found.waveforms().drive();
        free = drive == 0 ? Closing.Free.FREQUENCY : Closing.Free.NOTHING;
        system = new OrbitSystem(equations, found.site());
        system.setDrive(drive);
        waveforms = new Waveforms(equations, orbit, drive);
        system.newtonStep(orbit, free, 0, new double[orbit.x.length], extra);
    }

    /**
     * The derivative by a parameter p.
     *
     * @param below the equations at p − delta
     * @param above the equations at p + delta, of the same structure
     * @param delta half the distance, in the parameter's unit
     * @throws IllegalArgumentException when the structures differ
     */
    public Derivative between(Equations below, Equations above, double delta) {
        Change explicit = ParameterChange.between(orbit, below, above, delta);
        double[] derivative = new double[orbit.x.length];
        system.differentiate(orbit, explicit, free, derivative, extra);
        Orbit change = new Orbit(orbit.mesh, orbit.stride, free.frequency() ? extra[0] : 0);
        System.arraycopy(derivative, 0, change.x, 0, derivative.length);
        return new Derivative(waveforms, new Waveforms(system.equations(), change, 0));
    }

    /** Derivatives of figures by one parameter, in the figure's unit over the parameter's. */
    public static final class Derivative {
        private final Waveforms at;
        private final Waveforms change;

        Derivative(Waveforms at, Waveforms change) {
            this.at = at;
            this.change = change;
        }

        /** Of the frequency. */
        public double frequency() {
            return change.frequency();
        }

        /** Of the mean of an unknown. */
        public double mean(int unknown) {
            return change.mean(unknown);
        }

        /** Of the peak amplitude of harmonic h of x_a − x_b. */
        public double amplitude(int a, int b, int h) {
            double[] c = minus(at.coefficient(a, h), at.coefficient(b, h));
            double[] d = minus(change.coefficient(a, h), change.coefficient(b, h));
            double size = Math.hypot(c[0], c[1]);
            return size == 0 ? 0 : 2 * (c[0] * d[0] + c[1] * d[1]) / size;
        }

        private static double[] minus(double[] p, double[] q) {
            return new double[] {p[0] - q[0], p[1] - q[1]};
        }
    }
}
