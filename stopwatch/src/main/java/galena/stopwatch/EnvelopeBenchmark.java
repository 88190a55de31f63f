package galena.stopwatch;

import galena.engine.circuit.Circuit;
import galena.engine.envelope.DynamicEnvelope;
import galena.engine.envelope.EnvelopeAnswer;
import galena.engine.envelope.EnvelopeInTime;
import galena.engine.envelope.Response;
import galena.engine.envelope.Sidebands;
import galena.engine.envelope.SlowSource;
import galena.engine.equations.Equations;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.steady.Accuracy;
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
 * A ripple of half a volt on the supply at 1 kHz as a modulation: solved for directly, to first order at one frequency, and run in time
 * for two periods, which is the least that shows whether it repeats. The ratio to brute integration is {@code inTime} over
 * {@code directly}. Alone: {@code ./benchmarks Envelope}.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 4, time = 2)
public class EnvelopeBenchmark {
    private static final double TRIM = 0.5;
    private static final SlowSource RIPPLE = new SlowSource("B", 0.5, 1000);

    @Param
    Bench circuit = Bench.OSCILLATOR;

    private SteadyState.Found carrier = Bench.cold(Bench.OSCILLATOR.equations(TRIM), Accuracy.LIVE);

    @Setup
    public void prepare() {
        Circuit parts = circuit.equations(TRIM).circuit();
        // a source and its resistance in the battery's place: a run in time wants a source that has a wave
        VoltageSource supply = new VoltageSource("B", "cell", "ground", new Wave.Direct(9));
        Circuit fed = parts.plus(new Resistor("Ri", "cell", "rail", 2)).with(supply);
        carrier = Bench.cold(Equations.of(fed), Accuracy.LIVE);
    }

    @Benchmark
    public EnvelopeAnswer directly() {
        return new DynamicEnvelope(1e-3, Watch.NONE).solve(carrier, RIPPLE);
    }

    @Benchmark
    public Response toFirstOrder() {
        return new Sidebands(carrier, "B").at(1000);
    }

    @Benchmark
    public EnvelopeAnswer inTime() {
        int cycles = (int) (2.5 * carrier.waveforms().frequency() / RIPPLE.frequency());
        return new EnvelopeInTime(cycles, Watch.NONE).run(carrier, RIPPLE);
    }
}
