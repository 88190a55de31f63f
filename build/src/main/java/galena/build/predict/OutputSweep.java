package galena.build.predict;

import galena.build.folder.Supply;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * What one adjustment does to the carrier and to the output from stop to stop, the others as they stand.
 *
 * @param part the adjustment
 * @param set where it stands, 0 to 1
 * @param coil whose current is the output
 * @param points by position, rising; positions where the oscillation was lost are missing
 */
public record OutputSweep(String part, double set, String coil, List<Point> points) {
    public OutputSweep {
        points = List.copyOf(points);
    }

    /**
     * @param position 0 to 1
     * @param carrier Hz
     * @param current peak of its fundamental in the output coil, A
     * @param supply mean current drawn, A; zero where the build names no supply
     */
    public record Point(double position, double carrier, double current, double supply) {}

    /** The position with the largest output. */
    public Point loudest() {
        return points.stream().max(Comparator.comparingDouble(Point::current)).orElseThrow();
    }

    /** Largest less smallest carrier, Hz. */
    public double carrierRange() {
        return range(Point::carrier);
    }

    /** Largest less smallest output current over the largest. */
    public double outputRange() {
        return points.isEmpty() ? 0 : range(Point::current) / loudest().current();
    }

    private double range(ToDoubleFunction<Point> of) {
        double low = points.stream().mapToDouble(of).min().orElse(0);
        return points.stream().mapToDouble(of).max().orElse(0) - low;
    }

    /**
     * @param running the build as it stands
     * @param part the adjustment
     * @param steps from stop to stop, 1 or more
     */
    public static OutputSweep of(Running running, String part, int steps, Progress progress) {
        double set = running.position(part);
        List<Point> points = new ArrayList<>();
        walk(running, part, set, steps, 1, points, progress);
        walk(running, part, set, steps, -1, points, progress);
        points.sort(Comparator.comparingDouble(Point::position));
        return new OutputSweep(part, set, running.outputPart(), points);
    }

    private static void walk(
            Running running, String part, double set, int steps, int way, List<Point> points, Progress progress) {
        SteadyOscillation steady = new SteadyOscillation(Accuracy.LIVE, progress.watch());
        SteadyState.Found now = running.state();
        int first = way > 0 ? (int) Math.ceil(set * steps - 1e-9) : (int) Math.ceil(set * steps - 1e-9) - 1;
        for (int k = first; k >= 0 && k <= steps; k += way) {
            double position = (double) k / steps;
            Equations there = Equations.of(running.turned(part, position));
            if (!(steady.solveNear(there, now) instanceof SteadyState.Found next)) return;
            now = next;
            points.add(point(running, next, position));
        }
    }

    private static Point point(Running running, SteadyState.Found state, double position) {
        boolean supplied = running.build().supply().isPresent();
        return new Point(
                position,
                state.waveforms().frequency(),
                state.waveforms().currentAmplitude(running.outputBranch(), 1),
                supplied ? -state.waveforms().meanCurrent(Supply.NAME) : 0);
    }
}
