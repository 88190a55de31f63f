package galena.stopwatch;

import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Floquet;
import galena.engine.steady.KeptOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.timerun.TimeRun;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Supplier;

/**
 * The engine beside waiting: how long a general stiff integrator takes from power-up until the carrier stands, over how long the
 * engine takes to find the same carrier. Settled is an envelope that changed by less than 1e-4 over the time constant of the
 * slowest mode, which the engine's own exponents give. Where that takes more cycles than are run, the time of those is scaled to
 * ln 10⁴ time constants, and the table says so. Alone: {@code ./benchmarks waiting}.
 */
public final class Waiting {
    private static final int MOST_CYCLES = 1_000_000_000;

    private static final double SETTLED = 1e-4;
    private static final double TOLERANCE = 1e-4;
    /** Of the engine's own run in time: keeps amplitudes to about 1e-4. */
    private static final double RADAU_TOLERANCE = 1e-3;

    private static final int SHORTEST_WINDOW = 10;
    private static final int WARM_UP = 300;
    private static final double SWING = 0.05;
    private static final double TRIM = 0.5;
    private static final double TURN = 0.01;

    private final int most;

    private Waiting(int most) {
        this.most = most;
    }

    /**
     * Prints the comparison.
     *
     * @param arguments most cycles to integrate, 4000 unless said
     */
    public static void main(String[] arguments) throws Exception {
        Waiting waiting = new Waiting(arguments.length > 0 ? Integer.parseInt(arguments[0]) : 4000);
        System.out.printf(
                Locale.ROOT,
                "%-12s %9s %9s %9s | %8s %9s %9s %9s %10s | %8s %8s %8s%n",
                "ms",
                "certified",
                "live",
                "warm",
                "cycles",
                "steps/cy",
                "µs/step",
                "Radau",
                "waiting",
                "certif.",
                "live",
                "warm");
        for (Bench bench : Bench.values()) {
            waiting.row(bench.name().toLowerCase(Locale.ROOT), bench.equations(TRIM), bench.equations(TRIM + TURN));
        }
        Running demo = demo();
        String trimmer = demo.strongestTrimmer();
        double position = demo.position(trimmer);
        waiting.row(
                "demo",
                Equations.of(demo.turned(trimmer, position)),
                Equations.of(demo.turned(trimmer, position + TURN)));
    }

