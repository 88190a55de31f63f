package galena.engine.timerun;

import galena.engine.equations.Equations;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How the amplitude of an oscillation goes on in time: the highest value of a voltage in each of its cycles, found on the
 * cubics of the steps. A voltage that stands still is noted once a cycle too, so that a dead time shows.
 *
 * @param times of the peaks, s
 * @param peaks V above the voltage's mean at rest
 * @param crossings times at which the voltage rises through its value at rest, s
 * @param end how the run ended
 */
public record AmplitudeRun(List<Double> times, List<Double> peaks, List<Double> crossings, TimeRun.End end) {
    private static final double TOLERANCE = 1e-3;
    private static final double KICK = 1e-3;
    private static final double STEPS_A_CYCLE = 60;
    /** However quiet: longer steps would damp a small oscillation that grows. */
    private static final double LEAST_STEPS_A_CYCLE = 16;

    public AmplitudeRun {
        times = List.copyOf(times);
        peaks = List.copyOf(peaks);
        crossings = List.copyOf(crossings);
    }

    /** From a steady orbit, every charge disturbed by a thousandth of its value there. */
    public static AmplitudeRun from(SteadyState.Found orbit, double cycles, Watch watch) {
        Equations equations = orbit.waveforms().equations();
        double[] x = orbit.waveforms().at(0);
        var evaluation = equations.newEvaluation();
        equations.evaluate(x, 0, evaluation);
        double[] kick = new double[equations.stride()];
        for (int r = 1; r < kick.length; r++) kick[r] = KICK * evaluation.q[r];
        int a = orbit.site().a(), b = orbit.site().b();
        double rest = orbit.waveforms().mean(a) - orbit.waveforms().mean(b);
        return watched(equations, x, kick, a, b, rest, orbit.waveforms().frequency(), cycles, watch);
    }

    /**
     * From the operating point, or any other that is taken for rest.
     *
     * @param a first net of the voltage watched, its unknown
     * @param b second
     * @param frequency expected, Hz: sets the first step and the length
     * @param cycles how many to watch
     */
    public static AmplitudeRun run(
            Equations equations,
            double[] x,
            double[] kick,
            int a,
            int b,
            double frequency,
            double cycles,
            Watch watch) {
        return watched(equations, x, kick, a, b, x[a] - x[b], frequency, cycles, watch);
    }

    private static AmplitudeRun watched(
            Equations equations,
            double[] x,
            double[] kick,
            int a,
            int b,
            double rest,
            double frequency,
            double cycles,
            Watch watch) {
        Cycles seen = new Cycles(a, b, rest, 1 / frequency);
        TimeRun.End end = new TimeRun(equations, TOLERANCE, 1 / (LEAST_STEPS_A_CYCLE * frequency), watch)
                .run(x, kick, 0, cycles / frequency, 1 / (STEPS_A_CYCLE * frequency), seen);
        return new AmplitudeRun(seen.times, seen.peaks, seen.crossings, end);
    }

    /** Hz, from the upward crossings of the level of rest in the last half; empty when there are fewer than two. */
    public OptionalDouble frequency() {
        List<Double> late = crossings.subList(crossings.size() / 2, crossings.size());
        if (late.size() < 2) return OptionalDouble.empty();
        return OptionalDouble.of((late.size() - 1) / (late.get(late.size() - 1) - late.get(0)));
    }

    /** Lowest over highest peak of the last half: 1 for a carrier that stands, 0 for one that stops now and then. */
    public double steadiness() {
        if (peaks.size() < 4) return 0;
        List<Double> late = peaks.subList(peaks.size() / 2, peaks.size());
        double lowest = late.stream().mapToDouble(p -> p).min().orElse(0);
        double highest = late.stream().mapToDouble(p -> p).max().orElse(0);
        return highest > 0 ? Math.max(0, lowest / highest) : 0;
    }
}
