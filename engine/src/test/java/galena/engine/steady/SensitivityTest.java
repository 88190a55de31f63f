package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.Scaled;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.startup.Startup;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Derivatives of orbits against solving again, against each other, and against what scaling says they must be. */
class SensitivityTest {
    /** The orbits that are solved again are exact to 1e-7, and are a thousandth apart. */
    private static final double AGAIN = 1e-3;

    /** Corners of a square law move over the mesh, which differences of amplitudes feel. */
    private static final double AMPLITUDE_AGAIN = 2e-2;

    private static final double EXACT = 1e-7;

    private static SteadyState.Found settle(Circuit circuit) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        return (SteadyState.Found) new SteadyOscillation(Accuracy.CERTIFIED)
                .solve(point, Startup.readiest(point).orElseThrow());
    }

    /** A circuit as a function of one value's ratio to what it was. */
    private record Turned(String name, DoubleFunction<Circuit> circuit) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static Turned turned(String of, Circuit base, String part) {
        return new Turned(
                of + ", " + part, ratio -> base.with(times(base.part(part).orElseThrow(), ratio)));
    }

    private static Part times(Part part, double k) {
        if (part instanceof Resistor r) return new Resistor(r.name(), r.from(), r.to(), k * r.resistance());
        if (part instanceof Capacitor c) return new Capacitor(c.name(), c.from(), c.to(), k * c.capacitance());
        if (part instanceof Trimmer t) return t.at(k * t.position());
        if (part instanceof Coil c) {
            return new Coil(
                    c.name(), c.from(), c.to(), k * c.inductance(), c.seriesResistance(), c.selfCapacitance(), 0);
        }
        throw new AssertionError("no value to turn in " + part);
    }

    static Stream<Arguments> parameters() {
        Circuit gate = Circuits.groundedGateColpitts(),
                leak = Circuits.gateLeakHartley(),
                bipolar = Circuits.bipolarColpitts();
        return Stream.of(
                Arguments.of("drain", turned("grounded gate", gate, "Cf")),
                Arguments.of("drain", turned("grounded gate", gate, "Rs")),
                Arguments.of("drain", turned("grounded gate", gate, "Lt")),
                Arguments.of("drain", turned("grounded gate", gate, "Ct")),
                Arguments.of("top", turned("gate leak", leak, "La")),
                Arguments.of("top", turned("gate leak", leak, "Rg")),
                Arguments.of("top", turned("gate leak", leak, "Cg")),
                Arguments.of("collector", turned("bipolar", bipolar, "Re")),
                Arguments.of("collector", turned("bipolar", bipolar, "Rt")),
                Arguments.of("collector", turned("bipolar", bipolar, "Ce")));
    }

    @ParameterizedTest
    @MethodSource("parameters")
    void derivatives_are_the_differences_of_orbits_solved_again(String net, Turned turned) {
        double delta = 1e-3;
        SteadyState.Found found = settle(turned.circuit.apply(1));
        Waveforms above = settle(turned.circuit.apply(1 + delta)).waveforms(),
                below = settle(turned.circuit.apply(1 - delta)).waveforms();
        Equations lower = Equations.of(turned.circuit.apply(1 - delta)),
                upper = Equations.of(turned.circuit.apply(1 + delta));
        var derivative = new OrbitDerivatives(found).between(lower, upper, delta);
        int unknown = found.waveforms().equations().net(net);
        double f = found.waveforms().frequency(), v = found.waveforms().amplitude(unknown, 0, 1);
        double frequencyAgain = (above.frequency() - below.frequency()) / (2 * delta);
        double amplitudeAgain = (above.amplitude(unknown, 0, 1) - below.amplitude(unknown, 0, 1)) / (2 * delta);
        assertThat(derivative.frequency())
                .isCloseTo(
                        frequencyAgain, within(AGAIN * Math.abs(frequencyAgain) + 1e-4 * f * AGAIN + f * 1e-7 / delta));
        assertThat(derivative.amplitude(unknown, 0, 1))
                .isCloseTo(amplitudeAgain, within(AMPLITUDE_AGAIN * (Math.abs(amplitudeAgain) + 0.01 * v)));
    }

    @ParameterizedTest
    @MethodSource("parameters")
    void the_adjoint_says_what_the_direct_derivative_says(String net, Turned turned) {
        double delta = 1e-4;
        SteadyState.Found found = settle(turned.circuit.apply(1));
        Equations lower = Equations.of(turned.circuit.apply(1 - delta)),
                upper = Equations.of(turned.circuit.apply(1 + delta));
        var direct = new OrbitDerivatives(found).between(lower, upper, delta);
        OrbitAdjoint adjoint = new OrbitAdjoint(found);
        int unknown = found.waveforms().equations().net(net);
        double f = found.waveforms().frequency();
        assertThat(adjoint.frequency().between(lower, upper, delta))
                .isCloseTo(direct.frequency(), within(EXACT * (Math.abs(direct.frequency()) + 1e-3 * f)));
        for (int h = 1; h <= 5; h++) {
            double expected = direct.amplitude(unknown, 0, h),
                    size = found.waveforms().amplitude(unknown, 0, h);
            assertThat(adjoint.amplitude(unknown, 0, h).between(lower, upper, delta))
                    .as("harmonic %d", h)
                    .isCloseTo(expected, within(EXACT * (Math.abs(expected) + size)));
        }
        assertThat(adjoint.mean(unknown).between(lower, upper, delta))
                .isCloseTo(direct.mean(unknown), within(EXACT * (Math.abs(direct.mean(unknown)) + 1)));
    }

    static Stream<Circuit> oscillators() {
        return Stream.of(
                Circuits.groundedGateColpitts(),
                Circuits.gateLeakHartley(),
                Circuits.bipolarColpitts(),
                Circuits.transmitter());
    }

    /** With all inductances and charges times k the frequency is f/k: its derivative at k = 1 is −f, that of amplitudes zero. */
    @ParameterizedTest
    @MethodSource("oscillators")
    void the_derivative_by_everything_that_stores_is_the_frequency_itself(Circuit circuit) {
        double delta = 1e-5;
        SteadyState.Found found = settle(circuit);
        Equations lower = Equations.of(Scaled.slower(circuit, 1 - delta)),
                upper = Equations.of(Scaled.slower(circuit, 1 + delta));
        OrbitAdjoint adjoint = new OrbitAdjoint(found);
        double f = found.waveforms().frequency();
        assertThat(adjoint.frequency().between(lower, upper, delta)).isCloseTo(-f, within(1e-6 * f));
        for (int unknown = 1; unknown <= circuit.nets().size(); unknown++) {
            double size = found.waveforms().amplitude(unknown, 0, 1);
            if (size < 1e-3) continue;
            assertThat(adjoint.amplitude(unknown, 0, 1).between(lower, upper, delta))
                    .isCloseTo(0, within(1e-5 * size));
        }
    }

    /** A stray that is not there yet: the derivative by it is that of a part of that value. */
    @Test
    void a_stray_across_any_two_nets_has_the_derivative_of_a_capacitor_there() {
        Circuit with = Circuits.groundedGateColpitts().plus(new Capacitor("stray", "drain", "rail", 2e-12));
        SteadyState.Found found = settle(with);
        Equations equations = found.waveforms().equations();
        OrbitAdjoint.Gradient gradient = new OrbitAdjoint(found).frequency();
        double delta = 1e-14;
        Equations lower = Equations.of(with.with(new Capacitor("stray", "drain", "rail", 2e-12 - delta)));
        Equations upper = Equations.of(with.with(new Capacitor("stray", "drain", "rail", 2e-12 + delta)));
        double expected = gradient.between(lower, upper, delta);
        double found1 = gradient.byCapacitance(equations.net("drain"), equations.net("rail"));
        assertThat(found1).isCloseTo(expected, within(1e-6 * Math.abs(expected)));
        // some 3.6 kHz for a picofarad: f/2C of the tank
        assertThat(found1 * 1e-12).isBetween(-6e3, -2e3);
    }

    /** A net that holds no charge of its own: the stray alone brings it, and its direct voltage must not count. */
    @ParameterizedTest
    @ValueSource(strings = {"ground", "rail", "source"})
    void a_stray_at_a_net_without_capacitance_has_the_derivative_of_a_capacitor_put_there(String other) {
        Circuit without = Circuits.groundedGateColpitts()
                .plus(new Resistor("upper", "drain", "mid", 47e3))
                .plus(new Resistor("lower", "mid", "ground", 22e3));
        double farads = 2e-15;
        SteadyState.Found found = settle(without),
                with = settle(without.plus(new Capacitor("stray", "mid", other, farads)));
        Equations equations = found.waveforms().equations();
        int mid = equations.net("mid"), to = other.equals("ground") ? 0 : equations.net(other);
        OrbitAdjoint adjoint = new OrbitAdjoint(found);
        double again = (with.waveforms().frequency() - found.waveforms().frequency()) / farads;
        assertThat(adjoint.frequency().byCapacitance(mid, to)).isCloseTo(again, within(2e-2 * Math.abs(again)));
        double level =
                (with.waveforms().amplitude(mid, 0, 1) - found.waveforms().amplitude(mid, 0, 1)) / farads;
        double size = found.waveforms().amplitude(mid, 0, 1);
        assertThat(adjoint.amplitude(mid, 0, 1).byCapacitance(mid, to))
                .isCloseTo(level, within(2e-2 * Math.abs(level) + 1e-6 * size / farads));
    }

    /** A driven stage: output of a common-emitter amplifier by its load, direct and adjoint, against solving again. */
    @Test
    void derivatives_of_a_driven_stage_are_those_of_solving_again() {
        double delta = 1e-3;
        SteadyState.Found found = driven(1);
        Waveforms above = driven(1 + delta).waveforms(),
                below = driven(1 - delta).waveforms();
        Equations lower = below.equations(), upper = above.equations();
        int out = found.waveforms().equations().net("out");
        for (int h = 1; h <= 3; h++) {
            double again = (above.amplitude(out, 0, h) - below.amplitude(out, 0, h)) / (2 * delta);
            double direct =
                    new OrbitDerivatives(found).between(lower, upper, delta).amplitude(out, 0, h);
            double adjoint = new OrbitAdjoint(found).amplitude(out, 0, h).between(lower, upper, delta);
            double size = found.waveforms().amplitude(out, 0, h);
            assertThat(direct).as("harmonic %d", h).isCloseTo(again, within(1e-3 * (Math.abs(again) + 0.1 * size)));
            assertThat(adjoint).as("harmonic %d", h).isCloseTo(direct, within(EXACT * (Math.abs(direct) + size)));
        }
        assertThat(new OrbitAdjoint(found).frequency().between(lower, upper, delta))
                .isZero();
    }

    private static SteadyState.Found driven(double ratio) {
        Circuit stage = Circuit.of(
                new VoltageSource("V", "rail", "ground", new Wave.Direct(9)),
                new VoltageSource("S", "in", "ground", new Wave.Sine(0.68, 0.02, 1e6, 0)),
                new Resistor("Rb", "in", "base", 100),
                new Resistor("Rl", "rail", "out", 1e3 * ratio),
                new Capacitor("Cl", "out", "ground", 22e-12),
                new Bipolar("Q", Polarity.N, "out", "base", "ground", Circuits.npn()));
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(stage));
        SteadyState state = new DrivenSteadyState(Accuracy.CERTIFIED).solve(point, 1e6);
        assertThat(state).isInstanceOf(SteadyState.Found.class);
        return (SteadyState.Found) state;
    }

    /** The trimmer position found for a wanted frequency gives that frequency when solved from cold. */
    @Test
    void a_retrimmed_circuit_has_the_wanted_frequency() {
        Circuit circuit = Circuits.transmitter();
        Family family = position ->
                Equations.of(circuit.with(((Trimmer) circuit.part("Ct").orElseThrow()).at(position)));
        SteadyState.Found known = settle(circuit);
        double wanted = known.waveforms().frequency() * 1.01;
        Retrim.Outcome outcome =
                new Retrim(Accuracy.CERTIFIED, Watch.NONE).toFrequency(family, 0, 1, 0.5, known, wanted);
        assertThat(outcome).isInstanceOf(Retrim.Trimmed.class);
        double position = ((Retrim.Trimmed) outcome).parameter();
        SteadyState.Found again =
                settle(circuit.with(((Trimmer) circuit.part("Ct").orElseThrow()).at(position)));
        assertThat(again.waveforms().frequency()).isCloseTo(wanted, within(3e-7 * wanted));
    }

    @Test
    void a_frequency_beyond_the_trimmer_is_out_of_range() {
        Circuit circuit = Circuits.transmitter();
        Family family = position ->
                Equations.of(circuit.with(((Trimmer) circuit.part("Ct").orElseThrow()).at(position)));
        SteadyState.Found known = settle(circuit);
        Retrim.Outcome outcome = new Retrim(Accuracy.CERTIFIED, Watch.NONE)
                .toFrequency(family, 0, 1, 0.5, known, known.waveforms().frequency() * 1.3);
        assertThat(outcome).isInstanceOf(Retrim.OutOfRange.class);
        assertThat(((Retrim.OutOfRange) outcome).stop()).isZero();
    }
}
