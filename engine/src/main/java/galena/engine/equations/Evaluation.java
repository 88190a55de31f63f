package galena.engine.equations;

/**
 * Where one evaluation of the equations is written: i and q by row (index 0 unused), G and C by pattern entry (entry 0 unused).
 * One per thread.
 */
public final class Evaluation {
    /** Currents, voltages of source rows, voltages of flux rows; length {@link Equations#stride()}. */
    public final double[] i;

    /** Charges and fluxes; length {@link Equations#stride()}. */
    public final double[] q;

    /** ∂i/∂x by pattern entry. */
    public final double[] g;

    /** ∂q/∂x by pattern entry. */
    public final double[] c;

    /** Room for one device law. */
    final double[] law = new double[16];

    /** Voltages at which junctions are linearised, from {@link #tangentAt} on; empty: where x puts them. */
    double[] tangents = {};

    int tangentAt;

    Evaluation(int stride, int entries) {
        i = new double[stride];
        q = new double[stride];
        g = new double[entries];
        c = new double[entries];
    }
}
