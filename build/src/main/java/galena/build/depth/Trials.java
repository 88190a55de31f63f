package galena.build.depth;

import galena.build.depth.ModulationReport.Cause;
import galena.build.depth.ModulationReport.Cure;
import galena.build.figure.Figure;
import galena.build.modulation.AudioResponse;
import galena.build.modulation.Modulated;
import galena.build.modulation.Modulator;
import galena.build.predict.Progress;
import galena.engine.envelope.Response;
import galena.engine.equations.Equations;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Solves changed circuits from the carrier of the one that is known, and looks what their modulation has become. */
final class Trials {
    private static final double WORTH_NAMING = 0.03;
    private static final int MOST_CAUSES = 5;

    /** A change that turns the carrier's phase in the output by more than this tunes; damping is looked for. */
    private static final double TUNES = 0.02;

    /** As does one that moves the carrier by more than this share. */
    private static final double MOVES = 5e-5;

    /** A cure that moves the carrier by more than this leaves the channel. */
    private static final double OTHER_CARRIER = 0.002;

    /** One that leaves less output than this share cures by detuning. */
    private static final double WEAKER = 0.7;

    /** From this share of the output's swing on, the oscillation's own is what counts. */
    private static final double OWN = 0.5;

    private static final double HELPS = 0.97;
    private static final double DIFFERENCE = 1e-3;
    private static final int MOST_CURES = 6;
    private static final int VERIFIED = 3;

    private final SteadyState.Found carrier;
    private final Modulator modulator;
    private final String source;
    private final String coil;
    private final Progress progress;

    Trials(SteadyState.Found carrier, Modulator modulator, String source, String coil, Progress progress) {
        this.carrier = carrier;
        this.modulator = modulator;
        this.source = source;
        this.coil = coil;
        this.progress = progress;
    }

    private Optional<Modulator> with(Change change) {
        Equations changed = Equations.of(change.circuit());
        if (!changed.pattern().sameAs(carrier.waveforms().equations().pattern())) return Optional.empty();
        SteadyState state = new SteadyOscillation(Accuracy.LIVE, progress.watch()).solveNear(changed, carrier);
        return state instanceof SteadyState.Found found
                ? Optional.of(new Modulator(found, source, coil, "current in " + coil, progress.watch()))
                : Optional.empty();
    }

    /** What sets a −3 dB point: d ln f/d ln p, from the change of the response where the point lies and its slope there. */
    record Setters(List<Cause> low, List<Cause> high) {}

    Setters setters(AudioResponse response) {
        List<Cause> low = new ArrayList<>(), high = new ArrayList<>();
        double phase = phase(carrier.waveforms());
        for (Change change : Change.higher(carrier.waveforms().equations().circuit())) {
            Optional<Modulator> changed = with(change);
            if (changed.isEmpty() || turned(phase, changed.get()) > TUNES || moved(changed.get()) > MOVES) continue;
            add(low, change, changed.get(), response.low());
            add(high, change, changed.get(), response.high());
        }
        return new Setters(strongest(low), strongest(high));
    }

    private double turned(double phase, Modulator changed) {
        return Math.abs(Math.IEEEremainder(phase(changed.carrier().waveforms()) - phase, 2 * Math.PI));
    }

    private double moved(Modulator changed) {
        return Math.abs(
                changed.carrier().waveforms().frequency() / carrier.waveforms().frequency() - 1);
    }

    private double output(Modulator of) {
        return of.carrier().waveforms().currentAmplitude(coil, 1);
    }

    private double phase(Waveforms waveforms) {
        double[] c = waveforms.coefficient(waveforms.equations().current(coil).orElseThrow(), 1);
        return Math.atan2(c[1], c[0]);
    }

    private void add(List<Cause> causes, Change change, Modulator changed, Figure point) {
        if (!(point instanceof Figure.Known known)) return;
        double f = known.value();
        double slope = (level(modulator, f * (1 + DIFFERENCE)) - level(modulator, f * (1 - DIFFERENCE)))
                / Math.log((1 + DIFFERENCE) / (1 - DIFFERENCE));
        double moved = (level(changed, f) - level(modulator, f)) / Math.log(1 + Change.STEP);
        causes.add(new Cause(change.what(), -moved / slope));
    }

    private static double level(Modulator of, double audio) {
        return Math.log(of.small(audio).depth() / of.small(Modulator.USUAL_TONE).depth());
    }

    private static List<Cause> strongest(List<Cause> causes) {
        double most =
                causes.stream().mapToDouble(c -> Math.abs(c.share())).max().orElse(0);
        return causes.stream()
                .filter(c -> Math.abs(c.share()) > WORTH_NAMING && Math.abs(c.share()) > WORTH_NAMING * most)
                .sorted(Comparator.comparingDouble(c -> -Math.abs(c.share())))
                .limit(MOST_CAUSES)
                .toList();
    }

    /** Cures that lower the swing at the depth that the build has now, worth most first; the first three verified in full. */
    List<Cure> cures(double level, double audio, List<Change> changes) {
        Response.Modulation now = modulator.small(audio);
        double[] own = modulator.response(audio).oscillationFrequency();
        boolean pulled = Math.hypot(own[0], own[1]) > OWN * now.swing();
        List<Cure> cures = new ArrayList<>();
        List<Modulator> by = new ArrayList<>();
        for (Change change : changes) {
            Optional<Modulator> changed = with(change);
            if (changed.isEmpty()) continue;
            double there = changed.get().carrier().waveforms().frequency();
            if (moved(changed.get()) > OTHER_CARRIER || output(changed.get()) < WEAKER * output(modulator)) continue;
            Response.Modulation small = changed.get().small(audio);
            double swing = level * small.swing() * now.depth() / small.depth();
            if (!(swing < HELPS * level * now.swing())) continue;
            cures.add(new Cure(change.what(), change.cause(pulled), swing, level * small.depth(), there, false));
            by.add(changed.get());
        }
        List<Cure> sorted = new ArrayList<>(cures);
        sorted.sort(Comparator.comparingDouble(Cure::swing));
        List<Cure> best = new ArrayList<>();
        for (Cure cure : sorted.subList(0, Math.min(VERIFIED, sorted.size()))) {
            Modulator changed = by.get(cures.indexOf(cure));
            best.add(verified(
                    cure, changed, level * now.depth() / changed.small(audio).depth(), audio));
        }
        best.sort(Comparator.comparingDouble(Cure::swing));
        best.addAll(sorted.subList(best.size(), Math.min(MOST_CURES, sorted.size())));
        return best;
    }

    private static Cure verified(Cure best, Modulator changed, double level, double audio) {
        if (!(changed.at(level, audio) instanceof Modulated tone)
                || !(tone.swing() instanceof Figure.Known swing)
                || !(tone.negativePeak() instanceof Figure.Known depth)) return best;
        return new Cure(best.what(), best.cause(), swing.value(), depth.value(), best.carrier(), true);
    }
}
