package galena.build.expect;

import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.folder.TestPoint;
import galena.build.guard.Guard;
import galena.build.guard.GuardReport;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.OutputSweep;
import galena.build.predict.PointReading;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.source.BadInputException;
import galena.engine.steady.Accuracy;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Everything to be read on the bench beside what the prediction says.
 *
 * @param points what is read at each test point with its probe connected
 * @param silent test points whose probe stops the oscillation, with the reason
 * @param sweeps what each adjustment does, in the order of the file
 * @param guard what spoils the build; empty when it does not oscillate
 */
public record Expected(
        List<PointReading> points, List<String> silent, List<OutputSweep> sweeps, Optional<GuardReport> guard) {
    /** Part of every key under which this is kept: a change of method changes the answers' key. */
    static final String METHOD = "expected 1";

    private static final int STEPS = 20;

    /** Of a build that does not oscillate there is nothing to be read. */
    public static final Expected NOTHING = new Expected(List.of(), List.of(), List.of(), Optional.empty());

    public Expected {
        points = List.copyOf(points);
        silent = List.copyOf(silent);
        sweeps = List.copyOf(sweeps);
    }

    /**
     * Computes what a prediction leaves open.
     *
     * @param prediction of the folder's build with nothing laid over it
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     */
    public static Expected of(BuildFolder folder, Prediction prediction, Progress progress)
            throws BadInputException, NoOperatingPoint {
        if (!(prediction.running() instanceof Prediction.Oscillation)) return NOTHING;
        List<PointReading> points = new ArrayList<>();
        List<String> silent = new ArrayList<>();
        for (TestPoint point : folder.build().points().values()) {
            progress.at(0.1, "probe on " + point.name());
            try {
                points.add(PointReading.of(folder, Overlay.NONE, point, Accuracy.CERTIFIED, progress));
            } catch (Running.NotRunning stopped) {
                silent.add(point.name() + ": " + stopped.getMessage());
            }
        }
        try {
            Running running = Running.of(folder.build(), Overlay.NONE, Accuracy.CERTIFIED, progress);
            List<OutputSweep> sweeps = new ArrayList<>();
            for (String part : folder.build().adjustments()) {
                progress.at(0.5, "turning " + part);
                sweeps.add(OutputSweep.of(running, part, STEPS, progress));
            }
            progress.at(0.7, "what spoils it");
            GuardReport guard = Guard.of(folder, Overlay.NONE, Accuracy.CERTIFIED, progress);
            return new Expected(points, silent, sweeps, Optional.of(guard));
        } catch (Running.NotRunning driven) {
            return new Expected(points, silent, List.of(), Optional.empty()); // runs only by its alternating sources
        }
    }
}
