package galena.engine.steady;

import galena.engine.equations.Equations;

/**
 * Derivatives of one figure by any number of parameters, from one adjoint solve: after it each parameter costs a product along the
 * orbit. The twin of {@link OrbitDerivatives}, which takes one solve a parameter and gives all figures. One per thread.
 */
public final class OrbitAdjoint {
    private final Orbit orbit;
    private final OrbitSystem system;
    private final Closing.Free free;
    private final Waveforms waveforms;

    public OrbitAdjoint(SteadyState.Found found) {
        orbit = found.coarse().copy();
        Equations equations = found.waveforms().equations();
        double drive = found.waveforms().drive();
        free = drive == 0 ? Closing.Free.FREQUENCY : Closing.Free.NOTHING;
        system = new OrbitSystem(equations, found.site());
        system.setDrive(drive);
        waveforms = new Waveforms(equations, orbit, drive);
        system.newtonStep(orbit, free, 0, new double[orbit.x.length], new double[Closing.MOST_FREE]);
    }

    /** The frequency's gradient, Hz. Zero by every parameter for a driven circuit. */
    public Gradient frequency() {
        return solve(new double[orbit.x.length], free.frequency() ? 1 : 0);
    }

    /** The gradient of the mean of an unknown. */
    public Gradient mean(int unknown) {
        double[] weights = new double[orbit.x.length];
        Waveforms.addCoefficientWeights(orbit, unknown, 0, 1, 0, weights);
        return solve(weights, 0);
    }

    /** The gradient of the peak amplitude of harmonic h of x_a − x_b. */
    public Gradient amplitude(int a, int b, int h) {
        double[] first = waveforms.coefficient(a, h), second = waveforms.coefficient(b, h);
        double re = first[0] - second[0], im = first[1] - second[1], size = Math.hypot(re, im);
        double[] weights = new double[orbit.x.length];
        if (size > 0) {
            Waveforms.addCoefficientWeights(orbit, a, h, 2 * re / size, 2 * im / size, weights);
            Waveforms.addCoefficientWeights(orbit, b, h, -2 * re / size, -2 * im / size, weights);
        }
        return solve(weights, 0);
    }

    private Gradient solve(double[] weights, double byFrequency) {
        double[] rows = new double[orbit.x.length];
        double[][] handed = new double[orbit.intervals()][system.charges()];
        system.adjoint(orbit, free, weights, byFrequency, rows, handed);
        return new Gradient(rows, handed);
    }

    /** A figure's gradient: gives its derivative by any parameter. */
    public final class Gradient {
        private final double[] rows;
        private final double[][] handed;

        private Gradient(double[] rows, double[][] handed) {
            this.rows = rows;
            this.handed = handed;
        }

        /**
         * By a parameter of the circuit, as in {@link OrbitDerivatives#between}.
         *
         * @param below the equations at p − delta
         * @param above the equations at p + delta
         * @param delta half the distance
         */
        public double between(Equations below, Equations above, double delta) {
            return system.gathered(orbit, ParameterChange.between(orbit, below, above, delta), rows, handed);
        }

        /** By a capacitance (F) across two unknowns that are voltages; 0 is ground. */
        public double byCapacitance(int a, int b) {
            double[] charge = new double[orbit.x.length];
            for (int p = 0; p < orbit.x.length; p += orbit.stride) {
                double v = orbit.x[p + a] - orbit.x[p + b];
                charge[p + a] += v;
                charge[p + b] -= v;
                charge[p] = 0;
            }
            return system.gathered(orbit, new OrbitSystem.Change(new double[orbit.x.length], charge), rows, handed);
        }

        /** By a conductance (S) across two unknowns that are voltages; 0 is ground. */
        public double byConductance(int a, int b) {
            double[] current = new double[orbit.x.length];
            for (int p = 0; p < orbit.x.length; p += orbit.stride) {
                double v = orbit.x[p + a] - orbit.x[p + b];
                current[p + a] += v;
                current[p + b] -= v;
                current[p] = 0;
            }
            return system.gathered(orbit, new OrbitSystem.Change(current, new double[orbit.x.length]), rows, handed);
        }

        /** By a mutual inductance (H) between two branches whose currents are unknowns; by a self-inductance when they are one. */
        public double byInductance(int first, int second) {
            double[] flux = new double[orbit.x.length];
            for (int p = 0; p < orbit.x.length; p += orbit.stride) {
                flux[p + first] += orbit.x[p + second];
                if (first != second) flux[p + second] += orbit.x[p + first];
            }
            return system.gathered(orbit, new OrbitSystem.Change(new double[orbit.x.length], flux), rows, handed);
        }
    }
}
