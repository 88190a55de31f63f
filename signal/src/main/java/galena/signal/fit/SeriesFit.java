package galena.signal.fit;

import galena.signal.Estimate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A periodic series on a slow trend, fitted to uniform samples by weighted least squares:
 *
 * <pre>y(t) = Σ cj uʲ + Σk (ak cos kωt + bk sin kωt) + Σl (pl cos ωl t + ql sin ωl t) + noise</pre>
 *
 * with t counted from the middle of the record and u = t over half its length. ω may be among the unknowns: Gauss-Newton
 * from a start within a fifth of a bin or so. The other lines, hum for one, have given frequencies. Unlike a transform
 * this stays exact when the record holds only a few periods, or not a whole number of them.
 */
public final class SeriesFit {
    /**
     * What to fit.
     *
     * @param frequency of the series (Hz)
     * @param refined whether the frequency is an unknown
     * @param harmonics of the series, 0 for none
     * @param lines other frequencies (Hz)
     * @param trend degree of the polynomial
     */
    public record Model(double frequency, boolean refined, int harmonics, List<Double> lines, int trend) {
        int unknowns() {
            return trend + 1 + 2 * harmonics + 2 * lines.size() + (refined ? 1 : 0);
        }

        int harmonicAt(int k) {
            return trend + 1 + 2 * (k - 1);
        }

        int lineAt(int l) {
            return trend + 1 + 2 * harmonics + 2 * l;
        }
    }

    private static final int ITERATIONS = 8;
    /** Steps of the frequency below this part of a bin no longer matter beside its noise. */
    private static final double SETTLED = 1e-6;

    private final Model model;
    private final NormalEquations.Solution solution;
    private final double[] residual;
    private final NoiseFloor floor;
    private final double span;

    private SeriesFit(
            Model model, NormalEquations.Solution solution, double[] residual, NoiseFloor floor, double span) {
        this.model = model;
        this.solution = solution;
        this.residual = residual;
        this.floor = floor;
        this.span = span;
    }

    /**
     * @param y samples, read
     * @param amplitude what each sample's noise is divided by, or null when all have the same noise: with weights the
     *     noise is that of amplitude·y. Read
     * @param interval time between samples (s)
     * @param top highest frequency whose noise is whole (Hz)
     * @return empty when the samples cannot tell the unknowns apart
     */
    public static Optional<SeriesFit> of(
            double[] y, double @Nullable [] amplitude, double interval, double top, Model start) {
        if (y.length <= start.unknowns() + 2) return Optional.empty();
        double span = (y.length - 1) * interval;
        Optional<Model> refined = start.refined() ? refine(y, amplitude, interval, start) : Optional.of(start);
        if (refined.isEmpty()) return Optional.empty();
        Model model = refined.get();
        Optional<NormalEquations.Solution> found =
                solve(y, amplitude, interval, model, linear(y, amplitude, interval, model));
        if (found.isEmpty()) return Optional.empty();
        NormalEquations.Solution solution = found.get();
        double[] residual = residual(y, amplitude, interval, model, solution);
        NoiseFloor floor = new NoiseFloor(residual, interval, top, emptied(model));
        return Optional.of(new SeriesFit(model, solution, residual, floor, span));
    }

    /** Gauss-Newton on the frequency; empty if it leaves the neighbourhood of the start or the unknowns run together. */
    private static Optional<Model> refine(double[] y, double @Nullable [] amplitude, double interval, Model start) {
        double span = (y.length - 1) * interval;
        Model model = start;
        double[] coefficients = linear(y, amplitude, interval, start);
        for (int pass = 0; pass < ITERATIONS; pass++) {
            Optional<NormalEquations.Solution> found = solve(y, amplitude, interval, model, coefficients);
            if (found.isEmpty()) return Optional.empty();
            double step = found.get().value(model.unknowns() - 1);
            double moved = model.frequency() + step - start.frequency();
            if (!(Math.abs(moved) * span < 1)) return Optional.empty();
            for (int i = 0; i < coefficients.length - 1; i++)
                coefficients[i] = found.get().value(i);
            model = new Model(model.frequency() + step, true, model.harmonics(), model.lines(), model.trend());
            if (Math.abs(step) * span < SETTLED) break;
        }
        return Optional.of(model);
    }

    /** Coefficients at the model's frequency as it stands, which the derivative to the frequency needs; else zeros. */
    private static double[] linear(double[] y, double @Nullable [] amplitude, double interval, Model model) {
        double[] values = new double[model.unknowns()];
        if (!model.refined()) return values;
        Model fixed = new Model(model.frequency(), false, model.harmonics(), model.lines(), model.trend());
        solve(y, amplitude, interval, fixed, values).ifPresent(s -> {
            for (int i = 0; i < values.length - 1; i++) values[i] = s.value(i);
        });
        return values;
    }

    private static Optional<NormalEquations.Solution> solve(
            double[] y, double @Nullable [] amplitude, double interval, Model model, double[] previous) {
        NormalEquations equations = new NormalEquations(model.unknowns());
        double[] row = new double[model.unknowns()];
        for (int n = 0; n < y.length; n++) {
            fill(row, model, previous, time(n, y.length, interval), (y.length - 1) * interval);
            equations.add(row, y[n], amplitude == null ? 1 : amplitude[n] * amplitude[n]);
        }
        return equations.solve();
    }

