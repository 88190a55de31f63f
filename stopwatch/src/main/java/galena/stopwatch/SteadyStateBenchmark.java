package galena.stopwatch;

import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.KeptOscillation;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The steady oscillation from nothing, and after a turn of the trimmer by 1 % of its travel, each time in the other direction.
 * Alone: {@code ./benchmarks SteadyState}.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
public class SteadyStateBenchmark {
    private static final double TRIM = 0.5;
    private static final double TURN = 0.01;

    @Param
    Bench circuit = Bench.OSCILLATOR;

    @Param({"live", "certified"})
    String accuracy = "live";

    private Accuracy wanted = Accuracy.LIVE;
    private Equations here = Bench.OSCILLATOR.equations(TRIM);
    private Equations there = here;
    private SteadyState.Found known = Bench.cold(here, Accuracy.LIVE);
    private KeptOscillation kept = new KeptOscillation(known, Accuracy.LIVE, Watch.NONE);

    @Setup
    public void prepare() {
        wanted = accuracy.equals("live") ? Accuracy.LIVE : Accuracy.CERTIFIED;
        here = circuit.equations(TRIM);
        there = circuit.equations(TRIM + TURN);
        known = Bench.cold(here, wanted);
        kept = new KeptOscillation(known, wanted, Watch.NONE);
    }

    @Benchmark
    public SteadyState.Found cold() {
        return Bench.cold(here, wanted);
    }

    @Benchmark
    public SteadyState.Found warm() {
        known = Bench.found(new SteadyOscillation(wanted).solveNear(there, known));
        turn();
        return known;
    }

    /** Warm, with meshes and factors kept as the page keeps them. */
    @Benchmark
    public SteadyState.Found kept() {
        SteadyState.Found found = Bench.found(kept.move(there));
        turn();
        return found;
    }

    private void turn() {
        Equations last = here;
        here = there;
        there = last;
    }
}
