package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.source.BadInputException;
import galena.build.wiring.Assembled;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What one adjustment covers.
 *
 * @param part the adjustment
 * @param points carrier and amplitude by position, rising; positions without oscillation are missing
 * @param site the coil whose voltage the amplitude is
 */
public record Coverage(String part, List<Point> points, String site) {
    private static final int MOST_HALVINGS = 6;

    public Coverage {
        points = List.copyOf(points);
    }

    /**
     * @param position 0 to 1
     * @param frequency Hz
     * @param amplitude peak volts across the site
     */
    public record Point(double position, double frequency, double amplitude) {}

    /** Lowest carrier, Hz. */
    public double lowest() {
        return points.stream().mapToDouble(Point::frequency).min().orElseThrow();
    }

    /** Highest carrier, Hz. */
    public double highest() {
        return points.stream().mapToDouble(Point::frequency).max().orElseThrow();
    }

    /**
     * Sweeps an adjustment from stop to stop.
     *
     * @param steps intervals of the sweep, 1 or more
     * @throws BadInputException when the circuit can't be solved for a reason in the file
     * @throws NoOperatingPoint when none was found
     */
    public static Coverage sweep(
            BuildFolder folder, Overlay overlay, String part, int steps, Accuracy accuracy, Progress progress)
            throws BadInputException, NoOperatingPoint {
        Build build = folder.build();
        Assembled assembled = CircuitOf.build(build, overlay);
        Circuit circuit = Quiet.of(build, assembled.circuit());
        double position = overlay.adjustments()
                .getOrDefault(part, build.part(part).orElseThrow().position().orElse(PartEntry.MIDDLE));
        OperatingPoint point = OperatingPointLadder.climb(Equations.of(circuit));
        if (point instanceof OperatingPoint.NotFound none) throw new NoOperatingPoint(none);
        OperatingPoint.Found rest = (OperatingPoint.Found) point;
        Optional<Startup> startup = Startup.readiest(rest);
        if (startup.isEmpty()
                || !(new SteadyOscillation(accuracy, progress.watch()).solve(rest, startup.get())
                        instanceof SteadyState.Found start)) {
            return new Coverage(
                    part, List.of(), startup.map(s -> s.site().part()).orElse(""));
        }
        return new Sweep(build, circuit, part, accuracy, progress).over(start, position, steps);
    }

    /** Only the two stops, from a solved middle. */
    static Coverage ends(Build build, Circuit circuit, String part, SteadyState.Found middle, Progress progress) {
        double position = position(circuit, build, part);
        return new Sweep(build, circuit, part, Accuracy.LIVE, progress).over(middle, position, 1);
    }

    private static double position(Circuit circuit, Build build, String part) {
        return circuit.part(part).orElseThrow() instanceof Trimmer trimmer
                ? trimmer.position()
                : build.part(part).orElseThrow().position().orElseThrow();
    }

    /** Walks outwards from a solved position, halving its stride where an orbit is lost. */
    private record Sweep(Build build, Circuit circuit, String part, Accuracy accuracy, Progress progress) {
        Coverage over(SteadyState.Found start, double position, int steps) {
            List<Point> points = new ArrayList<>();
            walk(start, position, steps, 1, points);
            walk(start, position, steps, 0, points);
            points.sort(Comparator.comparingDouble(Point::position));
            return new Coverage(part, points, start.site().part());
        }

        private void walk(SteadyState.Found start, double from, int steps, int stop, List<Point> points) {
            SteadyState.Found now = start;
            double at = from;
            for (int k = stop == 1 ? 0 : steps; k >= 0 && k <= steps; k += stop == 1 ? 1 : -1) {
                double target = (double) k / steps;
                if (stop == 1 ? target < from : target >= from) continue;
                Optional<SteadyState.Found> there = move(now, at, target, 0);
                progress.at(Math.abs(target - from), "sweeping " + part);
                if (there.isEmpty()) return;
                now = there.get();
                at = target;
                points.add(point(now, target));
            }
        }

        private Optional<SteadyState.Found> move(SteadyState.Found now, double from, double to, int halvings) {
            Equations changed = Equations.of(Turned.to(build, circuit, part, to));
            SteadyState moved = new SteadyOscillation(accuracy, progress.watch()).solveNear(changed, now);
            if (moved instanceof SteadyState.Found found) return Optional.of(found);
            if (halvings == MOST_HALVINGS) return Optional.empty();
            double middle = (from + to) / 2;
            return move(now, from, middle, halvings + 1).flatMap(half -> move(half, middle, to, halvings + 1));
        }

        private static Point point(SteadyState.Found state, double position) {
            double amplitude =
                    state.waveforms().amplitude(state.site().a(), state.site().b(), 1);
            return new Point(position, state.waveforms().frequency(), amplitude);
        }
    }
}
