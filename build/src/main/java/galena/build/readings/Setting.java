package galena.build.readings;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Coupling;
import galena.engine.part.Part;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.Followed;
import galena.engine.steady.Follower;
import galena.engine.steady.OrbitAdjoint;
import galena.engine.steady.OrbitAdjoint.Gradient;
import galena.engine.steady.OrbitAdjoint.Parameter;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The circuit under one situation, solved again and again as the numbers change. */
final class Setting {
    private static final double STEP = 1e-3;

    /** Of a frequency, as a natural logarithm: a growing mode drifts by less until it is a carrier. */
    private static final double NEAR = 0.2;

    private final Situation situation;
    private final Circuit base;
    private final Steps steps;
    /** The number that is the temperature; −1 where it was noted. */
    private final int temperature;

    private final int numbers;
    /**
     * Hz; where it is said, what does not start by itself near this frequency counts as silent, which spares a long search. Zero for
     * nothing said.
     */
    private final double expected;

    private final Watch watch;
    private final Set<String> coupled = new HashSet<>();

    /** Solved lazily: of the coarser mesh, and what that mesh is wrong by in ln f. */
    private Optional<State> start = Optional.empty();

    private boolean tried;
    private Optional<Setting> beside = Optional.empty();

    /** A period, with what its mesh is wrong by in ln f and the arrays to follow it on. */
    record State(Followed period, double mesh, Follower follower) {}

    Setting(
            Situation situation,
            Circuit base,
            Steps steps,
            int temperature,
            int numbers,
            double expected,
            Watch watch) {
        this.situation = situation;
        this.base = base;
        this.steps = steps;
        this.temperature = temperature;
        this.numbers = numbers;
        this.expected = expected;
        this.watch = watch;
        for (Part part : base.parts()) {
            if (part instanceof Coupling k) coupled.addAll(List.of(k.name(), k.first(), k.second()));
        }
    }

    Situation situation() {
        return situation;
    }

    Circuit base() {
        return base;
    }

    /** The circuit of these numbers. */
    Circuit circuit(double[] z) {
        List<Part> parts = new ArrayList<>();
        for (Part part : base.parts()) parts.add(steps.on(part, z));
        return Circuit.of(parts).atTemperature(celsius(z));
    }

    private double celsius(double[] z) {
        return base.temperature() + (temperature < 0 ? 0 : Circumstance.ROOM * z[temperature]);
    }

    /** Lets the first solution start from that of another setting, whose circuit differs by little. */
    void startNear(Setting other) {
        beside = Optional.of(other);
    }

    /** The state at these numbers, from one nearby if there is one. */
    Optional<State> at(double[] z, Optional<State> near) {
        Equations equations = Equations.of(circuit(z));
        Optional<State> from = near.or(this::start);
        if (from.isPresent()) {
            Optional<State> followed = follow(equations, from.get());
            if (followed.isPresent() || near.isPresent())
                return followed; // a shorter way is cheaper than another start
        }
        return cold(equations);
    }

    private static Optional<State> follow(Equations equations, State from) {
        return from.follower.follow(equations, from.period).map(p -> new State(p, from.mesh, from.follower));
    }

    /** Exact to the live accuracy, from cold: for readings that are held against others. */
    Optional<State> exact(double[] z) {
        return cold(Equations.of(circuit(z)));
    }

    private synchronized Optional<State> start() {
        if (!tried) {
            tried = true;
            Equations equations = Equations.of(circuit(new double[numbers]));
            start = beside.flatMap(Setting::start).flatMap(there -> settled(equations, there));
            if (start.isEmpty()) start = cold(equations);
        }
        return start;
    }

    private Optional<State> settled(Equations equations, State there) {
        try {
            Followed laid = there.period.carriedTo(equations);
            Follower follower = new Follower(equations, laid.site(), Accuracy.LIVE, watch);
            return follower.follow(equations, laid)
                    .flatMap(p -> follower.settle(p) instanceof SteadyState.Found found
                            ? Optional.of(state(found, follower))
                            : Optional.empty());
        } catch (IllegalArgumentException otherStructure) {
            return Optional.empty(); // the circuit lacks the coil at which the phase is pinned
        }
    }

    private Optional<State> cold(Equations equations) {
        if (!(OperatingPointLadder.climb(equations) instanceof OperatingPoint.Found point)) return Optional.empty();
        Optional<Startup> startup = Startup.readiest(point);
        if (startup.isEmpty() || (expected > 0 && !isExpected(startup.get()))) return Optional.empty();
        if (!(new SteadyOscillation(Accuracy.LIVE, watch).solve(point, startup.get())
                instanceof SteadyState.Found found)) return Optional.empty();
        return Optional.of(state(found, new Follower(equations, found.site(), Accuracy.LIVE, watch)));
    }

    private boolean isExpected(Startup startup) {
        return startup.grows() && Math.abs(Math.log(startup.holding().frequency() / expected)) < NEAR;
    }

    private static State state(SteadyState.Found found, Follower follower) {
        Followed period = Followed.of(found);
        double mesh =
                Math.log(found.waveforms().frequency() / period.waveforms().frequency());
        return new State(period, mesh, follower);
    }

    /** Derivatives of readouts by every number, a row a readout. */
    double[][] slopes(State state, double[] z, List<Readout> readouts) {
        OrbitAdjoint adjoint = new OrbitAdjoint(state.period);
        List<Gradient[]> gradients =
                readouts.stream().map(r -> r.gradients(adjoint)).toList();
        double[][] rows = new double[readouts.size()][numbers];
        for (Part part : base.parts()) {
            for (int number : steps.numbersOf(part.name())) {
                watch.check();
                fill(rows, number, readouts, gradients, state, parameter(adjoint, part, z, number));
            }
        }
        if (temperature >= 0) {
            fill(rows, temperature, readouts, gradients, state, whole(adjoint, z, temperature));
        }
        return rows;
    }

    private static void fill(
            double[][] rows,
            int number,
            List<Readout> readouts,
            List<Gradient[]> gradients,
            State state,
            Parameter parameter) {
        for (int r = 0; r < rows.length; r++) {
            rows[r][number] = readouts.get(r).slope(state.period.waveforms(), gradients.get(r), parameter);
        }
    }

    private Parameter parameter(OrbitAdjoint adjoint, Part part, double[] z, int number) {
        if (coupled.contains(part.name())) return whole(adjoint, z, number);
        Part below = steps.on(part, moved(z, number, -STEP)), above = steps.on(part, moved(z, number, STEP));
        if (below.equals(above)) return adjoint.nothing();
        return adjoint.between(below, above, STEP);
    }

    private Parameter whole(OrbitAdjoint adjoint, double[] z, int number) {
        return adjoint.between(
                Equations.of(circuit(moved(z, number, -STEP))), Equations.of(circuit(moved(z, number, STEP))), STEP);
    }

    private static double[] moved(double[] z, int number, double by) {
        double[] moved = Arrays.copyOf(z, z.length);
        moved[number] += by;
        return moved;
    }

    /** Whether a number does anything here. */
    boolean has(int number) {
        return base.parts().stream()
                .anyMatch(part -> steps.numbersOf(part.name()).contains(number));
    }

    /** One part of the circuit as these numbers have it. */
    Optional<Part> part(String name, double[] z) {
        return base.part(name).map(part -> steps.on(part, z));
    }
}
