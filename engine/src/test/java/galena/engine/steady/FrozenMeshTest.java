package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Load;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Derivatives by every kind of parameter against central differences of orbits solved on one and the same mesh until Newton's step is
 * rounding, Richardson's extrapolation over three steps. On one mesh the difference is that of the very equations that are
 * differentiated, so no error of a mesh can hide a wrong term.
 *
 * <p>A square law's second derivative steps at cutoff. Where a collocation point crosses such a corner between two steps,
 * differences of any order are off by the corner's own share, so the mesh is one that has no point on a corner, and JFET circuits take
 * steps so small that none crosses; what rounding then leaves is the wider bound.
 */
class FrozenMeshTest {
    /** Of the derivative. */
    private static final double SMOOTH = 1e-6;

    private static final double OFF = 0.08;
    private static final double SMOOTH_STEP = 2e-3;
    private static final double CORNERED_STEP = 4e-5;
    private static final double SETTLED = 3e-12;
    private static final int MOST_STEPS = 12;

    /** What 40 nH of lead moves is proportional to its length to this share. */
    private static final double LINEAR = 0.02;

    /** A circuit as a function of one parameter, near zero. */
    private record Parameter(String name, DoubleFunction<Circuit> circuit, double size) {
        @Override
        public String toString() {
            return name;
        }
    }

    private record Case(String name, Circuit circuit, String net, String trimmer, double step) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static final Case BIPOLAR = new Case(
            "bipolar Colpitts",
            Circuits.bipolarColpitts()
                    .plus(new Trimmer("Ct", "collector", "ground", 20e-12, 220e-12, 0.4, 1e-4))
                    .plus(new Capacitor("stray", "collector", "base", 2e-12))
                    .plus(new Coil("Lm", "x", "ground", 10e-6, 5, 0, 0))
                    .plus(new Resistor("Rx", "x", "ground", 470))
                    .plus(new Coupling("K", "Lt", "Lm", 0.05)),
            "collector",
            "Ct",
            SMOOTH_STEP);
    private static final Case GATE = new Case(
            "grounded-gate Colpitts",
            Circuits.groundedGateColpitts().plus(new Capacitor("stray", "drain", "source", 2e-12)),
            "drain",
            "Ct",
            CORNERED_STEP);
    private static final Case LEAK =
            new Case("gate-leak Hartley", Circuits.gateLeakHartley(), "top", "Ct", CORNERED_STEP);
    private static final Case SENDER = new Case("transmitter", Circuits.transmitter(), "out", "Ct", CORNERED_STEP);

    static Stream<Arguments> parameters() {
        Stream.Builder<Arguments> all = Stream.builder();
        for (Case c : new Case[] {BIPOLAR, GATE, LEAK, SENDER}) {
            Map<String, Parameter> named = new LinkedHashMap<>();
            for (Parameter p : of(c.circuit)) named.put(p.name, p);
            named.values().forEach(p -> all.add(Arguments.of(c, p)));
        }
        return all.build();
    }

    /** One of each kind that the circuit has. */
    private static Parameter[] of(Circuit circuit) {
        Stream.Builder<Parameter> all = Stream.builder();
        all.add(new Parameter("temperature", t -> circuit.atTemperature(circuit.temperature() + 100 * t), 100));
        circuit.parts().forEach(part -> {
            if (part instanceof Resistor r) all.add(new Parameter("a resistor", s -> circuit.with(r.scaled(1 + s)), 1));
            if (part instanceof Capacitor c) {
                String name = c.name().equals("stray") ? "a stray" : "a capacitor";
                all.add(new Parameter(name, s -> circuit.with(c.scaled(1 + s)), 1));
            }
            if (part instanceof Trimmer t) {
                all.add(new Parameter("a trimmer's position", s -> circuit.with(t.at(t.position() + s)), 1));
            }
            if (part instanceof Coil c) {
                all.add(new Parameter("an inductance", s -> circuit.with(c.scaled(1 + s, 1)), 1));
                all.add(new Parameter("a coil's loss", s -> circuit.with(c.scaled(1, 1 + s)), 1));
            }
            if (part instanceof Coupling k) {
                all.add(new Parameter(
                        "a coupling",
                        s -> circuit.with(new Coupling(k.name(), k.first(), k.second(), k.k() + 0.1 * s)),
                        0.1));
            }
            if (part instanceof Battery b) {
                all.add(new Parameter(
                        "the supply",
                        s -> circuit.with(new Battery("B", b.plus(), b.minus(), b.emf() * (1 + s), 2)),
                        1));
                all.add(new Parameter(
                        "its resistance",
                        s -> circuit.with(new Battery("B", b.plus(), b.minus(), b.emf(), 2 * (1 + s))),
                        1));
            }
            if (part instanceof Jfet q) jfet(circuit, q).forEach(all::add);
            if (part instanceof Bipolar q) bipolar(circuit, q).forEach(all::add);
        });
        return all.build().toArray(Parameter[]::new);
    }

