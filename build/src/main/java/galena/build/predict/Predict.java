package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.folder.CacheKey;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.source.BadInputException;
import galena.build.source.Problem;
import galena.build.wiring.Assembled;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Part;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.DrivenSteadyState;
import galena.engine.steady.Floquet;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.timerun.AmplitudeRun;
import galena.engine.timerun.TimeRun;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Predicts a build under an overlay. The main method reads in the order in which a builder would ask. */
public final class Predict {
    private static final int WATCHED_CYCLES = 2000;

    /** Part of every digest: a change of method changes the answers' key. */
    public static final String METHOD = "predict 2";

    private final Build build;
    private final Overlay overlay;
    private final Accuracy accuracy;
    private final Progress progress;
    private final List<String> notes = new ArrayList<>();

    private Predict(Build build, Overlay overlay, Accuracy accuracy, Progress progress) {
        this.build = build;
        this.overlay = overlay;
        this.accuracy = accuracy;
        this.progress = progress;
    }

    /**
     * @param folder as opened
     * @param overlay laid over it
     * @param accuracy of the steady state
     * @param progress told how far it is; may cancel
     * @throws BadInputException when the circuit has no solution for a reason that stands in the file
     * @throws NoOperatingPoint when none was found
     * @throws IOException when the drawer can't be read for the digest
     */
    public static Prediction of(BuildFolder folder, Overlay overlay, Accuracy accuracy, Progress progress)
            throws BadInputException, NoOperatingPoint, IOException {
        String digest = CacheKey.of(folder, overlay, METHOD + " " + accuracy.name());
        return new Predict(folder.build(), overlay, accuracy, progress).predict(digest);
    }

    private Prediction predict(String digest) throws BadInputException, NoOperatingPoint {
        Assembled assembled = CircuitOf.build(build, overlay);
        for (Problem warning : assembled.warnings()) notes.add(warning.toString());
        overlay.calibration()
                .ifPresent(c -> notes.add("The calibration accepted on " + c.accepted()
                        + " is laid over the build: its values and what its readings left open are in every figure."));
        progress.at(0.05, "operating point");
        Assembled quiet = assembled.changed(circuit -> Quiet.of(build, circuit));
        Circuit silent = quiet.circuit();
        OperatingPoint.Found point = rest(Equations.of(silent));
        progress.at(0.1, "startup");
        Optional<Startup> startup = Startup.readiest(point);
        Devices devices = new Devices(build, quiet, progress);
        List<Variation> variations = Variations.of(build, quiet);

        progress.at(0.15, "steady state");
        boolean driven = isDriven(point, startup);
        Behaviour behaviour = driven
                ? new Behaviour(driven(point), "", List.of())
                : Behaviour.of(point, startup, free(point, startup), accuracy, progress.watch());
        SteadyState state = behaviour.state();
        notes.addAll(behaviour.notes());
        Prediction.Running running;
        Prediction.Modulation modulation = new Prediction.NoCurve("there is no steady oscillation to modulate");
        Optional<Verdict.Reach> reach = Optional.empty();
        Optional<Prediction.StartupFigures> startupFigures =
                startup.map(s -> StartFigures.of(point, s, variations, devices, state, behaviour.words()));
        if (state instanceof SteadyState.Found found) {
            progress.at(0.3, "tolerances");
            Tolerances tolerances = new Tolerances(found, variations, devices);
            OscillationFigures figures = new OscillationFigures(build, overlay, quiet, found, tolerances, point);
            Prediction.Oscillation oscillation = figures.all();
            running = oscillation;
            reach = startup.flatMap(s -> figures.reach(progress));
            if (found.floquet().stability() == Floquet.Stability.UNSTABLE) notes.add(wanders(found));
            progress.at(0.7, "modulation");
            modulation = modulation(found, startup, oscillation);
        } else {
            running = new Prediction.Silent(why((SteadyState.NotFound) state, startup));
        }
        progress.at(1, "done");
        return new Prediction(
                build.name(),
                digest,
                setting(build, overlay, accuracy, silent),
                new Prediction.Rest(point.rung().toString(), RestFigures.voltages(build, quiet, point, devices)),
                startupFigures,
                running,
                modulation,
                Verdict.of(build, startupFigures, running, modulation, reach),
                notes);
    }

