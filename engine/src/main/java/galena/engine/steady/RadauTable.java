package galena.engine.steady;

/** The numbers of the three-stage Radau IIA method, for those who step with it. */
public final class RadauTable {
    private RadauTable() {}

    /** Node j, in (0, 1]. */
    public static double node(int j) {
        return Radau.NODES[j];
    }

    /** Entry (i, j) of the inverse Runge-Kutta matrix. */
    public static double inverse(int i, int j) {
        return Radau.INVERSE[Radau.STAGES * i + j];
    }

    /** Basis polynomial of point p (0 the step's start, then the nodes) at s; beyond 1 it foretells. */
    public static double basis(int p, double s) {
        return Lagrange.value(Orbit.POINTS, p, s);
    }
}