    private static Stream<Parameter> jfet(Circuit circuit, Jfet q) {
        Jfet.Model m = q.model();
        Map<String, DoubleFunction<Jfet.Model>> models = Map.of(
                "saturation current",
                s -> new Jfet.Model(
                        m.saturationCurrent() * (1 + s),
                        m.pinchOff(),
                        m.channelLengthModulation(),
                        m.gateSource(),
                        m.gateDrain()),
                "pinch-off",
                s -> new Jfet.Model(
                        m.saturationCurrent(),
                        m.pinchOff() * (1 + s),
                        m.channelLengthModulation(),
                        m.gateSource(),
                        m.gateDrain()),
                "gate-drain capacitance",
                s -> new Jfet.Model(
                        m.saturationCurrent(),
                        m.pinchOff(),
                        m.channelLengthModulation(),
                        m.gateSource(),
                        depletion(m.gateDrain(), 1 + s)));
        return models.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(e -> new Parameter(
                        e.getKey(),
                        s -> circuit.with(new Jfet(
                                q.name(),
                                q.polarity(),
                                q.drain(),
                                q.gate(),
                                q.source(),
                                e.getValue().apply(s))),
                        1));
    }

    private static Junction depletion(Junction j, double times) {
        return new Junction(
                j.saturationCurrent(),
                j.emission(),
                j.zeroBiasCapacitance() * times,
                j.builtIn(),
                j.grading(),
                j.transitTime(),
                j.leakage(),
                j.forwardFraction(),
                j.energyGap(),
                j.temperatureExponent());
    }

    private static Stream<Parameter> bipolar(Circuit circuit, Bipolar q) {
        return Stream.of("current gain", "collector capacitance", "transit time")
                .map(name -> new Parameter(
                        name,
                        s -> circuit.with(new Bipolar(
                                q.name(),
                                q.polarity(),
                                q.collector(),
                                q.base(),
                                q.emitter(),
                                model(
                                        q.model(),
                                        name.equals("current gain") ? 1 + s : 1,
                                        name.equals("collector capacitance") ? 1 + s : 1,
                                        name.equals("transit time") ? 1 + s : 1))),
                        1));
    }

    private static Bipolar.Model model(Bipolar.Model m, double beta, double collector, double transit) {
        return new Bipolar.Model(
                m.saturationCurrent(),
                m.forwardBeta() * beta,
                m.reverseBeta(),
                m.earlyVoltage(),
                m.forwardTransitTime() * transit,
                m.reverseTransitTime(),
                m.emitterCapacitance(),
                m.emitterBuiltIn(),
                m.emitterGrading(),
                m.collectorCapacitance() * collector,
                m.collectorBuiltIn(),
                m.collectorGrading(),
                m.baseResistance());
    }

