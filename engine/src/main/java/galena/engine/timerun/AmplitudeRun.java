package galena.engine.timerun;

import galena.engine.equations.Equations;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.util.ArrayList;
import java.util.List;

/**
 * How the amplitude of an oscillation goes on in time: the highest value of a voltage in each of its cycles.
 *
 * @param times of the peaks, s
 * @param peaks V above the voltage's mean at rest
 * @param end how the run ended
 */
public record AmplitudeRun(List<Double> times, List<Double> peaks, TimeRun.End end) {
    private static final double TOLERANCE = 1e-3;
    private static final double KICK = 1e-3;
    private static final double STEPS_A_CYCLE = 60;

    public AmplitudeRun {
        times = List.copyOf(times);
        peaks = List.copyOf(peaks);
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
        List<Double> times = new ArrayList<>(), peaks = new ArrayList<>();
        double[] last = {rest, rest}, moment = {0};
        TimeRun.End end = new TimeRun(equations, TOLERANCE, watch)
                .run(x, kick, 0, cycles / frequency, 1 / (STEPS_A_CYCLE * frequency), (time, now) -> {
                    double v = now[a] - now[b];
                    if (last[1] > last[0] && last[1] > v && last[1] > rest && isNewCycle(times, moment[0], frequency)) {
                        times.add(moment[0]);
                        peaks.add(last[1] - rest);
                    }
                    last[0] = last[1];
                    last[1] = v;
                    moment[0] = time;
                    return true;
                });
        return new AmplitudeRun(times, peaks, end);
    }

    private static boolean isNewCycle(List<Double> times, double moment, double frequency) {
        return times.isEmpty() || moment - times.get(times.size() - 1) > 0.6 / frequency;
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
