package galena.engine.steady;

import java.util.Arrays;

/**
 * One period of all unknowns: a mesh on [0, 1] and the values at the three Radau points of every interval. The value at an
 * interval's start is the last of the interval before; the first interval follows the last. Working state of the solvers,
 * changed in place.
 */
final class Orbit {
    /** Mesh points, 0 first, 1 last. */
    final double[] mesh;

    /** Unknown j of point p (three to an interval) at p · stride + j; ground's zero first. */
    final double[] x;

    final int stride;
    /** Hz. */
    double frequency;

    Orbit(double[] mesh, int stride, double frequency) {
        this.mesh = mesh;
        this.stride = stride;
        this.frequency = frequency;
        x = new double[(mesh.length - 1) * Radau.STAGES * stride];
    }

    Orbit copy() {
        Orbit copy = new Orbit(mesh, stride, frequency);
        System.arraycopy(x, 0, copy.x, 0, x.length);
        return copy;
    }

    /** Adds a multiple of a change of it, on the same mesh. */
    void add(double share, Orbit change) {
        for (int p = 0; p < x.length; p++) x[p] += share * change.x[p];
        frequency += share * change.frequency;
    }

    int intervals() {
        return mesh.length - 1;
    }

    int points() {
        return intervals() * Radau.STAGES;
    }

    double width(int interval) {
        return mesh[interval + 1] - mesh[interval];
    }

    /** Where stage j of an interval starts in {@link #x}. */
    int at(int interval, int stage) {
        return (interval * Radau.STAGES + stage) * stride;
    }

    /** Where the values at an interval's start are found: the last stage of the interval before. */
    int start(int interval) {
        return at(interval == 0 ? intervals() - 1 : interval - 1, Radau.STAGES - 1);
    }

    /** Phase of a stage, 0 to 1. */
    double phase(int interval, int stage) {
        return mesh[interval] + Radau.NODES[stage] * width(interval);
    }

    static double[] uniformMesh(int intervals) {
        double[] mesh = new double[intervals + 1];
        for (int k = 0; k <= intervals; k++) mesh[k] = (double) k / intervals;
        return mesh;
    }

    /** Swing (largest minus smallest) of every unknown. */
    double[] swings() {
        double[] low = new double[stride], high = new double[stride];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (int p = 0; p < x.length; p += stride) {
            for (int j = 0; j < stride; j++) {
                low[j] = Math.min(low[j], x[p + j]);
                high[j] = Math.max(high[j], x[p + j]);
            }
        }
        for (int j = 0; j < stride; j++) high[j] -= low[j];
        return high;
    }

    /** The same orbit carried to another mesh by its cubics. */
    Orbit onMesh(double[] newMesh) {
        Orbit carried = new Orbit(newMesh, stride, frequency);
        double[] weights = new double[Radau.STAGES + 1];
        int from = 0;
        for (int k = 0; k < carried.intervals(); k++) {
            for (int j = 0; j < Radau.STAGES; j++) {
                double t = carried.phase(k, j);
                while (from < intervals() - 1 && t > mesh[from + 1]) from++;
                basis((t - mesh[from]) / width(from), weights);
                int to = carried.at(k, j);
                for (int u = 1; u < stride; u++) carried.x[to + u] = interpolate(from, weights, u);
            }
        }
        return carried;
    }

    /** Writes the cubic basis at a place s in [0, 1] of an interval: start, then the three stages. */
    static void basis(double s, double[] weights) {
        for (int k = 0; k < POINTS.length; k++) weights[k] = Lagrange.value(POINTS, k, s);
    }

    static final double[] POINTS = {0, Radau.NODES[0], Radau.NODES[1], Radau.NODES[2]};

    double interpolate(int interval, double[] weights, int unknown) {
        return weights[0] * x[start(interval) + unknown]
                + weights[1] * x[at(interval, 0) + unknown]
                + weights[2] * x[at(interval, 1) + unknown]
                + weights[3] * x[at(interval, 2) + unknown];
    }

    /** Every interval halved. */
    double[] halvedMesh() {
        double[] halved = new double[2 * intervals() + 1];
        for (int k = 0; k < intervals(); k++) {
            halved[2 * k] = mesh[k];
            halved[2 * k + 1] = (mesh[k] + mesh[k + 1]) / 2;
        }
        halved[2 * intervals()] = 1;
        return halved;
    }
}
