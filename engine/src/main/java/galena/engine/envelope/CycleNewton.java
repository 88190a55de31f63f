package galena.engine.envelope;

import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.util.Arrays;

/**
 * Newton's method on all cycles of a slow period. Near the solution the factors of one step serve the next ones. Steps are measured
 * against each unknown's own range over the whole slow period, and one that is longer than half of it is shortened.
 */
final class CycleNewton {
    private static final int MOST = 20;
    private static final int MOST_REPEATED = 6;
    private static final double LONGEST_STEP = 0.5;
    private static final double TRUSTED_VOLTS = 0.5;
    private static final double TRUSTED_AMPERES = 1e-2;
    private static final double SMALL_RANGE = 1e-3;
    private static final double STILL_VOLTS = 1e-9;
    private static final double STILL_AMPERES = 1e-12;
    private static final double NEAR = 0.05;
    private static final double SHRINKS = 0.2;

    /** Of a step's shrinking from one iteration to the next where more of them lead nowhere. */
    private static final double HARDLY = 0.7;

    private static final int PATIENCE = 6;

    private final Layout layout;
    private final Watch watch;
    private final double settled;
    private final CycleSystem.Work work;
    private final SlowClosing closing;
    private final double[] departure;
    private final CycleSystem[] systems;
    private final double[][] starts;
    private final double[] frequencies;
    private final double[][] steps;
    private final double[] scale;
    private final double[] trusted;
    private final double[] chargeScale;
    private double length;
    private int iterations;

    CycleNewton(Layout layout, SlowGrid grid, SteadyState.Found carrier, String source, Watch watch) {
        this.layout = layout;
        this.watch = watch;
        settled = carrier.accuracy().settled();
        work = new CycleSystem.Work(layout);
        departure = layout.equations.unitDeparture(source);
        chargeScale = chargeScales();
        double amplitude = Math.max(DynamicEnvelope.amplitude(carrier), Double.MIN_NORMAL);
        closing = new SlowClosing(layout, grid, chargeScale, carrier.waveforms().frequency(), amplitude);
        systems = new CycleSystem[grid.points];
        starts = new double[grid.points][layout.charges()];
        frequencies = new double[grid.points];
        steps = new double[grid.points][layout.intervals() * Layout.S * layout.stride];
        scale = new double[layout.stride];
        trusted = new double[layout.stride];
    }

    /** One over the root of each charged row's own capacitance or inductance would be in units of energy; this is its root. */
    private double[] chargeScales() {
        var evaluation = layout.equations.newEvaluation();
        layout.equations.evaluate(new double[layout.stride], 0, evaluation);
        double[] own = new double[layout.stride], scales = new double[layout.charges()];
        for (int e = 1; e < layout.entryRow.length; e++) {
            if (layout.entryRow[e] == layout.entryColumn[e]) own[layout.entryRow[e]] += Math.abs(evaluation.c[e]);
        }
        for (int m = 0; m < scales.length; m++) scales[m] = Math.sqrt(own[layout.charged[m]] + Double.MIN_NORMAL);
        return scales;
    }

    /** Full and repeated steps since construction. */
    int iterations() {
        return iterations;
    }

    /** Improves cycles in place; true when the steps became small, and they are spoilt otherwise. */
    boolean improve(Cycle[] cycles, SlowSource source) {
        for (int i = 0; i < systems.length; i++) systems[i] = system(i, source);
        double before = Double.POSITIVE_INFINITY;
        for (int k = 0; k < MOST; k++) {
            double size = step(cycles, true);
            if (!Double.isFinite(size) || !take(cycles)) return false;
            if (size < settled) return true;
            if (size < NEAR && repeat(cycles, size)) return true;
            if (k > PATIENCE && size > HARDLY * before) return false;
            before = size;
        }
        return false;
    }

    private CycleSystem system(int i, SlowSource source) {
        return systems[i] == null ? new CycleSystem(layout, work, source, departure) : systems[i].with(source);
    }

    private boolean repeat(Cycle[] cycles, double first) {
        double before = first;
        for (int k = 0; k < MOST_REPEATED; k++) {
            double size = step(cycles, false), rate = size / before;
            if (!(rate < SHRINKS)) return false;
            if (!take(cycles)) return false;
            if (size < settled) return true;
            before = size;
        }
        return false;
    }

    /** Finds a step; returns its size as a share of the unknowns' ranges. */
    private double step(Cycle[] cycles, boolean fresh) {
        iterations++;
        for (int i = 0; i < cycles.length; i++) {
            watch.check();
            if (fresh) systems[i].linearise(cycles[i]);
            else systems[i].reconsider(cycles[i]);
        }
        closing.solve(cycles, systems, fresh, starts, frequencies);
        for (int i = 0; i < cycles.length; i++) {
            systems[i].finish(cycles[i], starts[i].clone(), frequencies[i], steps[i]);
        }
        return measure(cycles);
    }

    private double measure(Cycle[] cycles) {
        measureRanges(cycles);
        double size = 0, stretch = 0;
        for (int i = 0; i < cycles.length; i++) {
            double[] step = steps[i];
            for (int p = 0; p < step.length; p += layout.stride) {
                for (int j = 1; j < layout.stride; j++) {
                    double change = Math.abs(step[p + j]);
                    size = Math.max(size, change / scale[j]);
                    stretch = Math.max(stretch, change / trusted[j]);
                }
            }
            double change = Math.abs(frequencies[i]) / cycles[i].frequency;
            size = Math.max(size, change);
            stretch = Math.max(stretch, change);
        }
        length = stretch > LONGEST_STEP ? LONGEST_STEP / stretch : 1;
        return size;
    }

    private boolean take(Cycle[] cycles) {
        for (int i = 0; i < cycles.length; i++) {
            Cycle cycle = cycles[i];
            for (int p = 0; p < cycle.x.length; p++) cycle.x[p] += length * steps[i][p];
            for (int m = 0; m < cycle.start.length; m++) cycle.start[m] += length * starts[i][m];
            cycle.frequency += length * frequencies[i];
            if (!(cycle.frequency > 0)) return false;
        }
        return true;
    }

    private void measureRanges(Cycle[] cycles) {
        double[] low = new double[layout.stride], high = new double[layout.stride];
        Arrays.fill(low, Double.POSITIVE_INFINITY);
        Arrays.fill(high, Double.NEGATIVE_INFINITY);
        for (Cycle cycle : cycles) {
            for (int p = 0; p < cycle.x.length; p += layout.stride) {
                for (int j = 1; j < layout.stride; j++) {
                    low[j] = Math.min(low[j], cycle.x[p + j]);
                    high[j] = Math.max(high[j], cycle.x[p + j]);
                }
            }
        }
        double volts = 0, amperes = 0;
        for (int j = 1; j < layout.stride; j++) {
            if (layout.equations.isCurrent(j)) amperes = Math.max(amperes, high[j] - low[j]);
            else volts = Math.max(volts, high[j] - low[j]);
        }
        for (int j = 1; j < layout.stride; j++) {
            boolean current = layout.equations.isCurrent(j);
            double range = high[j] - low[j];
            double least = current
                    ? Math.max(SMALL_RANGE * amperes, STILL_AMPERES)
                    : Math.max(SMALL_RANGE * volts, STILL_VOLTS);
            scale[j] = Math.max(range, least);
            trusted[j] = Math.max(range, current ? TRUSTED_AMPERES : TRUSTED_VOLTS);
        }
    }
}