    private OperatingPoint.Found rest(Equations equations) throws NoOperatingPoint {
        OperatingPoint point = OperatingPointLadder.climb(equations);
        if (point instanceof OperatingPoint.NotFound none) throw new NoOperatingPoint(none);
        return (OperatingPoint.Found) point;
    }

    /** A circuit with alternating sources and nothing that grows is driven; otherwise it runs free. */
    private static boolean isDriven(OperatingPoint.Found point, Optional<Startup> startup) {
        boolean grows = startup.filter(Startup::grows).isPresent();
        return point.equations().sourceFrequencies().length > 0 && !grows;
    }

    private SteadyState driven(OperatingPoint.Found point) {
        return new DrivenSteadyState(accuracy, progress.watch())
                .solve(point, point.equations().sourceFrequencies()[0]);
    }

    private SteadyState free(OperatingPoint.Found point, Optional<Startup> startup) {
        if (point.equations().sourceFrequencies().length > 0) {
            notes.add("the circuit oscillates by itself: its alternating sources are taken at rest");
        }
        if (startup.isEmpty()) return new SteadyState.NotFound(SteadyState.Reason.DECAYS, 0, 0);
        return new SteadyOscillation(accuracy, progress.watch()).solve(point, startup.get());
    }

    /** An unstable orbit is watched in time, so that the builder sees what it does instead. */
    private String wanders(SteadyState.Found found) {
        AmplitudeRun watched = AmplitudeRun.from(found, WATCHED_CYCLES, progress.watch());
        if (watched.end() != TimeRun.End.REACHED) {
            return "the steady carrier is not stable; what it does instead could not be followed in time";
        }
        return String.format(
                Locale.ROOT,
                "the steady carrier is not stable. Watched in time for %d cycles, its peaks end between %.0f %% and"
                        + " 100 %% of the largest",
                watched.peaks().size(),
                100 * watched.steadiness());
    }

    private static String why(SteadyState.NotFound none, Optional<Startup> startup) {
        if (startup.isEmpty()) return "nothing in it can oscillate: it has no mode that swings";
        if (startup.get().grows()) return "it starts, but no steady oscillation was found: " + none;
        return "no steady oscillation: " + none;
    }

    private Prediction.Modulation modulation(
            SteadyState.Found found, Optional<Startup> startup, Prediction.Oscillation oscillation) {
        Optional<PartEntry> audio = build.parts().values().stream()
                .filter(p -> p.kind().isProgramme())
                .findFirst();
        if (audio.isEmpty()) return new Prediction.NoCurve("the build has no audio source");
        if (startup.isEmpty()) return new Prediction.NoCurve("the circuit does not oscillate by itself");
        Optional<Prediction.Spectrum> output = Output.spectrum(build, oscillation.spectra());
        if (output.isEmpty()) return new Prediction.NoCurve("the build has no coil whose current could be modulated");
        double level = level(audio.get());
        if (!(level > 0)) return new Prediction.NoCurve("the audio source has no level");
        return StaticModulation.of(
                found,
                audio.get().name(),
                level,
                output.get().part(),
                output.get().quantity(),
                build.intent().modulation().map(q -> q.value()),
                progress);
    }

    private double level(PartEntry audio) {
        return audio.value()
                .map(q -> q.value())
                .or(() -> build.intent().programme().map(p -> p.level().value()))
                .orElse(0.0);
    }

    static Prediction.Setting setting(Build build, Overlay overlay, Accuracy accuracy, Circuit circuit) {
        Map<String, Double> adjustments = new LinkedHashMap<>();
        for (String name : build.adjustments()) {
            Double laidOver = overlay.adjustments().get(name);
            double position = laidOver != null
                    ? laidOver
                    : build.part(name).orElseThrow().position().orElse(PartEntry.MIDDLE);
            adjustments.put(name, position);
        }
        Optional<Double> voltage = overlay.supply()
                .map(Overlay.SupplyState::voltage)
                .or(() -> build.supply().map(s -> CircuitOf.state(s).voltage()));
        return new Prediction.Setting(circuit.temperature(), voltage, adjustments, accuracy.name());
    }

    static boolean isInner(String net) {
        return net.contains(".");
    }

    /** The engine's part of an entry. */
    static Part enginePart(Circuit circuit, String name) {
        return circuit.part(name).orElseThrow();
    }
}
