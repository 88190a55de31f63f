package galena.build.predict;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Chain;
import galena.engine.steady.Retrim;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.List;
import java.util.Optional;

/**
 * The static negative peak as a figure of three orbits that one adjustment moves together: the carrier, the carrier with its large
 * capacitors held at the voltages that it leaves on them, and the same at the audio's trough.
 */
final class DepthChain {
    private static final double REACH = 0.15;
    /** Two amplitudes, each to what the accuracy promises, dB to a share. */
    private static final double NEPERS = Math.log(10) / 20;

    /** Where the two ends of the audio differ by less than this share of the carrier, nothing tells which is the trough. */
    private static final double TELLS = 1e-3;

    private static final double MIDDLE = 0.5;
    private static final int STEPS = 4;

    private final Running running;
    private final String part;
    private final String source;
    private final double level;
    private final String coil;
    private final Accuracy accuracy;
    private final Progress progress;
    private final List<String> names;

    private DepthChain(
            Running running, String part, String source, double level, Accuracy accuracy, Progress progress) {
        this.running = running;
        this.part = part;
        this.source = source;
        this.level = level;
        this.coil = running.outputBranch();
        this.accuracy = accuracy;
        this.progress = progress;
        names = Envelope.holding(running.state().waveforms());
    }

    /**
     * Turns an adjustment until the static negative peak is the wanted one.
     *
     * @param source audio source
     * @param level of it, peak, V
     * @param depth wanted, a fraction
     * @return empty when the oscillation is lost before the audio reaches its level at the first position
     */
    static Optional<Retrim.Outcome> turn(
            Running running,
            String part,
            String source,
            double level,
            double depth,
            Accuracy accuracy,
            Progress progress) {
        DepthChain chain = new DepthChain(running, part, source, level, accuracy, progress);
        double position = running.position(part);
        Optional<Start> start = chain.start(running.state(), position);
        if (start.isEmpty() || !start.get().tells()) {
            SteadyState there = new SteadyOscillation(accuracy, progress.watch())
                    .solveNear(Equations.of(running.turned(part, MIDDLE)), running.state());
            if (there instanceof SteadyState.Found found) {
                position = MIDDLE;
                start = chain.start(found, MIDDLE);
            }
        }
        double from = position;
        return start.map(s -> new Retrim(accuracy, progress.watch())
                .to(chain.of(s.sign), 0, 1, from, List.of(s.carrier, s.centre, s.trough), depth));
    }

    /** Three orbits at one position; {@code sign} of the audio at its trough. */
    private record Start(
            SteadyState.Found carrier, SteadyState.Found centre, SteadyState.Found trough, int sign, double depth) {
        boolean tells() {
            return depth > TELLS;
        }
    }

    private Optional<Start> start(SteadyState.Found carrier, double position) {
        Circuit turned = running.turned(part, position);
        Circuit held = Envelope.hold(turned, carrier.waveforms(), names);
        Optional<SteadyState.Found> centre =
                Envelope.centre(carrier, Envelope.at(held, source, 0), accuracy, progress.watch());
        if (centre.isEmpty()) return Optional.empty();
        Optional<Start> best = Optional.empty();
        for (int sign = -1; sign <= 1; sign += 2) {
            Optional<SteadyState.Found> end = walk(held, sign * level, centre.get());
            if (end.isEmpty()) continue;
            double depth = depth(centre.get().waveforms(), end.get().waveforms());
            if (best.isEmpty() || depth > best.get().depth) {
                best = Optional.of(new Start(carrier, centre.get(), end.get(), sign, depth));
            }
        }
        return best;
    }

    private Optional<SteadyState.Found> walk(Circuit held, double to, SteadyState.Found centre) {
        SteadyOscillation steady = new SteadyOscillation(accuracy, progress.watch());
        SteadyState.Found now = centre;
        for (int k = 1; k <= STEPS; k++) {
            Equations next = Equations.of(Envelope.at(held, source, to * k / STEPS));
            if (!(steady.solveNear(next, now) instanceof SteadyState.Found found)) return Optional.empty();
            now = found;
        }
        return Optional.of(now);
    }

    private Chain of(int sign) {
        return new Chain(
                List.of(
                        (position, before) -> Equations.of(running.turned(part, position)),
                        (position, before) -> held(position, before, 0),
                        (position, before) -> held(position, before, sign * level)),
                orbits -> depth(orbits.get(1), orbits.get(2)),
                REACH,
                2 * accuracy.harmonicDecibels() * NEPERS,
                "the depth");
    }

    private Equations held(double position, List<Waveforms> before, double audio) {
        Circuit held = Envelope.hold(running.turned(part, position), before.get(0), names);
        return Equations.of(Envelope.at(held, source, audio));
    }

    private double depth(Waveforms rest, Waveforms trough) {
        return 1 - amplitude(trough) / amplitude(rest);
    }

    private double amplitude(Waveforms waveforms) {
        return waveforms.currentAmplitude(coil, 1);
    }
}