    private static SteadyState.Found settle(Circuit circuit) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        return offCorners((SteadyState.Found) new SteadyOscillation(Accuracy.CERTIFIED)
                .solve(point, Startup.readiest(point).orElseThrow()));
    }

    /** Solved on a mesh whose points are moved off the bends of the devices' laws, on which they are put. */
    private static SteadyState.Found offCorners(SteadyState.Found found) {
        double[] mesh = found.coarse().mesh.clone();
        for (int k = 1; k < mesh.length - 1; k++) mesh[k] += OFF * (mesh[k + 1] - mesh[k]);
        Orbit orbit = found.coarse().onMesh(mesh);
        OrbitSystem system = new OrbitSystem(found.waveforms().equations(), found.site());
        OrbitNewton newton = new OrbitNewton(system, OrbitNewton.Manner.to(SETTLED));
        assertThat(newton.improve(orbit, Closing.Free.FREQUENCY, 0, MOST_STEPS)).isTrue();
        return new SteadyState.Found(
                found.accuracy(),
                found.waveforms(),
                found.error(),
                found.site(),
                found.iterations(),
                found.lastStep(),
                new SteadyState.Inner(orbit));
    }

    /** Newton on a mesh that stays, until the step is rounding. */
    private static Waveforms frozen(SteadyState.Found found, Equations equations) {
        OrbitSystem system = new OrbitSystem(equations, found.site());
        Orbit orbit = found.coarse().copy();
        OrbitNewton newton = new OrbitNewton(system, OrbitNewton.Manner.to(SETTLED));
        assertThat(newton.improve(orbit, Closing.Free.FREQUENCY, 0, MOST_STEPS)).isTrue();
        assertThat(newton.lastStep()).isLessThan(SETTLED);
        return new Waveforms(equations, orbit, 0);
    }

    /** The same with a trimmer among the unknowns and the frequency imposed. */
    private static Waveforms retrimmed(SteadyState.Found found, Circuit circuit, String trimmer) {
        Trimmer part = (Trimmer) circuit.part(trimmer).orElseThrow();
        Orbit orbit = found.coarse().copy();
        double position = part.position(), d = 1e-4;
        double[] change = new double[orbit.x.length], extra = new double[Closing.MOST_FREE];
        OrbitSystem system = new OrbitSystem(Equations.of(circuit), found.site());
        for (int k = 0; k < MOST_STEPS; k++) {
            system.setEquations(Equations.of(circuit.with(part.at(position))));
            Change explicit = ParameterChange.between(
                    orbit,
                    Equations.of(circuit.with(part.at(position - d))),
                    Equations.of(circuit.with(part.at(position + d))),
                    d);
            system.setParameter(
                    explicit, Condition.figure(OrbitFigure.frequency(), found.coarse().frequency - orbit.frequency));
            system.newtonStep(orbit, Closing.Free.FREQUENCY_AND_PARAMETER, 0, change, extra);
            for (int p = 0; p < change.length; p++) orbit.x[p] += change[p];
            orbit.frequency += extra[0];
            position += extra[1];
        }
        assertThat(Math.abs(extra[1])).isLessThan(1e-11);
        return new Waveforms(system.equations(), orbit, 0);
    }

    /** Richardson's extrapolation of central differences with steps h, h/2 and h/4. */
    private static double slope(DoubleFunction<Double> figure, double h) {
        double[] d = new double[3];
        for (int k = 0; k < d.length; k++) {
            double step = h / (1 << k);
            d[k] = (figure.apply(step) - figure.apply(-step)) / (2 * step);
        }
        double first = (4 * d[1] - d[0]) / 3, second = (4 * d[2] - d[1]) / 3;
        return (16 * second - first) / 15;
    }

    /** A mean is as exact as the swing about it. */
    private static double scale(String figure, Waveforms here, int unknown) {
        return figure.equals("mean") ? here.amplitude(unknown, 0, 1) : 0;
    }

    /** What settled orbits leave of a figure in a difference over the shortest step. */
    private static double rounding(double figure, double step) {
        return SETTLED * Math.abs(figure) / (step / 4);
    }

    @ParameterizedTest
    @MethodSource("parameters")
    void derivatives_at_fixed_trim_are_differences_on_the_same_mesh(Case c, Parameter p) {
        SteadyState.Found found = settle(c.circuit);
        int unknown = found.waveforms().equations().net(c.net);
        Map<String, ToDoubleFunction<Waveforms>> figures = new LinkedHashMap<>();
        figures.put("frequency", Waveforms::frequency);
        for (int h = 1; h <= 3; h++) {
            int harmonic = h;
            figures.put("harmonic " + h, w -> w.amplitude(unknown, 0, harmonic));
        }
        figures.put("mean", w -> w.mean(unknown));
        double delta = 1e-4;
        Equations below = Equations.of(p.circuit.apply(-delta)), above = Equations.of(p.circuit.apply(delta));
        Waveforms here = frozen(found, found.waveforms().equations());
        var direct = new OrbitDerivatives(found).between(below, above, delta);
        OrbitAdjoint adjoint = new OrbitAdjoint(found);
        figures.forEach((name, figure) -> {
            double expected = slope(s -> figure.applyAsDouble(frozen(found, Equations.of(p.circuit.apply(s)))), c.step);
            double forward, backward;
            if (name.equals("frequency")) {
                forward = direct.frequency();
                backward = adjoint.frequency().between(below, above, delta);
            } else if (name.equals("mean")) {
                forward = direct.mean(unknown);
                backward = adjoint.mean(unknown).between(below, above, delta);
            } else {
                int h = name.charAt(name.length() - 1) - '0';
                forward = direct.amplitude(unknown, 0, h);
                backward = adjoint.amplitude(unknown, 0, h).between(below, above, delta);
            }
            double bound = SMOOTH * Math.abs(expected)
                    + rounding(Math.max(Math.abs(figure.applyAsDouble(here)), scale(name, here, unknown)), c.step);
            assertThat(forward).as("%s, direct", name).isCloseTo(expected, within(bound));
            assertThat(backward).as("%s, adjoint", name).isCloseTo(expected, within(bound));
        });
    }

    /** With the frequency imposed: dA/dp = A_p − A_t f_p / f_t, which is what guard's re-trimmed columns say. */
    @ParameterizedTest
    @MethodSource("parameters")
    void derivatives_re_trimmed_are_differences_of_bordered_solves_on_the_same_mesh(Case c, Parameter p) {
        if (p.name.equals("a trimmer's position")) return; // re-trimmed, it is where it was
        SteadyState.Found found = settle(c.circuit);
        int unknown = found.waveforms().equations().net(c.net);
        Trimmer trimmer = (Trimmer) c.circuit.part(c.trimmer).orElseThrow();
        double delta = 1e-4;
        Equations below = Equations.of(p.circuit.apply(-delta)), above = Equations.of(p.circuit.apply(delta));
        Equations less = Equations.of(c.circuit.with(trimmer.at(trimmer.position() - delta)));
        Equations more = Equations.of(c.circuit.with(trimmer.at(trimmer.position() + delta)));
        OrbitAdjoint adjoint = new OrbitAdjoint(found);
        OrbitAdjoint.Gradient frequency = adjoint.frequency();
        double turn = -frequency.between(below, above, delta) / frequency.between(less, more, delta);
        for (int h = 1; h <= 2; h++) {
            int harmonic = h;
            OrbitAdjoint.Gradient amplitude = adjoint.amplitude(unknown, 0, h);
            double said = amplitude.between(below, above, delta) + turn * amplitude.between(less, more, delta);
            double expected =
                    slope(s -> retrimmed(found, p.circuit.apply(s), c.trimmer).amplitude(unknown, 0, harmonic), c.step);
            double size = found.waveforms().amplitude(unknown, 0, h);
            assertThat(said)
                    .as("harmonic %d", h)
                    .isCloseTo(expected, within(SMOOTH * Math.abs(expected) + rounding(size, c.step)));
        }
    }

    static Stream<Case> cases() {
        return Stream.of(BIPOLAR, GATE, LEAK, SENDER);
    }

    /** What needs no part to be there: a picofarad, a conductance, a mutual inductance. */
    @ParameterizedTest
    @MethodSource("cases")
    void derivatives_by_what_is_not_there_are_those_of_a_part_put_there(Case c) {
        String other = c.circuit.nets().get(0).equals(c.net)
                ? c.circuit.nets().get(1)
                : c.circuit.nets().get(0);
        double farads = 1e-12, ohms = 1e6;
        Circuit there = c.circuit.plus(new Load("probe", c.net, other, ohms, farads));
        SteadyState.Found found = settle(there);
        Equations equations = found.waveforms().equations();
        int a = equations.net(c.net), b = equations.net(other);
        OrbitAdjoint.Gradient frequency = new OrbitAdjoint(found).frequency();
        double byFarads = slope(
                s -> frozen(found, Equations.of(there.with(new Load("probe", c.net, other, ohms, farads * (1 + s)))))
                        .frequency(),
                100 * c.step);
        double bySiemens = slope(
                s -> frozen(found, Equations.of(there.with(new Load("probe", c.net, other, ohms / (1 + s), farads))))
                        .frequency(),
                100 * c.step);
        double rounding = rounding(found.waveforms().frequency(), 100 * c.step);
        assertThat(farads * frequency.byCapacitance(a, b))
                .isCloseTo(byFarads, within(SMOOTH * Math.abs(byFarads) + rounding));
        assertThat(frequency.byConductance(a, b) / ohms)
                .isCloseTo(bySiemens, within(SMOOTH * Math.abs(bySiemens) + rounding));
    }

    /** A mutual inductance between windings already coupled, either sign, and ten nanohenries in a coil's lead. */
    @ParameterizedTest
    @MethodSource("cases")
    void derivatives_by_flux_are_differences_on_the_same_mesh(Case c) {
        SteadyState.Found found = settle(c.circuit);
        Equations equations = found.waveforms().equations();
        OrbitAdjoint.Gradient frequency = new OrbitAdjoint(found).frequency();
        double rounding = rounding(found.waveforms().frequency(), c.step);
        for (var part : c.circuit.parts()) {
            if (part instanceof Coupling k) {
                Coil first = (Coil) c.circuit.part(k.first()).orElseThrow();
                Coil second = (Coil) c.circuit.part(k.second()).orElseThrow();
                double mutual = Math.sqrt(first.inductance() * second.inductance());
                double expected = slope(
                        s -> frozen(
                                        found,
                                        Equations.of(c.circuit.with(
                                                new Coupling(k.name(), k.first(), k.second(), k.k() + 0.1 * s))))
                                .frequency(),
                        c.step);
                double said = 0.1
                        * mutual
                        * frequency.byInductance(
                                equations.current(k.first()).orElseThrow(),
                                equations.current(k.second()).orElseThrow());
                assertThat(said).isCloseTo(expected, within(SMOOTH * Math.abs(expected) + rounding));
            }
            // uncoupled: else a change of one inductance moves the mutual one along with it
            boolean coupled = c.circuit.parts().stream()
                    .anyMatch(p -> p instanceof Coupling k
                            && (k.first().equals(part.name()) || k.second().equals(part.name())));
            if (part instanceof Coil coil && !coupled && coil.selfCapacitance() == 0) {
                int current = equations.current(coil.name()).orElseThrow();
                double expected = slope(
                        s -> frozen(found, Equations.of(c.circuit.with(coil.scaled(1 + s, 1))))
                                .frequency(),
                        c.step);
                assertThat(coil.inductance() * frequency.byInductance(current, current))
                        .isCloseTo(expected, within(SMOOTH * Math.abs(expected) + rounding));
            }
        }
    }

    /**
     * Leads cannot be on the frozen mesh: here they are really put in, long enough to be felt and short enough to be linear. The
     * transistor's own are felt through its picofarads alone.
     */
    @ParameterizedTest
    @CsvSource({"Cs, source", "Cs, ground", "Rs, source", "Q1, source", "Q1, gate", "Lt, rail"})
    void a_lead_moves_the_frequency_as_a_coil_put_there_does(String name, String pin) {
        Circuit circuit = Circuits.groundedGateColpitts();
        Jfet q = (Jfet) circuit.part("Q1").orElseThrow();
        Capacitor c = (Capacitor) circuit.part("Cs").orElseThrow();
        Resistor r = (Resistor) circuit.part("Rs").orElseThrow();
        Coil l = (Coil) circuit.part("Lt").orElseThrow();
        String net = pin.equals("gate") ? "ground" : pin;
        Circuit parted =
                switch (name + " " + pin) {
                    case "Cs source" -> circuit.with(new Capacitor("Cs", "far", "ground", c.capacitance()));
                    case "Cs ground" -> circuit.with(new Capacitor("Cs", "source", "far", c.capacitance()));
                    case "Rs source" -> circuit.with(new Resistor("Rs", "far", "ground", r.resistance()));
                    case "Q1 source" ->
                        circuit.with(new Jfet("Q1", q.polarity(), q.drain(), q.gate(), "far", q.model()));
                    case "Q1 gate" ->
                        circuit.with(new Jfet("Q1", q.polarity(), q.drain(), "far", q.source(), q.model()));
                    default ->
                        circuit.with(new Coil(
                                "Lt", "far", l.to(), l.inductance(), l.seriesResistance(), l.selfCapacitance(), 0));
                };
        double henries = name.equals("Rs") ? 0.25e-6 : 40e-9;
        DoubleFunction<Double> frequency = s -> settle(parted.plus(new Coil("lead", net, "far", s, 0, 0, 0)))
                .waveforms()
                .frequency();
        SteadyState.Found found = settle(circuit);
        double there = frequency.apply(henries) - found.waveforms().frequency();
        OrbitAdjoint adjoint = new OrbitAdjoint(found);
        double said =
                henries * adjoint.frequency().by(adjoint.lead(circuit.part(name).orElseThrow(), net));
        double meshes = 3 * Accuracy.CERTIFIED.frequency() * found.waveforms().frequency();
        assertThat(said).isCloseTo(there, within(LINEAR * Math.abs(there) + meshes));
    }
}
