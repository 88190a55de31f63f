package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.part.Part;

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

    /** Of a followed period of a free-running circuit, on its own mesh. */
    public OrbitAdjoint(Followed followed) {
        orbit = followed.orbit().copy();
        waveforms = followed.waveforms();
        free = Closing.Free.FREQUENCY;
        system = new OrbitSystem(waveforms.equations(), followed.site());
        system.newtonStep(orbit, free, 0, new double[orbit.x.length], new double[Closing.MOST_FREE]);
    }

    /** The frequency's gradient, Hz. Zero by every parameter for a driven circuit. */
    public Gradient frequency() {
        return of(OrbitFigure.frequency());
    }

    /** The gradient of the mean of an unknown. */
    public Gradient mean(int unknown) {
        return of(OrbitFigure.mean(unknown, 0));
    }

    /** The gradient of the peak amplitude of harmonic h of x_a − x_b. */
    public Gradient amplitude(int a, int b, int h) {
        return of(OrbitFigure.amplitude(a, b, h));
    }

    /** The gradient of any figure. */
    public Gradient of(OrbitFigure figure) {
        double[] weights = new double[orbit.x.length];
        double byFrequency = figure.addGradient(waveforms, weights);
        return new Gradient(new AdjointSweep(system, orbit, free, weights, free.frequency() ? byFrequency : 0));
    }

    /** The equations of the state. */
    public Equations equations() {
        return system.equations();
    }

    /** How a parameter enters the equations along this orbit: made once, it serves the gradient of every figure. */
    public static final class Parameter {
        private final Change change;

        private Parameter(Change change) {
            this.change = change;
        }
    }

    /**
     * A parameter of the circuit, as in {@link OrbitDerivatives#between}.
     *
     * @param below the equations at p − delta
     * @param above the equations at p + delta
     * @param delta half the distance
     */
    public Parameter between(Equations below, Equations above, double delta) {
        return new Parameter(ParameterChange.between(orbit, below, above, delta));
    }

    /**
     * The same of a value that enters through one part alone, which is evaluated by itself: cheaper the larger the circuit. Not for
     * coils that are coupled, whose mutual inductance belongs to no part.
     *
     * @param below the part at p − delta
     * @param above the part at p + delta
     * @param delta half the distance
     */
    public Parameter between(Part below, Part above, double delta) {
        return new Parameter(ParameterChange.ofPart(orbit, system.equations(), below, above, delta));
    }

    /** What does not enter these equations. */
    public Parameter nothing() {
        return new Parameter(new Change(new double[orbit.x.length], new double[orbit.x.length]));
    }

    /** A capacitance (F) across two unknowns that are voltages; 0 is ground. */
    public Parameter capacitance(int a, int b) {
        return new Parameter(new Change(new double[orbit.x.length], across(a, b)));
    }

    /** A conductance (S) across two unknowns that are voltages; 0 is ground. */
    public Parameter conductance(int a, int b) {
        return new Parameter(new Change(across(a, b), new double[orbit.x.length]));
    }

    /** What one unit across two unknowns puts into their rows. */
    private double[] across(int a, int b) {
        double[] rows = new double[orbit.x.length];
        for (int p = 0; p < orbit.x.length; p += orbit.stride) {
            double v = orbit.x[p + a] - orbit.x[p + b];
            rows[p + a] += v;
            rows[p + b] -= v;
            rows[p] = 0;
        }
        return rows;
    }

    /** A mutual inductance (H) between two branches whose currents are unknowns; a self-inductance when they are one. */
    public Parameter inductance(int first, int second) {
        double[] flux = new double[orbit.x.length];
        for (int p = 0; p < orbit.x.length; p += orbit.stride) {
            flux[p + first] += orbit.x[p + second];
            if (first != second) flux[p + second] += orbit.x[p + first];
        }
        return new Parameter(new Change(new double[orbit.x.length], flux));
    }

    /**
     * An inductance (H) in the lead by which a part is joined to a net: see {@link LeadChange}.
     *
     * @throws IllegalArgumentException when the part is not joined to the net
     */
    public Parameter lead(Part part, String net) {
        return new Parameter(new LeadChange(orbit, system.equations(), part, net).change());
    }

    /** A figure's gradient: gives its derivative by any parameter. */
    public final class Gradient {
        private final AdjointSweep adjoint;

        private Gradient(AdjointSweep adjoint) {
            this.adjoint = adjoint;
        }

        /** By a parameter of the same orbit. */
        public double by(Parameter parameter) {
            return adjoint.by(parameter.change);
        }

        /** As {@link OrbitAdjoint#between}. */
        public double between(Equations below, Equations above, double delta) {
            return by(OrbitAdjoint.this.between(below, above, delta));
        }

        /** As {@link OrbitAdjoint#capacitance}. */
        public double byCapacitance(int a, int b) {
            return by(capacitance(a, b));
        }

        /** As {@link OrbitAdjoint#conductance}. */
        public double byConductance(int a, int b) {
            return by(conductance(a, b));
        }

        /** As {@link OrbitAdjoint#inductance}. */
        public double byInductance(int first, int second) {
            return by(inductance(first, second));
        }
    }
}
