package galena.build.drift;

import galena.build.folder.Supply;
import galena.build.predict.Progress;
import galena.build.predict.QuickEnvelope;
import galena.build.predict.Running;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Followed;
import galena.engine.steady.Follower;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.Optional;

/**
 * The build at one state of its supply and one temperature after another, each followed from the last. Frequencies are those of the
 * carrier's own mesh, so that its error is in none of their differences. One run at a time.
 */
final class Bench {
    private static final Accuracy ACCURACY = Accuracy.LIVE;

    private final Running running;
    private final Progress progress;
    private final Follower follower;
    private final Optional<QuickEnvelope> envelope;
    private final double depth;
    private double audio;
    private Followed last;

    Bench(Running running, Progress progress) {
        this.running = running;
        this.progress = progress;
        Waveforms waveforms = running.state().waveforms();
        follower = new Follower(waveforms.equations(), running.state().site(), ACCURACY, progress.watch());
        last = Followed.of(running.state());
        depth = running.build().intent().modulation().map(q -> q.value()).orElse(0.0);
        envelope = running.audioSource()
                .filter(source -> depth > 0 && running.audioLevel() > 0)
                .map(source -> new QuickEnvelope(
                        running.state(),
                        source,
                        running.outputBranch(),
                        running.audioLevel(),
                        ACCURACY,
                        progress.watch()));
        audio = running.audioLevel();
        envelope.flatMap(e -> e.at(running.state(), depth)).ifPresent(look -> audio = look.audio());
    }

    /** Peak audio voltage, set once for the wanted depth and left; where that depth can't be had, the programme's level. */
    double audio() {
        return audio;
    }

    /** Starts anew from the carrier as it is set. */
    void home() {
        last = Followed.of(running.state());
    }

    /** The carrier as it was set, at switch-on. */
    DriftReport.Moment here(double charge, double celsius) {
        return moment(0, charge, celsius, Followed.of(running.state()));
    }

    /**
     * @param seconds since switch-on
     * @param charge of the battery
     * @param emf V
     * @param ohms inside the supply
     * @param celsius °C
     * @return empty when nothing oscillates there
     */
    Optional<DriftReport.Moment> at(double seconds, double charge, double emf, double ohms, double celsius) {
        progress.watch().check();
        Equations equations = Equations.of(circuit(emf, ohms, celsius));
        Optional<Followed> there = follower.follow(equations, last);
        if (there.isEmpty()) there = cold(equations);
        if (there.isEmpty()) return Optional.empty();
        last = there.get();
        return Optional.of(moment(seconds, charge, celsius, last));
    }

    private Circuit circuit(double emf, double ohms, double celsius) {
        Circuit circuit = running.circuit();
        if (circuit.part(Supply.NAME).orElse(null) instanceof Battery b) {
            circuit = circuit.with(new Battery(b.name(), b.plus(), b.minus(), emf, ohms));
        }
        return circuit.atTemperature(celsius);
    }

    /** The battery may have fallen so far since the last moment that the orbit must be sought anew. */
    private Optional<Followed> cold(Equations equations) {
        if (!(OperatingPointLadder.climb(equations) instanceof OperatingPoint.Found point)) return Optional.empty();
        Optional<Startup> startup = Startup.readiest(point).filter(Startup::grows);
        if (startup.isEmpty()) return Optional.empty();
        return new SteadyOscillation(ACCURACY, progress.watch()).solve(point, startup.get())
                        instanceof SteadyState.Found found
                ? Optional.of(Followed.of(found))
                : Optional.empty();
    }

    private DriftReport.Moment moment(double seconds, double charge, double celsius, Followed at) {
        Waveforms w = at.waveforms();
        Circuit circuit = w.equations().circuit();
        Optional<QuickEnvelope.Look> look = envelope.flatMap(
                e -> follower.settle(at) instanceof SteadyState.Found found ? e.left(found, audio) : Optional.empty());
        double terminals = 0, current = 0;
        if (circuit.part(Supply.NAME).orElse(null) instanceof Battery b) {
            terminals = w.meanVoltage(b.plus()) - w.meanVoltage(b.minus());
            current = -w.meanCurrent(Supply.NAME);
        }
        return new DriftReport.Moment(
                seconds,
                charge,
                celsius,
                terminals,
                w.frequency(),
                w.currentAmplitude(running.outputBranch(), 1),
                current,
                look.map(QuickEnvelope.Look::deepest),
                look.map(QuickEnvelope.Look::distortion));
    }

    double depth() {
        return envelope.isPresent() ? depth : 0;
    }
}
