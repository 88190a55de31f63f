package galena.build.readings;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Part;
import galena.engine.startup.Linearised;
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
import galena.engine.steady.Waveforms;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The circuit under one situation, solved again and again as the numbers change. */
final class Setting {
    private static final double STEP = 1e-3;

    private final Situation situation;
    private final Circuit base;
    private final Steps steps;
    /** The number that is the temperature; −1 where it was noted. */
    private final int temperature;

    private final int numbers;
    private final Watch watch;
    private final Set<String> coupled = new HashSet<>();

    /** Solved lazily: of the coarser mesh, and what that mesh is wrong by. */
    private Optional<State> start = Optional.empty();

    private boolean tried;
    private Optional<Setting> beside = Optional.empty();

    /** How a circuit was found: oscillating, or at rest because nothing starts it. */
    sealed interface State {
        Equations equations();
    }

    /** A period, with what its mesh was wrong by where it was laid and the arrays to follow it on. */
    record Running(Followed period, Mesh mesh, Follower follower) implements State {
        @Override
        public Equations equations() {
            return period.waveforms().equations();
        }
    }

    /** One period on two meshes: what a reading differs by between them is added wherever the coarser is followed to. */
    record Mesh(Waveforms coarse, Waveforms fine) {}

    /** An operating point from which nothing grows. */
    record AtRest(OperatingPoint.Found point) implements State {
        @Override
        public Equations equations() {
            return point.equations();
        }
    }

    Setting(Situation situation, Circuit base, Steps steps, int temperature, int numbers, Watch watch) {
        this.situation = situation;
        this.base = base;
        this.steps = steps;
        this.temperature = temperature;
        this.numbers = numbers;
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
        if (from instanceof AtRest rest) {
            return OperatingPointLadder.near(equations, rest.point.x()) instanceof OperatingPoint.Found point
                            && !grows(point)
                    ? Optional.of(new AtRest(point))
                    : Optional.empty();
        }
        Running running = (Running) from;
        return running.follower
                .follow(equations, running.period)
                .map(p -> new Running(p, running.mesh, running.follower));
    }

    private static boolean grows(OperatingPoint.Found point) {
        Linearised linearised = Linearised.at(point.equations(), point.x());
        return linearised.runaways().length > 0 || linearised.modes().stream().anyMatch(mode -> mode.growth() > 0);
    }

    /** The state of another setting of the same structure at these numbers, followed here. */
    Optional<State> beside(State there, double[] z) {
        return follow(Equations.of(circuit(z)), there);
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
        if (!(there instanceof Running running)) return Optional.empty();
        try {
            Followed laid = running.period.carriedTo(equations);
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
        if (startup.isEmpty() || !startup.get().grows()) return Optional.of(new AtRest(point));
        if (!(new SteadyOscillation(Accuracy.LIVE, watch).solve(point, startup.get())
                instanceof SteadyState.Found found)) return Optional.empty();
        return Optional.of(state(found, new Follower(equations, found.site(), Accuracy.LIVE, watch)));
    }

    private static Running state(SteadyState.Found found, Follower follower) {
        Followed period = Followed.of(found);
        return new Running(period, new Mesh(period.waveforms(), found.waveforms()), follower);
    }

    /** Derivatives of readouts by every number, a row a readout. */
    double[][] slopes(State state, double[] z, List<Readout> readouts) {
        return state instanceof Running running ? slopes(running, z, readouts) : slopes((AtRest) state, z, readouts);
    }

    /** An operating point costs so little that two beside it are the shortest way to a derivative. */
    private double[][] slopes(AtRest rest, double[] z, List<Readout> readouts) {
        double[][] rows = new double[readouts.size()][numbers];
        Set<Integer> mine = new TreeSet<>();
        for (Part part : base.parts()) mine.addAll(steps.numbersOf(part.name()));
        if (temperature >= 0) mine.add(temperature);
        for (int number : mine) {
            watch.check();
            if (!(near(rest, moved(z, number, -STEP)) instanceof OperatingPoint.Found below)
                    || !(near(rest, moved(z, number, STEP)) instanceof OperatingPoint.Found above))
                throw new ArithmeticException("no operating point was found beside one that was");
            for (int r = 0; r < rows.length; r++)
                rows[r][number] =
                        (readouts.get(r).value(above) - readouts.get(r).value(below)) / (2 * STEP);
        }
        return rows;
    }

    private OperatingPoint near(AtRest rest, double[] z) {
        return OperatingPointLadder.near(Equations.of(circuit(z)), rest.point.x());
    }

    private double[][] slopes(Running state, double[] z, List<Readout> readouts) {
        OrbitAdjoint adjoint = new OrbitAdjoint(state.period);
        List<Gradient[]> gradients =
                readouts.stream().map(r -> r.gradients(adjoint)).toList();
        double[][] rows = new double[readouts.size()][numbers];
        for (Part part : base.parts()) {
            for (int number : steps.numbersOf(part.name())) {
                watch.check();
                fill(rows, number, readouts, gradients, state, parameter(adjoint, part, z, number));
                if (coupled.contains(part.name()))
                    addMutual(rows, number, readouts, gradients, state, adjoint, z, part);
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
            Running state,
            Parameter parameter) {
        for (int r = 0; r < rows.length; r++) {
            rows[r][number] = readouts.get(r).slope(state.period.waveforms(), gradients.get(r), parameter);
        }
    }

    private Parameter parameter(OrbitAdjoint adjoint, Part part, double[] z, int number) {
        if (part instanceof Coupling) return adjoint.nothing();
        Part below = steps.on(part, moved(z, number, -STEP)), above = steps.on(part, moved(z, number, STEP));
        if (below.equals(above)) return adjoint.nothing();
        return adjoint.between(below, above, STEP);
    }

    /** What a number does by way of mutual inductance, which belongs to no part. */
    private void addMutual(
            double[][] rows,
            int number,
            List<Readout> readouts,
            List<Gradient[]> gradients,
            Running state,
            OrbitAdjoint adjoint,
            double[] z,
            Part of) {
        for (Part part : base.parts()) {
            if (!(part instanceof Coupling k)
                    || !List.of(k.name(), k.first(), k.second()).contains(of.name())) continue;
            double slope = (mutual(k, moved(z, number, STEP)) - mutual(k, moved(z, number, -STEP))) / (2 * STEP);
            if (slope == 0) continue;
            Equations equations = adjoint.equations();
            Parameter henries = adjoint.inductance(
                    equations.current(k.first()).orElseThrow(),
                    equations.current(k.second()).orElseThrow());
            for (int r = 0; r < rows.length; r++)
                rows[r][number] += slope * readouts.get(r).slope(state.period.waveforms(), gradients.get(r), henries);
        }
    }

    /** H. */
    private double mutual(Coupling k, double[] z) {
        return ((Coupling) steps.on(k, z)).k() * Math.sqrt(inductance(k.first(), z) * inductance(k.second(), z));
    }

    private double inductance(String coil, double[] z) {
        return ((Coil) part(coil, z).orElseThrow()).inductance();
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
