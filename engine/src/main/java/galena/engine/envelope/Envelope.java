package galena.engine.envelope;

import galena.engine.equations.Equations;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Resonator;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * A modulated oscillation over one slow period: at any moment of it, amplitude and phase of every harmonic of every net and branch.
 * The phase is counted from the oscillation's own, whose frequency is {@link #localFrequency}. Immutable.
 */
public final class Envelope implements EnvelopeAnswer {
    private final Layout layout;
    private final SlowGrid grid;
    private final Cycle[] cycles;
    private final SlowSource source;
    private final Optional<Envelope> coarser;
    private final int iterations;
    private final double meanPeriod;
    private final double frequency;
    private final double[][] phase;
    private final Optional<EnvelopeError> error;

    Envelope(
            Layout layout,
            SlowGrid grid,
            Cycle[] cycles,
            SlowSource source,
            Optional<Envelope> coarser,
            int iterations) {
        this.layout = layout;
        this.grid = grid;
        this.cycles = cycles;
        this.source = source;
        this.coarser = coarser;
        this.iterations = iterations;
        double sum = 0;
        for (Cycle cycle : cycles) sum += 1 / cycle.frequency;
        meanPeriod = sum / cycles.length;
        double[] turns = turns();
        frequency = turns[cycles.length];
        phase = grid.harmonics(Arrays.copyOf(turns, cycles.length));
        error = coarser.map(this::compare);
    }

    /**
     * The oscillation's phase, in turns beside f̄τ, and f̄: over a cycle the phase gains one turn, ψ(τᵢ + Tᵢ) − ψ(τᵢ) + f̄ Tᵢ = 1, and
     * ψ has no mean.
     */
    private double[] turns() {
        int points = grid.points;
        DMatrixRMaj a = new DMatrixRMaj(points + 1, points + 1), b = new DMatrixRMaj(points + 1, 1);
        double[] weight = new double[points], rate = new double[points];
        for (int i = 0; i < points; i++) {
            double period = 1 / cycles[i].frequency;
            grid.weights(grid.time(i) + period, weight, rate);
            for (int j = 0; j < points; j++) a.set(i, j, weight[j] - (i == j ? 1 : 0));
            a.set(i, points, period / meanPeriod);
            b.set(i, 0, 1);
            a.set(points, i, 1);
        }
        DMatrixRMaj x = new DMatrixRMaj(points + 1, 1);
        LinearSolverDense<DMatrixRMaj> lu = LinearSolverFactory_DDRM.lu(points + 1);
        if (!lu.setA(a)) throw new ArithmeticException("the phase cannot be summed over the slow period");
        lu.solve(b, x);
        double[] turns = x.data.clone();
        turns[points] /= meanPeriod;
        return turns;
    }

    /** Slow points, equally spaced; the first where the source passes its rest upwards. */
    public int points() {
        return grid.points;
    }

    /** What modulates. */
    public SlowSource source() {
        return source;
    }

    /** Mean frequency of the oscillation, Hz. */
    public double frequency() {
        return frequency;
    }

    public Equations equations() {
        return layout.equations;
    }

    /** Newton iterations on all cycles together, repeated ones included. */
    public int iterations() {
        return iterations;
    }

    /** The difference to the same on half the slow points; empty for the coarser one itself. */
    public Optional<EnvelopeError> error() {
        return error;
    }

    /** The same on about half the slow points. */
    public Optional<Envelope> coarser() {
        return coarser;
    }

    /** The oscillation's frequency at each slow point, Hz. */
    public double[] localFrequency() {
        double[][] rate = new double[2][grid.highest + 1];
        for (int k = 1; k <= grid.highest; k++) {
            double angular = 2 * Math.PI * k * grid.frequency;
            rate[0][k] = -angular * phase[1][k];
            rate[1][k] = angular * phase[0][k];
        }
        double[] f = grid.values(rate);
        for (int i = 0; i < f.length; i++) f[i] += frequency;
        return f;
    }

    /** The oscillation's phase at each slow point beside that of its mean frequency, rad. */
    public double[] phase() {
        double[] turns = grid.values(phase);
        for (int i = 0; i < turns.length; i++) turns[i] *= 2 * Math.PI;
        return turns;
    }

    /** The slow mean of x_a − x_b at each slow point. */
    public double[] mean(int a, int b) {
        double[] mean = lines(a, b, 0)[0];
        for (int i = 0; i < mean.length; i++) mean[i] /= 2;
        return mean;
    }

    /**
     * Complex peak amplitude of harmonic h of x_a − x_b at each slow point, seen from the oscillation's mean frequency: what a
     * receiver tuned to h f̄ gets. Unknown 0 is ground.
     *
     * @return {real parts, imaginary parts}
     */
    public double[][] baseband(int a, int b, int h) {
        double[][] c = lines(a, b, h);
        double[] turns = phase();
        for (int i = 0; i < turns.length; i++) {
            double cos = Math.cos(h * turns[i]), sin = Math.sin(h * turns[i]), re = c[0][i];
            c[0][i] = re * cos - c[1][i] * sin;
            c[1][i] = re * sin + c[1][i] * cos;
        }
        return c;
    }

    /** As {@link #baseband}, of a coil, resonator, battery or voltage source's current. */
    public double[][] current(String part, int h) {
        int unknown = layout.equations
                .current(part)
                .orElseThrow(() -> new IllegalArgumentException(part + " has no current of its own"));
        return baseband(unknown, 0, h);
    }

