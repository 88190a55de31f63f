package galena.stopwatch;

import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.startup.Startup;
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

/** The operating point from cold, and the startup from it. Alone: {@code ./benchmarks OperatingPoint}. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
public class OperatingPointBenchmark {
    private static final double TRIM = 0.5;

    @Param
    Bench circuit = Bench.OSCILLATOR;

    private Equations equations = Bench.OSCILLATOR.equations(TRIM);
    private OperatingPoint.Found point = Bench.point(equations);

    @Setup
    public void prepare() {
        equations = circuit.equations(TRIM);
        point = Bench.point(equations);
    }

    @Benchmark
    public OperatingPoint.Found operatingPoint() {
        return Bench.point(equations);
    }

    @Benchmark
    public Startup startup() {
        return Bench.startup(point);
    }
}
