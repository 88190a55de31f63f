package galena.stopwatch;

import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.listen.Listen;
import galena.build.listen.Listening;
import galena.build.listen.SetKind;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.source.BadInputException;
import galena.build.wiring.CircuitOf;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Watch;
import galena.engine.timerun.TimeRun;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A minute of stereo at 48 kHz through the demo build and a set; 60 over the seconds found is how many times faster than it plays.
 * And what has to be taken from the circuit before. Alone: {@code ./benchmarks Listen}.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 1)
@Measurement(iterations = 3, time = 1)
public class ListenBenchmark {
    private static final double RATE = 48_000;
    private static final int SECONDS = 60;
    private static final double NOISE = 0.01;
    private static final double PIECE = 0.2e-3;
    private static final double TOLERANCE = 1e-3;
    private static final double STEPS = 60;
    private static final double LEAST_STEPS = 16;

    private final Running running = demo();
    private final Listen listen = listen(running);
    private final Equations modulated = modulated(running);
    private final double[] left = new double[Listening.BLOCK];
    private final double[] right = new double[Listening.BLOCK];
    private final double[] out = new double[Listening.BLOCK];

    private static Running demo() {
        try (InputStream demo = BuildFolder.class.getResourceAsStream("/galena/demo/build.yaml")) {
            if (demo == null) throw new IllegalStateException("the demo build is missing");
            Path folder = Files.createTempDirectory("listen");
            Path file = folder.resolve("build.yaml");
            Files.copy(demo, file);
            BuildFolder build = BuildFolder.open(folder);
            Files.delete(file);
            Files.delete(folder);
            return Running.of(build.build(), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        } catch (Exception broken) {
            throw new IllegalStateException("the demo build does not run", broken);
        }
    }

    private static Equations modulated(Running running) {
        try {
            return Equations.of(
                    CircuitOf.build(running.build(), running.overlay()).circuit());
        } catch (BadInputException broken) {
            throw new IllegalStateException("the demo build is broken", broken);
        }
    }

    private static Listen listen(Running running) {
        try {
            return Listen.to(running, RATE, Progress.SILENT);
        } catch (Exception broken) {
            throw new IllegalStateException("the demo build cannot be listened to", broken);
        }
    }

    /** Something with all frequencies in it, at the loudness of a programme. */
    @Setup
    public void programme() {
        Random random = new Random(5);
        for (int k = 0; k < left.length; k++) {
            left[k] = 0.2 * random.nextGaussian();
            right[k] = 0.2 * random.nextGaussian();
        }
    }

    @Benchmark
    public double[] minuteOfStereo() {
        Listening stream = listen.through(SetKind.ROD.settings(0), NOISE);
        for (int block = 0; block < SECONDS * RATE / Listening.BLOCK; block++)
            stream.process(left, right, left.length, out);
        if (!(stream.happened().seconds() >= SECONDS)) throw new IllegalStateException("less than a minute was heard");
        return out;
    }

    @Benchmark
    public Listen madeReady() {
        return listen(running);
    }

    /** The whole circuit in time, for the ratio: this over 0.2 ms, against the minute over 60 s. */
    @Benchmark
    public TimeRun.End fifthOfAMillisecondInTime() {
        double f = running.state().waveforms().frequency();
        double[] x = running.state().waveforms().at(0);
        TimeRun.End end = new TimeRun(modulated, TOLERANCE, 1 / (LEAST_STEPS * f), Watch.NONE)
                .run(x, new double[x.length], 0, PIECE, 1 / (STEPS * f), passage -> true);
        if (end != TimeRun.End.REACHED) throw new IllegalStateException("the run in time ended " + end);
        return end;
    }
}