    /** Amplitudes as the oscillation's phase sees them. A cycle's points lie apart in slow time and are brought back to its start. */
    private double[][] lines(int a, int b, int h) {
        double[] v = new double[grid.points], first = atStart(a, b);
        double[][] up = new double[2][grid.highest + 1], low = new double[2][grid.highest + 1];
        for (int k = 0; k < layout.intervals(); k++) {
            for (int g = 0; g < Cubic.NODES; g++) {
                for (int i = 0; i < v.length; i++) v[i] = Cubic.at(layout, cycles[i].x, first[i], a, b, k, g);
                double at = Cubic.phase(layout, k, g), angle = 2 * Math.PI * h * at;
                double[][] back = back(v, at);
                double weight = 2 * Cubic.weight(layout, k, g),
                        c = weight * Math.cos(angle),
                        s = weight * Math.sin(angle);
                for (int n = 0; n <= grid.highest; n++) {
                    double re = back[0][n], im = back[1][n];
                    up[0][n] += re * c + im * s;
                    up[1][n] += im * c - re * s;
                    low[0][n] += re * c - im * s;
                    low[1][n] += -im * c - re * s;
                }
            }
        }
        return sum(up, low);
    }

    /** Σ U e^(jkωτ) + L e^(−jkωτ) at every slow point. */
    private double[][] sum(double[][] up, double[][] low) {
        double[][] sum = new double[2][grid.points];
        for (int i = 0; i < grid.points; i++) {
            sum[0][i] = up[0][0];
            sum[1][i] = up[1][0];
            for (int k = 1; k <= grid.highest; k++) {
                double angle = 2 * Math.PI * ((long) k * i % grid.points) / grid.points;
                double c = Math.cos(angle), s = Math.sin(angle);
                sum[0][i] += (up[0][k] + low[0][k]) * c - (up[1][k] - low[1][k]) * s;
                sum[1][i] += (up[1][k] + low[1][k]) * c + (up[0][k] - low[0][k]) * s;
            }
        }
        return sum;
    }

    /** x_a − x_b at the start of each cycle: the ends of the cycles, brought back. */
    private double[] atStart(int a, int b) {
        int last = layout.at(layout.intervals() - 1, Layout.S - 1);
        double[] v = new double[grid.points];
        for (int i = 0; i < v.length; i++) v[i] = cycles[i].x[last + a] - cycles[i].x[last + b];
        return grid.values(back(v, 1));
    }

    /** Harmonics in slow time of what is known at a share of each cycle, τᵢ + share · Tᵢ; periods differ little and enter to first order. */
    private double[][] back(double[] v, double share) {
        double[][] c = grid.harmonics(v), slope = new double[2][grid.highest + 1];
        for (int k = 0; k <= grid.highest; k++) {
            double angular = 2 * Math.PI * k * grid.frequency;
            slope[0][k] = -angular * c[1][k];
            slope[1][k] = angular * c[0][k];
        }
        double[] rate = grid.values(slope), late = new double[grid.points];
        for (int i = 0; i < late.length; i++) late[i] = share * (1 / cycles[i].frequency - meanPeriod) * rate[i];
        double[][] correction = grid.harmonics(late);
        for (int k = 0; k <= grid.highest; k++) {
            double angle = 2 * Math.PI * k * grid.frequency * share * meanPeriod,
                    cos = Math.cos(angle),
                    sin = Math.sin(angle);
            double re = c[0][k] - correction[0][k], im = c[1][k] - correction[1][k];
            c[0][k] = re * cos + im * sin;
            c[1][k] = im * cos - re * sin;
        }
        return c;
    }

    private EnvelopeError compare(Envelope coarse) {
        double most = 0;
        String where = "";
        for (String part : resonant()) {
            double change = change(current(part, 1), coarse.current(part, 1), coarse.grid);
            if (change > most) {
                most = change;
                where = part;
            }
        }
        double[] fine = localFrequency();
        double swing = 0;
        double[][] there = coarse.grid.harmonics(coarse.localFrequency());
        for (int i = 0; i < fine.length; i++) {
            double share = i / (double) fine.length;
            swing = Math.max(swing, Math.abs(fine[i] - SlowGrid.value(there, share)));
        }
        return new EnvelopeError(grid.points, most, where, swing);
    }

    private List<String> resonant() {
        return layout.equations.circuit().parts().stream()
                .filter(p -> p instanceof Coil || p instanceof Resonator)
                .map(Part::name)
                .toList();
    }

    private double change(double[][] fine, double[][] coarse, SlowGrid other) {
        double[][] re = other.harmonics(coarse[0]), im = other.harmonics(coarse[1]);
        double most = 0, mean = 0;
        for (int i = 0; i < grid.points; i++) {
            double share = i / (double) grid.points;
            double size = Math.hypot(fine[0][i], fine[1][i]);
            double there = Math.hypot(SlowGrid.value(re, share), SlowGrid.value(im, share));
            most = Math.max(most, Math.abs(size - there));
            mean += size / grid.points;
        }
        return mean == 0 ? 0 : most / mean;
    }

    Layout layout() {
        return layout;
    }

    /** These cycles carried to another number of slow points. */
    Cycle[] on(SlowGrid finer) {
        Cycle[] carried = new Cycle[finer.points];
        double[] weight = new double[grid.points], rate = new double[grid.points];
        for (int i = 0; i < carried.length; i++) {
            grid.weights(finer.time(i), weight, rate);
            Cycle cycle = new Cycle(finer.time(i), new double[layout.charges()], new double[cycles[0].x.length], 0);
            for (int j = 0; j < cycles.length; j++) {
                double w = weight[j];
                for (int m = 0; m < cycle.start.length; m++) cycle.start[m] += w * cycles[j].start[m];
                for (int p = 0; p < cycle.x.length; p++) cycle.x[p] += w * cycles[j].x[p];
                cycle.frequency += w * cycles[j].frequency;
            }
            carried[i] = cycle;
        }
        return carried;
    }
}
