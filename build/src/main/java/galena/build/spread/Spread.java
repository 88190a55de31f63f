package galena.build.spread;

import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.predict.Running.NotRunning;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.wiring.Unknown;
import galena.engine.steady.Accuracy;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.hipparchus.random.SobolSequenceGenerator;
import org.hipparchus.random.Well19937c;

/** Draws, solves and counts builds. Time grows in proportion to their number. */
public final class Spread {
    private static final int WORST = 10;
    private static final double NORMAL_95 = 1.959963984540054;

    private final Running typical;
    private final List<Unknown> unknowns;
    private final Sampler sampler;
    private final long seed;
    private final Progress progress;

    private Spread(Running typical, Conditions conditions, long seed, Progress progress) {
        this.typical = typical;
        this.unknowns = typical.assembled().knowledge().unknowns();
        this.sampler = new Sampler(typical, conditions, typical.strongestTrimmer(), progress);
        this.seed = seed;
        this.progress = progress;
    }

    /**
     * @param count builds to draw, 1 or more
     * @param seed of the sequence
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when the typical build has none
     * @throws NotRunning when the typical build does not oscillate
     * @throws CancellationException when the progress says so
     */
    public static SpreadReport of(
            BuildFolder folder, Overlay overlay, Conditions conditions, int count, long seed, Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning {
        if (count < 1) throw new IllegalArgumentException("draw at least one build, not " + count);
        Running typical = Running.of(folder.build(), overlay, Accuracy.LIVE, progress);
        return new Spread(typical, conditions, seed, progress).report(count);
    }

    /** One build of a spread, called back by its number. */
    public static Drawn one(
            BuildFolder folder, Overlay overlay, Conditions conditions, long seed, long number, Progress progress)
            throws BadInputException, NoOperatingPoint, NotRunning {
        Running typical = Running.of(folder.build(), overlay, Accuracy.LIVE, progress);
        Spread spread = new Spread(typical, conditions, seed, progress);
        return spread.sampler.draw(number, spread.point(number));
    }

    /**
     * Copies of a build that runs, by their numbers.
     *
     * @param from number of the first
     * @param to number behind the last
     * @param seed of the sequence
     * @throws CancellationException when the progress says so
     */
    public static List<Drawn> copies(
            Running running, Conditions conditions, int from, int to, long seed, Progress progress) {
        if (to <= from) throw new IllegalArgumentException("draw at least one build, not " + (to - from));
        return new Spread(running, conditions, seed, progress).drawn(from, to);
    }

    private List<Drawn> drawn(int from, int to) {
        AtomicInteger done = new AtomicInteger();
        return IntStream.range(from, to)
                .parallel()
                .mapToObj(k -> {
                    if (progress.cancelled()) throw new CancellationException("stopped on request");
                    Drawn one = sampler.draw(k, point(k));
                    progress.at((double) done.incrementAndGet() / (to - from), "builds");
                    return one;
                })
                .toList();
    }

    private SpreadReport report(int count) {
        List<Drawn> drawn = drawn(0, count);
        Map<Drawn.Quantity, Figure.Known> windows = new EnumMap<>(Drawn.Quantity.class);
        Map<Drawn.Quantity, double[]> histograms = new EnumMap<>(Drawn.Quantity.class);
        for (Drawn.Quantity quantity : Drawn.Quantity.values()) {
            double[] values = sorted(drawn, quantity);
            if (values.length == 0) continue;
            histograms.put(quantity, values);
            windows.put(quantity, window(values, quantity.unit(), quantity.toString(), "", count));
        }
        return new SpreadReport(
                count,
                seed,
                share(drawn),
                windows,
                voltages(drawn, count),
                failures(drawn),
                worst(drawn),
                Tightening.of(unknowns, drawn),
                histograms,
                sampler.limits());
    }

    private Map<String, Figure.Known> voltages(List<Drawn> drawn, int count) {
        Map<String, Figure.Known> windows = new LinkedHashMap<>();
        for (String net : typical.circuit().nets()) {
            double[] sorted = drawn.stream()
                    .flatMap(d -> Optional.ofNullable(d.voltages().get(net)).stream())
                    .mapToDouble(v -> v)
                    .sorted()
                    .toArray();
            if (sorted.length > 0) {
                windows.put(net, window(sorted, Unit.VOLT, "mean voltage while oscillating", net, count));
            }
        }
        return windows;
    }

    /** Point k of the Sobol sequence, shifted by the seed's own vector round the unit cube. */
    private double[] point(long k) {
        int dimension = Sampler.numbers(unknowns);
        double[] moved = shifts(dimension);
        double[] u = new SobolSequenceGenerator(dimension).skipTo((int) k + 1);
        for (int j = 0; j < dimension; j++) {
            u[j] += moved[j];
            if (u[j] >= 1) u[j] -= 1;
        }
        return u;
    }

    private double[] shifts(int dimension) {
        Well19937c random = new Well19937c(seed);
        double[] shifts = new double[dimension];
        for (int j = 0; j < dimension; j++) shifts[j] = random.nextDouble();
        return shifts;
    }

    private static double[] sorted(List<Drawn> drawn, Drawn.Quantity quantity) {
        double[] values = drawn.stream()
                .filter(d -> d.values().containsKey(quantity))
                .mapToDouble(d -> d.values().getOrDefault(quantity, 0.0))
                .toArray();
        Arrays.sort(values);
        return values;
    }

    private static Figure.Known window(double[] sorted, Unit unit, String what, String at, int count) {
        String basis = "95 % of " + sorted.length + " of " + count + " drawn builds";
        return new Figure.Known(at(sorted, 0.5), unit, at(sorted, 0.025), at(sorted, 0.975), basis, what, at);
    }

    private static double at(double[] sorted, double share) {
        return sorted[(int) Math.round(share * (sorted.length - 1))];
    }

    static Figure.Known share(List<Drawn> drawn) {
        return share(drawn, Drawn::isGood);
    }

    /**
     * The share of copies of which something holds, as a yield with its 95 % interval, Wilson's: E. B. Wilson, J. Am. Stat. Assoc. 22
     * (1927) 209.
     */
    public static Figure.Known share(List<Drawn> drawn, Predicate<Drawn> holds) {
        double n = drawn.size(), good = drawn.stream().filter(holds).count(), p = good / n;
        double z2 = NORMAL_95 * NORMAL_95;
        double centre = (p + z2 / (2 * n)) / (1 + z2 / n);
        double half = NORMAL_95 / (1 + z2 / n) * Math.sqrt(p * (1 - p) / n + z2 / (4 * n * n));
        return new Figure.Known(
                p,
                Unit.FRACTION,
                Math.min(p, centre - half),
                Math.max(p, centre + half),
                "counted, 95 %",
                "yield against the intent",
                "");
    }

    private static Map<String, Integer> failures(List<Drawn> drawn) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (Drawn d : drawn) for (String failure : d.failures()) counts.merge(failure, 1, Integer::sum);
        Map<String, Integer> sorted = new LinkedHashMap<>();
        counts.entrySet().stream()
                .sorted(Comparator.comparingInt(e -> -e.getValue()))
                .forEach(e -> sorted.put(e.getKey(), e.getValue()));
        return sorted;
    }

    private static List<Drawn> worst(List<Drawn> drawn) {
        List<Drawn> byFailures = new ArrayList<>(drawn);
        byFailures.sort(Comparator.<Drawn>comparingInt(d -> -d.failures().size())
                .thenComparingDouble(d -> d.values().getOrDefault(Drawn.Quantity.MARGIN, -1.0)));
        return byFailures.subList(0, Math.min(WORST, byFailures.size()));
    }
}
