package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.startup.Site;

/**
 * The periodic response of a circuit to its alternating sources, their common period imposed. The drive is raised from zero,
 * where the operating point is the answer, in steps that shrink when the response changes sharply. Immutable.
 */
public final class DrivenSteadyState {
    private static final int INTERVALS = 32;
    private static final int NEWTON_STEPS = 14;
    private static final double FIRST_STEP = 0.5;
    private static final double SMALLEST_STEP = 1e-3;
    private static final double MULTIPLE = 1e-9;

    private final Accuracy accuracy;
    private final Watch watch;

    public DrivenSteadyState(Accuracy accuracy, Watch watch) {
        this.accuracy = accuracy;
        this.watch = watch;
    }

    public DrivenSteadyState(Accuracy accuracy) {
        this(accuracy, Watch.NONE);
    }

    /**
     * @param point the operating point with sources at rest
     * @param fundamental Hz; every source's frequency is a whole multiple of it
     * @throws IllegalArgumentException when some source's frequency is not
     */
    public SteadyState solve(OperatingPoint.Found point, double fundamental) {
        Equations equations = point.equations();
        for (double frequency : equations.sourceFrequencies()) {
            double ratio = frequency / fundamental;
            if (Math.abs(ratio - Math.rint(ratio)) > MULTIPLE * ratio || ratio < 0.5) {
                throw new IllegalArgumentException("a source at " + frequency + " Hz does not repeat with "
                        + fundamental + " Hz: take a fundamental that divides every source's frequency");
            }
        }
        OrbitSystem system = new OrbitSystem(equations, new Site("the source", 0, 0));
        Orbit orbit = new Orbit(Orbit.uniformMesh(INTERVALS), equations.stride(), fundamental);
        for (int p = 0; p < orbit.x.length; p += orbit.stride) {
            System.arraycopy(point.x(), 0, orbit.x, p, orbit.stride);
        }
        system.plan(orbit);
        OrbitNewton newton = new OrbitNewton(system);
        double drive = 0, step = FIRST_STEP;
        while (drive < 1) {
            watch.check();
            double next = Math.min(1, drive + step);
            Orbit trial = orbit.copy();
            system.setDrive(next);
            if (newton.improve(trial, Closing.Free.NOTHING, 0, NEWTON_STEPS)) {
                orbit = next < 1 ? trial.onMesh(Remesh.follow(trial, equations, INTERVALS)) : trial;
                drive = next;
                step *= 2;
            } else {
                step /= 3;
                if (step < SMALLEST_STEP) {
                    return new SteadyState.NotFound(SteadyState.Reason.DRIVE_STUCK, drive, 0);
                }
            }
        }
        return new Refinement(system, Closing.Free.NOTHING, accuracy, watch).fromRough(orbit);
    }
}
