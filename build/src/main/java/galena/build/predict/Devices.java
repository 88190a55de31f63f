package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.wiring.Assembled;
import galena.build.wiring.Specimens;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.DrivenSteadyState;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The build with each device's weakest and strongest specimen in turn. Specimens are physical: no corner that no device has. */
final class Devices {
    private final Progress progress;
    private final List<Pair> pairs = new ArrayList<>();

    /**
     * @param what "Q1 (BF256B)"
     * @param weak the circuit with the weakest specimen
     * @param strong with the strongest
     */
    record Pair(String what, Circuit weak, Circuit strong) {}

    Devices(Build build, Assembled assembled, Progress progress) {
        this.progress = progress;
        Circuit circuit = assembled.circuit();
        for (PartEntry entry : build.parts().values()) {
            Specimens.of(build, entry, Predict.enginePart(circuit, entry.name()))
                    .ifPresent(pair -> pairs.add(new Pair(
                            entry.name() + " (" + entry.label() + ")",
                            circuit.with(pair.weak()),
                            circuit.with(pair.strong()))));
        }
    }

    List<Pair> pairs() {
        return List.copyOf(pairs);
    }

    /** The steady state with each specimen. */
    List<Sides> sides(SteadyState.Found typical) {
        return pairs.stream()
                .map(p -> new Sides(p.what, solve(p.weak, typical), solve(p.strong, typical)))
                .toList();
    }

    private Optional<SteadyState.Found> solve(Circuit circuit, SteadyState.Found typical) {
        progress.at(0.4, "device spread");
        Equations equations = Equations.of(circuit);
        if (typical.waveforms().drive() == 0) {
            SteadyState near = new SteadyOscillation(Accuracy.LIVE, progress.watch()).solveNear(equations, typical);
            if (near instanceof SteadyState.Found found) return Optional.of(found);
        }
        return cold(equations, typical);
    }

    private Optional<SteadyState.Found> cold(Equations equations, SteadyState.Found typical) {
        if (!(OperatingPointLadder.climb(equations) instanceof OperatingPoint.Found point)) return Optional.empty();
        SteadyState state;
        if (typical.waveforms().drive() != 0) {
            state = new DrivenSteadyState(Accuracy.LIVE, progress.watch())
                    .solve(point, typical.waveforms().frequency());
        } else {
            Optional<Startup> startup = Startup.readiest(point);
            if (startup.isEmpty()) return Optional.empty();
            state = new SteadyOscillation(Accuracy.LIVE, progress.watch()).solve(point, startup.get());
        }
        return state instanceof SteadyState.Found found ? Optional.of(found) : Optional.empty();
    }
}
