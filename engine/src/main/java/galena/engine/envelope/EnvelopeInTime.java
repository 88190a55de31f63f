package galena.engine.envelope;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.part.Coil;
import galena.engine.part.CurrentSource;
import galena.engine.part.Part;
import galena.engine.part.Resonator;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.steady.Waveforms;
import galena.engine.timerun.TimeRun;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Runs a modulated oscillation in time at the carrier's own steps, slow period after slow period until one repeats the last, and
 * reads its envelope in windows of a few cycles. For what {@link DynamicEnvelope} cannot answer: an oscillator that quits in the
 * trough. Slow, and it waits for every capacitor. Immutable.
 */
public final class EnvelopeInTime {
    private static final double TOLERANCE = 1e-3;
    private static final double STEPS_A_CYCLE = 60;
    private static final double LEAST_STEPS_A_CYCLE = 16;
    private static final double SETTLED = 2e-3;
    private static final int POINTS = 129;

    private final int mostCycles;
    private final Watch watch;

    /** @param mostCycles of the carrier to run in all */
    public EnvelopeInTime(int mostCycles, Watch watch) {
        this.mostCycles = mostCycles;
        this.watch = watch;
    }

    /**
     * @param carrier the unmodulated oscillation, from which the run starts
     * @param source voltage or current source that modulates
     * @return {@link EnvelopeRun}, or why there is none: two slow periods are more cycles than allowed, or the run stuck
     */
    public EnvelopeAnswer run(SteadyState.Found carrier, SlowSource source) {
        Waveforms waveforms = carrier.waveforms();
        double frequency = waveforms.frequency(), period = 1 / source.frequency();
        int most = (int) (mostCycles / (frequency * period));
        if (most < 2) return new EnvelopeAnswer.NotFound(EnvelopeAnswer.Reason.TOO_LONG, 0);
        Equations equations = Equations.of(modulated(waveforms.equations().circuit(), source));
        double[] x = waveforms.at(0);
        Map<String, double[][]> before = Map.of();
        double repeats = 1;
        for (int k = 1; k <= most; k++) {
            CycleWindows windows = new CycleWindows(watched(equations), frequency, (k - 1) * period, period);
            TimeRun run = new TimeRun(equations, TOLERANCE, 1 / (LEAST_STEPS_A_CYCLE * frequency), watch);
            double[] none = new double[equations.stride()];
            TimeRun.End end = run.run(x, none, (k - 1) * period, k * period, 1 / (STEPS_A_CYCLE * frequency), windows);
            if (end != TimeRun.End.REACHED) return new EnvelopeAnswer.NotFound(EnvelopeAnswer.Reason.STUCK, 1);
            x = windows.last();
            Map<String, double[][]> now = windows.envelopes(POINTS);
            repeats = before.isEmpty() ? 1 : difference(before, now);
            if (repeats < SETTLED || k == most) return new EnvelopeRun(source, frequency, k, repeats, now);
            before = now;
        }
        throw new IllegalStateException("a run ends with its last period");
    }

    private static Circuit modulated(Circuit circuit, SlowSource source) {
        Part part = circuit.part(source.name())
                .orElseThrow(() -> new IllegalArgumentException("no source " + source.name()));
        if (part instanceof VoltageSource v) {
            return circuit.with(new VoltageSource(
                    v.name(), v.plus(), v.minus(), sine(v.wave().rest(), source)));
        }
        if (part instanceof CurrentSource c) {
            return circuit.with(
                    new CurrentSource(c.name(), c.from(), c.to(), sine(c.wave().rest(), source)));
        }
        throw new IllegalArgumentException(
                source.name() + " has no wave: only voltage and current sources are run in time");
    }

    private static Wave sine(double rest, SlowSource source) {
        return new Wave.Sine(rest, source.level(), source.frequency(), 0);
    }

    private static Map<String, Integer> watched(Equations equations) {
        Map<String, Integer> watched = new LinkedHashMap<>();
        for (Part part : equations.circuit().parts()) {
            if (part instanceof Coil || part instanceof Resonator) {
                watched.put(part.name(), equations.current(part.name()).orElseThrow());
            }
        }
        return watched;
    }

    /** Of magnitudes: phases of a free oscillation wander. */
    private static double difference(Map<String, double[][]> before, Map<String, double[][]> now) {
        double most = 0;
        for (Map.Entry<String, double[][]> entry : now.entrySet()) {
            double[][] z = entry.getValue(), old = before.get(entry.getKey());
            if (old == null) continue;
            double change = 0, top = Double.MIN_NORMAL;
            for (int i = 0; i < z[0].length; i++) {
                double size = Math.hypot(z[0][i], z[1][i]);
                top = Math.max(top, size);
                change = Math.max(change, Math.abs(size - Math.hypot(old[0][i], old[1][i])));
            }
            most = Math.max(most, change / top);
        }
        return most;
    }
}