    private static double[] residual(
            double[] y, double @Nullable [] amplitude, double interval, Model model, NormalEquations.Solution s) {
        double[] row = new double[model.unknowns()];
        double[] none = new double[model.unknowns()];
        double[] left = new double[y.length];
        double counted = 0; // samples of no weight leave holes; the rest then stand for all
        for (int n = 0; n < y.length; n++) if (amplitude == null || amplitude[n] != 0) counted++;
        double stretch = Math.sqrt(y.length / Math.max(1, counted));
        for (int n = 0; n < y.length; n++) {
            fill(row, model, none, time(n, y.length, interval), (y.length - 1) * interval);
            double fitted = 0;
            for (int i = 0; i < row.length; i++) fitted += row[i] * s.value(i);
            left[n] = (y[n] - fitted) * stretch * (amplitude == null ? 1 : amplitude[n]);
        }
        return left;
    }

    private static double time(int n, int count, double interval) {
        return (n - (count - 1) / 2.0) * interval;
    }

    /** One row of the design: trend, cosines and sines, and last the derivative to the frequency (Hz). */
    private static void fill(double[] row, Model model, double[] previous, double t, double span) {
        double u = span == 0 ? 0 : 2 * t / span, power = 1;
        int at = 0;
        for (int j = 0; j <= model.trend(); j++, power *= u) row[at++] = power;
        double angle = 2 * Math.PI * model.frequency() * t;
        double c1 = Math.cos(angle), s1 = Math.sin(angle), c = 1, s = 0, slope = 0;
        for (int k = 1; k <= model.harmonics(); k++) {
            double next = c * c1 - s * s1;
            s = s * c1 + c * s1;
            c = next;
            slope += k * (previous[at + 1] * c - previous[at] * s);
            row[at++] = c;
            row[at++] = s;
        }
        for (double f : model.lines()) {
            double phase = 2 * Math.PI * f * t;
            row[at++] = Math.cos(phase);
            row[at++] = Math.sin(phase);
        }
        if (model.refined()) row[at] = 2 * Math.PI * t * slope;
    }

    private static double[] emptied(Model model) {
        double[] out = new double[model.harmonics() + model.lines().size()];
        for (int k = 0; k < model.harmonics(); k++) out[k] = (k + 1) * model.frequency();
        for (int l = 0; l < model.lines().size(); l++)
            out[model.harmonics() + l] = model.lines().get(l);
        return out;
    }

    /** Frequency of the series (Hz). */
    public Estimate frequency() {
        int last = model.unknowns() - 1;
        double sigma = model.refined() ? sigma(model.frequency(), solution.cofactor(last, last)) : 0;
        return Estimate.normal(model.frequency(), sigma);
    }

    /** Coefficient of uʲ in the trend; its noise is taken at the lowest frequencies. */
    public Estimate trend(int j) {
        return Estimate.normal(solution.value(j), sigma(0, solution.cofactor(j, j)));
    }

    /** Cosine coefficient of harmonic k. */
    public double cosine(int k) {
        return solution.value(model.harmonicAt(k));
    }

    /** Sine coefficient of harmonic k. */
    public double sine(int k) {
        return solution.value(model.harmonicAt(k) + 1);
    }

    /** Standard deviation of either quadrature of harmonic k. */
    public double sigmaOfHarmonic(int k) {
        int at = model.harmonicAt(k);
        return sigma(k * model.frequency(), (solution.cofactor(at, at) + solution.cofactor(at + 1, at + 1)) / 2);
    }

    /** Peak amplitude of the other line l (from 0). */
    public Estimate line(int l) {
        int at = model.lineAt(l);
        double observed = Math.hypot(solution.value(at), solution.value(at + 1));
        return RiceInterval.of(observed, sigmaOfLine(l));
    }

    /** Standard deviation of either quadrature of the other line l. */
    public double sigmaOfLine(int l) {
        int at = model.lineAt(l);
        return sigma(model.lines().get(l), (solution.cofactor(at, at) + solution.cofactor(at + 1, at + 1)) / 2);
    }

    /**
     * Standard deviation of Σ gradientᵢ·unknownᵢ over the trend's constant and the harmonics.
     *
     * @param constant derivative to the trend's constant
     * @param cosine derivatives to the cosine coefficients, from harmonic 1 in element 0
     * @param sine derivatives to the sine coefficients
     */
    public double sigmaOf(double constant, double[] cosine, double[] sine) {
        int n = 1 + 2 * model.harmonics();
        double[] scaled = new double[n];
        int[] index = new int[n];
        scaled[0] = constant * deviation(0);
        for (int k = 1; k <= model.harmonics(); k++) {
            double deviation = deviation(k * model.frequency());
            index[2 * k - 1] = model.harmonicAt(k);
            index[2 * k] = model.harmonicAt(k) + 1;
            scaled[2 * k - 1] = cosine[k - 1] * deviation;
            scaled[2 * k] = sine[k - 1] * deviation;
        }
        double sum = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) sum += scaled[i] * scaled[j] * solution.cofactor(index[i], index[j]);
        }
        return Math.sqrt(Math.max(0, sum));
    }

    /** Noise that the fit leaves over; with weights that of amplitude·y. */
    public NoiseFloor floor() {
        return floor;
    }

    /** What the fit leaves over, times the amplitude where weights were given. */
    public double[] residual() {
        return residual.clone();
    }

    /** Length of the record (s). */
    public double span() {
        return span;
    }

    /** Number of harmonics fitted. */
    public int harmonics() {
        return model.harmonics();
    }

    private double sigma(double frequency, double cofactor) {
        return deviation(frequency) * Math.sqrt(Math.max(0, cofactor));
    }

    /** Noise per sample near a frequency, stretched by Student's t so that 1.96 of it is a 95 % interval. */
    private double deviation(double frequency) {
        double t = StudentT.at95(floor.freedomAt(frequency)) / Estimate.NORMAL_95;
        return Math.sqrt(floor.varianceAt(frequency)) * t;
    }
}
