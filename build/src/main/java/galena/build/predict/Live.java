package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.CacheKey;
import galena.build.folder.Overlay;
import galena.build.source.BadInputException;
import galena.build.wiring.Assembled;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.KeptOscillation;
import galena.engine.steady.Retrim;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.io.IOException;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A build whose carrier is kept solved while its adjustments and values move: each answer is a true solution, found from the last one
 * in milliseconds. Rungs, in this order: from the last orbit in one step ({@link Way#WARM}); through settings in between, halved
 * where the orbit is lost ({@link Way#STEPWISE}); from the operating point ({@link Way#COLD}). What does not simply start and
 * stay is handed to {@link Predict} ({@link Way#WHOLE}). Nothing is interpolated. One per thread.
 */
public final class Live {
    private static final int MOST_HALVINGS = 5;
    private static final double ROOM = 25;

    /** How an answer was come by. */
    public enum Way {
        WARM,
        STEPWISE,
        COLD,
        WHOLE
    }

    private final Accuracy accuracy;
    private Optional<Running> last = Optional.empty();
    private Optional<KeptOscillation> kept = Optional.empty();
    private Optional<Stops> stops = Optional.empty();

    /** @param accuracy of the carrier */
    public Live(Accuracy accuracy) {
        this.accuracy = accuracy;
    }

    /**
     * @param folder as it stands
     * @param overlay laid over it
     * @param progress may cancel
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws IOException when the drawer can't be read for the digest
     */
    public Moment at(BuildFolder folder, Overlay overlay, Progress progress)
            throws BadInputException, NoOperatingPoint, IOException {
        Build build = folder.build();
        Assembled all = CircuitOf.build(build, overlay);
        Assembled quiet = new Assembled(Quiet.of(build, all.circuit()), all.origins(), all.warnings());
        Equations equations = Equations.of(quiet.circuit());
        Optional<Running> before = last.filter(l ->
                equations.pattern().sameAs(l.state().waveforms().equations().pattern()));
        OperatingPoint point = before.map(
                        l -> OperatingPointLadder.near(equations, l.point().x()))
                .orElseGet(() -> OperatingPointLadder.climb(equations));
        if (point instanceof OperatingPoint.NotFound none) throw new NoOperatingPoint(none);
        OperatingPoint.Found rest = (OperatingPoint.Found) point;
        Optional<Startup> startup = Startup.readiest(rest).filter(Startup::grows);
        Optional<Solved> solved = startup.flatMap(s -> solve(build, overlay, before, rest, s, progress));
        if (solved.isEmpty()) {
            last = Optional.empty();
            kept = Optional.empty();
            return Moment.whole(Predict.of(folder, overlay, accuracy, progress));
        }
        Running running = new Running(
                build, overlay, quiet, rest, startup.orElseThrow(), solved.get().state());
        last = Optional.of(running);
        String digest = CacheKey.of(folder, overlay, Predict.METHOD + " typical parts " + accuracy.name());
        OscillationFigures figures =
                new OscillationFigures(build, overlay, quiet, running.state(), Tolerances.none(running.state()), rest);
        Prediction.Oscillation oscillation = figures.all();
        return Moment.of(
                running, solved.get().way(), digest, oscillation, reach(running, figures, oscillation, progress));
    }

    /** The carriers at an adjustment's stops depend on everything but its own position, and are asked for anew only when that moves. */
    private Optional<Verdict.Reach> reach(
            Running running, OscillationFigures figures, Prediction.Oscillation oscillation, Progress progress) {
        Overlay others = oscillation.adjustments().stream()
                .max(Comparator.comparingDouble(a -> Math.abs(a.hertzPerPercent())))
                .map(strongest -> running.overlay().set(strongest.part(), 0))
                .orElse(running.overlay());
        String digest = running.build().file().digest();
        if (stops.isEmpty() || !stops.get().holdsFor(digest, others))
            stops = Optional.of(new Stops(digest, others, figures.reach(progress)));
        return stops.get().reach();
    }

    /** What the strongest adjustment reaches, and of what. */
    private record Stops(String digest, Overlay others, Optional<Verdict.Reach> reach) {
        boolean holdsFor(String build, Overlay overlay) {
            return digest.equals(build) && others.equals(overlay);
        }
    }

    /** An adjustment and the position, 0 to 1, that brings the carrier where it is wanted. */
    public record Trimmed(String part, double position) {}

    /**
     * Turns the adjustment that moves the carrier most until it stands on a frequency, from the last answer.
     *
     * @param frequency wanted, Hz
     * @return empty when nothing is solved, nothing moves the carrier, or its stops come before that frequency
     */
    public Optional<Trimmed> trim(double frequency, Progress progress) {
        if (last.isEmpty()) return Optional.empty();
        Running running = last.get();
        String part = running.strongestTrimmer();
        if (part.isEmpty()) return Optional.empty();
        Retrim.Outcome outcome = new Retrim(accuracy, progress.watch())
                .toFrequency(
                        position -> Equations.of(running.turned(part, position)),
                        0,
                        1,
                        running.position(part),
                        running.state(),
                        frequency);
        return outcome instanceof Retrim.Trimmed there
                ? Optional.of(new Trimmed(part, there.parameter()))
                : Optional.empty();
    }

    private record Solved(SteadyState.Found state, Way way) {}

    private Optional<Solved> solve(
            Build build,
            Overlay overlay,
            Optional<Running> before,
            OperatingPoint.Found point,
            Startup startup,
            Progress progress) {
        SteadyOscillation steady = new SteadyOscillation(accuracy, progress.watch());
        if (before.isPresent()) {
            SteadyState near = kept(before.get().state()).move(point.equations());
            if (near instanceof SteadyState.Found found) return Optional.of(new Solved(found, Way.WARM));
            kept = Optional.empty();
            if (before.get().build().file().digest().equals(build.file().digest())) {
                Optional<SteadyState.Found> there = halve(
                        steady, before.get(), before.get().state(), before.get().overlay(), overlay, 1);
                if (there.isPresent()) return Optional.of(new Solved(there.get(), Way.STEPWISE));
            }
        }
        kept = Optional.empty();
        return steady.solve(point, startup) instanceof SteadyState.Found cold
                ? Optional.of(new Solved(cold, Way.COLD))
                : Optional.empty();
    }

    /** Meshes and factors of the last answer, laid anew after one that was found some other way. Not cancelled: it is done in milliseconds. */
    private KeptOscillation kept(SteadyState.Found from) {
        if (kept.isEmpty()) kept = Optional.of(new KeptOscillation(from, accuracy, Watch.NONE));
        return kept.get();
    }

    /** From one overlay to another by way of the middle between them. */
    private static Optional<SteadyState.Found> halve(
            SteadyOscillation steady, Running of, SteadyState.Found from, Overlay low, Overlay high, int halvings) {
        if (halvings > MOST_HALVINGS) return Optional.empty();
        Overlay middle = middle(of, low, high);
        return step(steady, of, from, low, middle, halvings)
                .flatMap(half -> step(steady, of, half, middle, high, halvings));
    }

    private static Optional<SteadyState.Found> step(
            SteadyOscillation steady, Running of, SteadyState.Found from, Overlay low, Overlay high, int halvings) {
        Circuit circuit;
        try {
            circuit = Quiet.of(of.build(), CircuitOf.build(of.build(), high).circuit());
        } catch (BadInputException between) {
            return Optional.empty(); // the way leads through settings without a solution
        }
        return steady.solveNear(Equations.of(circuit), from) instanceof SteadyState.Found found
                ? Optional.of(found)
                : halve(steady, of, from, low, high, halvings + 1);
    }

    private static Overlay middle(Running of, Overlay low, Overlay high) {
        Map<String, Double> adjustments = new LinkedHashMap<>();
        for (String name : of.build().adjustments()) {
            double set = of.build().part(name).orElseThrow().position().orElseThrow();
            double from = low.adjustments().getOrDefault(name, set),
                    to = high.adjustments().getOrDefault(name, set);
            adjustments.put(name, (from + to) / 2);
        }
        double warmth = (low.temperature().orElse(ROOM) + high.temperature().orElse(ROOM)) / 2;
        Optional<Overlay.SupplyState> supply = of.build()
                .supply()
                .map(CircuitOf::state)
                .map(own -> {
                    Overlay.SupplyState a = low.supply().orElse(own),
                            b = high.supply().orElse(own);
                    return new Overlay.SupplyState(
                            (a.voltage() + b.voltage()) / 2, (a.resistance() + b.resistance()) / 2);
                });
        return new Overlay(
                adjustments,
                OptionalDouble.of(warmth),
                supply,
                high.strays(),
                high.couplings(),
                high.calibration(),
                high.probes());
    }
}
