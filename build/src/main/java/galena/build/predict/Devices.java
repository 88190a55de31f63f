package galena.build.predict;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.wiring.Assembled;
import galena.build.wiring.Draw;
import galena.build.wiring.Specimens;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Part;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.DrivenSteadyState;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The build with other specimens of its devices, one at a time. Specimens are physical: no corner that no device has. For
 * intervals each number that a specimen is drawn by goes to where 95 % of specimens lie, the others in the middle; for worst
 * cases a device goes to its weakest and strongest.
 */
final class Devices {
    private static final double MIDDLE = 0.5;
    private static final double LOW_END = 0.025;
    private static final double HIGH_END = 0.975;

    private final Progress progress;
    private final List<Pair> ends = new ArrayList<>();
    private final List<Pair> corners = new ArrayList<>();

    /**
     * @param what "Q1 (BF256B)"
     * @param weak the circuit with one specimen
     * @param strong with the other
     */
    record Pair(String what, Circuit weak, Circuit strong) {}

    Devices(Build build, Assembled assembled, Progress progress) {
        this.progress = progress;
        Circuit circuit = assembled.circuit();
        for (PartEntry entry : build.parts().values()) {
            Part typical = Predict.enginePart(circuit, entry.name());
            String what = entry.name() + " (" + entry.label() + ")";
            if (isRead(assembled, entry.name())) continue;
            Specimens.of(build, entry, typical)
                    .ifPresent(pair ->
                            corners.add(new Pair(what, circuit.with(pair.weak()), circuit.with(pair.strong()))));
            Specimens.drawn(build, entry, typical).ifPresent(draw -> addEnds(circuit, what, draw));
        }
    }

    /** Whether a calibration has placed this very specimen: it is among the directions that its readings leave open. */
    private static boolean isRead(Assembled assembled, String part) {
        return assembled.knowledge().unknowns().stream()
                .anyMatch(u -> u.part().equals(part) && assembled.knowledge().places(u));
    }

    private void addEnds(Circuit circuit, String what, Draw draw) {
        for (int k = 0; k < draw.numbers(); k++) {
            double[] low = new double[draw.numbers()];
            Arrays.fill(low, MIDDLE);
            double[] high = low.clone();
            low[k] = LOW_END;
            high[k] = HIGH_END;
            ends.add(new Pair(
                    what + " by its " + draw.name(k), circuit.with(draw.at(low, 0)), circuit.with(draw.at(high, 0))));
        }
    }

    /** Each number of each device at both ends of its 95 %. */
    List<Pair> ends() {
        return List.copyOf(ends);
    }

    /** Each device at its weakest and its strongest. */
    List<Pair> corners() {
        return List.copyOf(corners);
    }

    /** The steady state at each end. */
    List<Sides> sides(SteadyState.Found typical) {
        return ends.stream()
                .map(p -> new Sides(p.what, solve(p.weak, typical), solve(p.strong, typical)))
                .toList();
    }

    /** The steady state of a circuit not far from the typical one. */
    Optional<SteadyState.Found> solve(Circuit circuit, SteadyState.Found typical) {
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
