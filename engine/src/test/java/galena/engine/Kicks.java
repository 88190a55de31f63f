package galena.engine;

import galena.engine.equations.Equations;
import galena.engine.startup.Mode;
import galena.engine.steady.SteadyState;

/** What to add to the charges at rest so that a run starts elsewhere. */
public final class Kicks {
    private Kicks() {}

    /** To a share of the way from rest to an orbit. */
    public static double[] towards(SteadyState.Found orbit, double[] rest, double share) {
        double[] there = orbit.waveforms().at(0), x = rest.clone();
        for (int k = 1; k < x.length; k++) x[k] += share * (there[k] - rest[k]);
        return between(orbit.waveforms().equations(), rest, x);
    }

    /** Along a mode, its largest unknown moved by so many volts or amperes. */
    public static double[] along(Equations equations, Mode mode, double[] rest, double size) {
        double largest = 0;
        for (double v : mode.re()) largest = Math.max(largest, Math.abs(v));
        double[] x = rest.clone();
        for (int k = 1; k < x.length; k++) x[k] += size / largest * mode.re()[k];
        return between(equations, rest, x);
    }

    private static double[] between(Equations equations, double[] from, double[] to) {
        var work = equations.newEvaluation();
        equations.evaluate(from, 0, work);
        double[] before = work.q.clone();
        equations.evaluate(to, 0, work);
        double[] kick = new double[from.length];
        for (int k = 1; k < kick.length; k++) kick[k] = work.q[k] - before[k];
        return kick;
    }
}
