package galena.engine.envelope;

import galena.engine.equations.Equations;
import galena.engine.equations.Places;
import galena.engine.linear.BlockPlan;
import galena.engine.startup.Site;
import galena.engine.steady.RadauTable;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;

/**
 * What all cycles of one solve share: the equations, the mesh of the fast phase with its weights, the rows that hold charge, the
 * order of elimination, and how the slow source enters. Immutable.
 */
final class Layout {
    static final int S = 3;

    /** Points of a carrier's cycle at which sizes are looked at. */
    private static final int LOOKS = 12;

    /** What is cut off at the carrier may conduct at the crest: a pivot is chosen as if this much were there. */
    private static final double LEAST_CONDUCTANCE = 1e-9;

    static final double[] NODES = new double[S];
    static final double[] INVERSE = new double[S * S];
    static final double[] ROW_SUMS = new double[S];

    static {
        for (int i = 0; i < S; i++) {
            NODES[i] = RadauTable.node(i);
            for (int j = 0; j < S; j++) {
                INVERSE[S * i + j] = RadauTable.inverse(i, j);
                ROW_SUMS[i] += INVERSE[S * i + j];
            }
        }
    }

    private static final double ROOT6 = Math.sqrt(6);
    private static final double[] WEIGHTS = {(16 - ROOT6) / 36, (16 + ROOT6) / 36, 1.0 / 9};

    final Equations equations;
    final double[] mesh;
    final Site site;
    final boolean free;
    final double drive;
    final int n;
    final int stride;
    final Places places;
    final int[] charged;
    final int[] chargeIndex;
    final int[] entryRow;
    final int[] entryColumn;
    final BlockPlan plan;

    Layout(SteadyState.Found carrier, double[] mesh) {
        Waveforms waveforms = carrier.waveforms();
        equations = waveforms.equations();
        this.mesh = mesh;
        site = carrier.site();
        drive = waveforms.drive();
        free = drive == 0;
        n = equations.size();
        stride = equations.stride();
        places = new Places(equations);
        charged = places.charged;
        chargeIndex = places.chargeIndex;
        entryRow = places.entryRow;
        entryColumn = places.entryColumn;
        plan = plan(waveforms);
    }

    private BlockPlan plan(Waveforms waveforms) {
        double[] sizes = places.sizes();
        var evaluation = equations.newEvaluation();
        for (int p = 0; p < LOOKS; p++) {
            equations.evaluate(waveforms.at(p / (double) LOOKS), 0, evaluation);
            places.raise(sizes, evaluation, waveforms.frequency() * intervals());
        }
        for (int e = 0; e < sizes.length; e++) if (sizes[e] > 0) sizes[e] += LEAST_CONDUCTANCE;
        return places.plan(sizes);
    }

    int intervals() {
        return mesh.length - 1;
    }

    double width(int interval) {
        return mesh[interval + 1] - mesh[interval];
    }

    /** Where stage j of an interval starts among the unknowns of a cycle. */
    int at(int interval, int stage) {
        return (interval * S + stage) * stride;
    }

    /** Phase of a stage, 0 to 1. */
    double phase(int interval, int stage) {
        return mesh[interval] + NODES[stage] * width(interval);
    }

    /** The weight of a stage in the condition that pins the phase: twice the first sine coefficient of the site's voltage. */
    double phaseWeight(int interval, int stage) {
        return 2 * WEIGHTS[stage] * width(interval) * Math.sin(2 * Math.PI * phase(interval, stage));
    }

    int charges() {
        return charged.length;
    }
}