    /** The invented build that comes with the program. */
    private static Running demo() throws Exception {
        Path folder = Files.createTempDirectory("waiting");
        Path file = folder.resolve("build.yaml");
        try (InputStream demo = Running.class.getResourceAsStream("/galena/demo/build.yaml")) {
            Files.copy(Objects.requireNonNull(demo), file);
            return Running.of(BuildFolder.open(folder).build(), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        } finally {
            Files.deleteIfExists(file);
            Files.delete(folder);
        }
    }

    /** How a run went: cycles integrated, cycles until settled, and seconds of processor for that many. */
    private record Run(double cycles, double toSettle, double seconds, double steps, boolean scaled) {}

    private void row(String name, Equations equations, Equations beside) {
        SteadyState.Found carrier = Bench.cold(equations, Accuracy.CERTIFIED);
        double certified = best(() -> Bench.cold(equations, Accuracy.CERTIFIED), 100);
        double live = best(() -> Bench.cold(equations, Accuracy.LIVE), 100);
        SteadyState.Found near = Bench.cold(equations, Accuracy.LIVE);
        KeptOscillation kept = new KeptOscillation(near, Accuracy.LIVE, Watch.NONE);
        Equations[] positions = {beside, equations};
        int[] turns = {0};
        double warm = best(() -> Bench.found(kept.move(positions[turns[0]++ % 2])), 400);
        double frequency = carrier.waveforms().frequency();
        Floquet.Mode slowest = carrier.floquet().modes().get(0);
        double window = Math.max(SHORTEST_WINDOW, -frequency / slowest.exponent());
        trapezoid(equations, carrier, window, WARM_UP);
        Run run = trapezoid(equations, carrier, window, most);
        radau(equations, carrier, window, WARM_UP);
        Run other = radau(equations, carrier, window, most);
        double waiting = Math.min(run.seconds, other.seconds);
        System.out.printf(
                Locale.ROOT,
                "%-12s %9.2f %9.2f %9.3f | %8.0f %9.0f %9.2f %9.0f %10.0f | %8.0f %8.0f %8.0f%s%n",
                name,
                1e3 * certified,
                1e3 * live,
                1e3 * warm,
                run.toSettle,
                run.steps / run.cycles,
                1e6 * run.seconds / run.toSettle * run.cycles / run.steps,
                1e3 * other.seconds,
                1e3 * run.seconds,
                waiting / certified,
                waiting / live,
                waiting / warm,
                run.scaled
                        ? String.format(
                                Locale.ROOT, "  scaled from %.0f cycles to %.1f τ", run.cycles, -Math.log(SETTLED))
                        : "");
    }

    /** The shortest of many: what other work on the machine disturbs least. */
    private static double best(Supplier<Object> answer, int times) {
        double best = Double.POSITIVE_INFINITY;
        for (int k = 0; k < times; k++) {
            long start = cpu();
            if (answer.get() == null) throw new IllegalStateException("no answer");
            best = Math.min(best, 1e-9 * (cpu() - start));
        }
        return best;
    }

    /** Processor time of this thread, ns: on a machine with other work the clock says nothing. */
    private static long cpu() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static Run trapezoid(Equations equations, SteadyState.Found carrier, double window, int most) {
        double cycle = 1 / carrier.waveforms().frequency();
        int a = carrier.site().a(), b = carrier.site().b();
        StiffRun run = new StiffRun(equations, TOLERANCE, cycle);
        Envelope envelope = new Envelope(cycle, window);
        long start = cpu();
        while (!envelope.settled() && run.time() < most * cycle) {
            run.step();
            envelope.see(run.time(), run.value(a, b));
        }
        return run(1e-9 * (cpu() - start), run.time() / cycle, (double) run.steps(), window, envelope.settled());
    }

    private static Run radau(Equations equations, SteadyState.Found carrier, double window, int most) {
        double cycle = 1 / carrier.waveforms().frequency();
        int a = carrier.site().a(), b = carrier.site().b();
        Envelope envelope = new Envelope(cycle, window);
        double[] seen = new double[2];
        long start = cpu();
        // from rest with a kick: power-up's first nanoseconds are spared it
        double[] rest = Bench.point(equations).x();
        double[] kick = new double[equations.stride()];
        var evaluation = equations.newEvaluation();
        equations.evaluate(rest, 0, evaluation);
        for (int r = 1; r < kick.length; r++) kick[r] = -evaluation.q[r];
        TimeRun.End end = new TimeRun(equations, RADAU_TOLERANCE, cycle / 6, Watch.NONE)
                .run(rest, kick, 0, most * cycle, cycle / 60, passage -> {
                    seen[0] = passage.end();
                    seen[1]++;
                    for (int k = 1; k <= 6; k++) envelope.see(passage.time(k / 6.0), passage.at(a, b, k / 6.0));
                    return !envelope.settled();
                });
        if (end == TimeRun.End.STUCK) return new Run(1, 1, Double.POSITIVE_INFINITY, 1, false);
        return run(1e-9 * (cpu() - start), seen[0] / cycle, seen[1], window, envelope.settled());
    }

    private static Run run(double seconds, double cycles, double steps, double window, boolean settled) {
        double toSettle = settled ? cycles : Math.max(cycles, -Math.log(SETTLED) * window);
        return new Run(cycles, toSettle, seconds * toSettle / cycles, steps, !settled);
    }

    /** Peak-to-peak of each cycle, and whether it stood still over a window. */
    private static final class Envelope {
        private final double cycle;
        private final int window;
        private final Deque<Double> swings = new ArrayDeque<>();
        private double low = Double.POSITIVE_INFINITY;
        private double high = Double.NEGATIVE_INFINITY;
        private int cycles;
        private boolean settled;

        Envelope(double cycle, double window) {
            this.cycle = cycle;
            this.window = (int) Math.min(window, MOST_CYCLES);
        }

        void see(double time, double value) {
            low = Math.min(low, value);
            high = Math.max(high, value);
            if (time < (cycles + 1) * cycle) return;
            cycles++;
            // the largest of a few cycles: samples fall beside the peaks now and then
            double swing = high - low;
            swings.addLast(swing);
            low = Double.POSITIVE_INFINITY;
            high = Double.NEGATIVE_INFINITY;
            if (swings.size() <= window + SHORTEST_WINDOW) return;
            swings.removeFirst();
            double first = mean(true), last = mean(false);
            settled = last > SWING && Math.abs(last / first - 1) < SETTLED;
        }

        private double mean(boolean first) {
            double sum = 0;
            int count = 0;
            var order = first ? swings.iterator() : swings.descendingIterator();
            while (order.hasNext() && count++ < SHORTEST_WINDOW) sum += order.next();
            return sum / SHORTEST_WINDOW;
        }

        boolean settled() {
            return settled;
        }
    }
}
