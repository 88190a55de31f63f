package galena.build.predict;

import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A build at one setting of its adjustments, as {@link Live} answers: with typical parts, without the intervals that tolerances give.
 * The modulation curve is asked for apart, as it takes longer than the rest.
 */
public final class Moment {
    private static final int SAMPLES = 192;
    private static final Prediction.Modulation LATER = new Prediction.NoCurve("being computed");

    private final Live.Way way;
    private final Prediction prediction;
    private final Optional<Running> running;
    private final Optional<Verdict.Reach> reach;

    private Moment(Live.Way way, Prediction prediction, Optional<Running> running, Optional<Verdict.Reach> reach) {
        this.way = way;
        this.prediction = prediction;
        this.running = running;
        this.reach = reach;
    }

    /** One period of a quantity, evenly sampled, first sample at phase 0. @param unit of the samples */
    public record Trace(String part, String quantity, Unit unit, List<Double> samples) {
        public Trace {
            samples = List.copyOf(samples);
        }
    }

    static Moment whole(Prediction prediction) {
        return new Moment(Live.Way.WHOLE, prediction, Optional.empty(), Optional.empty());
    }

    static Moment of(
            Running running,
            Live.Way way,
            String digest,
            Prediction.Oscillation oscillation,
            Optional<Verdict.Reach> reach) {
        Prediction prediction = new Prediction(
                running.build().name(),
                digest,
                Predict.setting(
                        running.build(), running.overlay(), running.state().accuracy(), running.circuit()),
                new Prediction.Rest(running.point().rung().toString(), List.of()),
                Optional.of(StartFigures.typical(running.startup(), running.state())),
                oscillation,
                LATER,
                List.of(),
                List.of());
        return new Moment(way, prediction, Optional.of(running), reach).judged(LATER);
    }

    private Moment judged(Prediction.Modulation modulation) {
        Prediction p = prediction;
        Prediction complete = new Prediction(
                p.name(),
                p.digest(),
                p.setting(),
                p.rest(),
                p.startup(),
                p.running(),
                modulation,
                Verdict.of(running.orElseThrow().build(), p.startup(), p.running(), modulation, reach),
                p.notes());
        return new Moment(way, complete, running, reach);
    }

    public Live.Way way() {
        return way;
    }

    /** With typical parts; of {@link Live.Way#WHOLE} with intervals and curve. */
    public Prediction prediction() {
        return prediction;
    }

    /** The solved carrier; empty when nothing simply starts and stays. */
    public Optional<Running> running() {
        return running;
    }

    /** Whether the modulation is what it will be: the curve, or why there is none. Before, it is still to be asked for. */
    public boolean curveWasAsked() {
        return running.isEmpty() || !prediction.modulation().equals(LATER);
    }

    /** The same with its modulation curve, and the verdict with it. */
    public Moment withCurve(Progress progress) {
        if (running.isEmpty()) return this;
        return judged(curve(running.get(), progress));
    }

    private Prediction.Modulation curve(Running r, Progress progress) {
        if (r.audioSource().isEmpty()) return new Prediction.NoCurve("the build has no audio source");
        if (!(r.audioLevel() > 0)) return new Prediction.NoCurve("the audio source has no level");
        if (!(prediction.running() instanceof Prediction.Oscillation oscillation))
            return new Prediction.NoCurve("there is no steady oscillation to modulate");
        Optional<Prediction.Spectrum> output = Output.spectrum(r.build(), oscillation.spectra());
        if (output.isEmpty()) return new Prediction.NoCurve("the build has no coil whose current could be modulated");
        return StaticModulation.of(
                r.state(),
                r.audioSource().get(),
                r.audioLevel(),
                output.get().part(),
                output.get().quantity(),
                r.build().intent().modulation().map(Quantity::value),
                progress);
    }

    /** The spectrum of the output, the one that the verdict judges. */
    public Optional<Prediction.Spectrum> output() {
        return running.isPresent() && prediction.running() instanceof Prediction.Oscillation oscillation
                ? Output.spectrum(running.get().build(), oscillation.spectra())
                : Optional.empty();
    }

    /** The voltage across the coil that oscillates, and the current of the output; none when nothing oscillates. */
    public List<Trace> traces() {
        List<Trace> traces = new ArrayList<>();
        running.ifPresent(r -> {
            Waveforms w = r.state().waveforms();
            String coil = r.state().site().part();
            traces.add(new Trace(
                    coil,
                    "voltage across " + coil,
                    Unit.VOLT,
                    samples(w, r.state().site().a(), r.state().site().b())));
            output().ifPresent(o -> w.equations()
                    .current(Output.branch(r.circuit(), o.part()))
                    .ifPresent(current ->
                            traces.add(new Trace(o.part(), o.quantity(), Unit.AMPERE, samples(w, current, 0)))));
        });
        return traces;
    }

    private static List<Double> samples(Waveforms w, int a, int b) {
        List<Double> samples = new ArrayList<>(SAMPLES);
        for (int k = 0; k < SAMPLES; k++) {
            double phase = (double) k / SAMPLES;
            samples.add(w.at(a, phase) - (b == 0 ? 0 : w.at(b, phase)));
        }
        return samples;
    }
}
