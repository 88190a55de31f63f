package galena.engine.steady;

import galena.engine.equations.Equations;
import galena.engine.equations.Evaluation;

/**
 * A mesh that follows the solution: intervals are laid so that each holds the same share of |x⁗|^(1/4), the step that a cubic
 * can bridge (C. de Boor, Springer Lecture Notes in Mathematics 363 (1974) 12; Ascher, Mattheij and Russell §9.1). The fourth
 * derivative is read from the jumps of the third between neighbouring cubics, of the unknowns and of the conduction currents that
 * drive them; where a junction starts to conduct it is large, and the mesh gathers there. Where a square law bends, a mesh point is
 * put on the bend.
 */
final class Remesh {
    /** Share of the mesh kept uniform, so that no stretch is left bare. */
    private static final double UNIFORM_SHARE = 0.3;

    /** Two mesh points are not put nearer to each other than this share of an even interval for a kink's sake. */
    private static final double NEAR = 0.3;

    private static final double SMALL_SWING = 1e-2;

    private Remesh() {}

    /** The mesh of the given number of intervals for an orbit of a circuit. */
    static double[] follow(Orbit orbit, Equations equations, int intervals) {
        double[] density = new double[orbit.intervals()];
        boolean[] isCurrent = new boolean[orbit.stride], isVoltage = new boolean[orbit.stride];
        for (int j = 1; j < orbit.stride; j++) {
            isCurrent[j] = equations.isCurrent(j);
            isVoltage[j] = !isCurrent[j];
        }
        raise(density, orbit, isCurrent);
        raise(density, currents(orbit, equations), isVoltage);
        for (int k = 0; k < density.length; k++) density[k] = Math.pow(density[k], 0.25);
        density = smoothed(density);
        double total = 0;
        for (int k = 0; k < density.length; k++) total += density[k] * orbit.width(k);
        double floor = UNIFORM_SHARE * total / (1 - UNIFORM_SHARE);
        double all = total + floor;
        if (!(all > 0)) return Orbit.uniformMesh(intervals);
        double[] shares = shares(intervals, places(Kinks.of(orbit, equations), orbit, density, floor, all));
        double[] mesh = new double[intervals + 1];
        int from = 0;
        double passed = 0;
        for (int k = 1; k < intervals; k++) {
            double wanted = all * shares[k];
            while (passed + (density[from] + floor) * orbit.width(from) < wanted) {
                passed += (density[from] + floor) * orbit.width(from);
                from++;
            }
            mesh[k] = orbit.mesh[from] + (wanted - passed) / (density[from] + floor);
        }
        mesh[intervals] = 1;
        return mesh;
    }

    /** How much of the mesh lies before each phase, 0 to 1. */
    private static double[] places(double[] phases, Orbit orbit, double[] density, double floor, double all) {
        double[] places = new double[phases.length];
        int from = 0;
        double passed = 0;
        for (int k = 0; k < phases.length; k++) {
            while (orbit.mesh[from + 1] < phases[k]) {
                passed += (density[from] + floor) * orbit.width(from);
                from++;
            }
            places[k] = (passed + (density[from] + floor) * (phases[k] - orbit.mesh[from])) / all;
        }
        return places;
    }

    /**
     * The shares of the mesh before each of its points: even, but so that points fall on the given places. Of places nearer to each
     * other or to the period's ends than {@link #NEAR} intervals, the first is kept.
     */
    private static double[] shares(int intervals, double[] places) {
        double[] shares = new double[intervals + 1];
        double from = 0, near = NEAR / intervals;
        int at = 0;
        for (double place : places) {
            if (place - from < near || 1 - place < near) continue;
            int to = Math.max(at + 1, (int) Math.round(place * intervals));
            if (to >= intervals) break;
            for (int k = at + 1; k <= to; k++) shares[k] = from + (place - from) * (k - at) / (to - at);
            from = place;
            at = to;
        }
        for (int k = at + 1; k <= intervals; k++) shares[k] = from + (1 - from) * (k - at) / (intervals - at);
        return shares;
    }

    /** The conduction i(x) along an orbit, laid out like one. */
    private static Orbit currents(Orbit orbit, Equations equations) {
        Orbit currents = new Orbit(orbit.mesh, orbit.stride, orbit.frequency);
        Evaluation work = equations.newEvaluation();
        for (int p = 0; p < orbit.x.length; p += orbit.stride) {
            equations.evaluate(orbit.x, p, work);
            System.arraycopy(work.i, 1, currents.x, p + 1, orbit.stride - 1);
        }
        return currents;
    }

    /** Raises the density to |x⁗|/swing where that is more; small swings count against the largest of their kind. */
    private static void raise(double[] density, Orbit orbit, boolean[] kind) {
        int n = orbit.intervals();
        double[] swing = orbit.swings();
        double[] largest = new double[2];
        for (int j = 1; j < swing.length; j++) {
            largest[kind[j] ? 1 : 0] = Math.max(largest[kind[j] ? 1 : 0], swing[j]);
        }
        double[] jump = new double[n]; // at the end of each interval
        for (int j = 1; j < orbit.stride; j++) {
            double scale = Math.max(swing[j], SMALL_SWING * largest[kind[j] ? 1 : 0]);
            if (scale == 0) continue;
            double first = thirdDerivative(orbit, 0, j), here = first;
            for (int k = 0; k < n; k++) {
                int next = (k + 1) % n;
                double there = next == 0 ? first : thirdDerivative(orbit, next, j);
                double fourth = Math.abs(there - here) / (0.5 * (orbit.width(k) + orbit.width(next)));
                jump[k] = Math.max(jump[k], fourth / scale);
                here = there;
            }
        }
        for (int k = 0; k < n; k++) density[k] = Math.max(density[k], Math.max(jump[k], jump[(k + n - 1) % n]));
    }

    private static double[] smoothed(double[] density) {
        int n = density.length;
        double[] out = new double[n];
        for (int k = 0; k < n; k++) {
            out[k] = 0.25 * density[(k + n - 1) % n] + 0.5 * density[k] + 0.25 * density[(k + 1) % n];
        }
        return out;
    }

    private static final double[] THIRD_DIFFERENCE = thirdDifference();

    /** Weights of the third divided difference over the points of the cubic, times 6. */
    private static double[] thirdDifference() {
        double[] weights = new double[Orbit.POINTS.length];
        for (int k = 0; k < weights.length; k++) {
            double product = 1;
            for (int j = 0; j < weights.length; j++) if (j != k) product *= Orbit.POINTS[k] - Orbit.POINTS[j];
            weights[k] = 6 / product;
        }
        return weights;
    }

    private static double thirdDerivative(Orbit orbit, int k, int j) {
        double h = orbit.width(k);
        return orbit.interpolate(k, THIRD_DIFFERENCE, j) / (h * h * h);
    }
}
