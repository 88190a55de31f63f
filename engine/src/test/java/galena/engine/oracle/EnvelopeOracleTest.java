package galena.engine.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import galena.engine.envelope.DynamicEnvelope;
import galena.engine.envelope.Envelope;
import galena.engine.envelope.EnvelopeAnswer;
import galena.engine.envelope.SlowSource;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.DrivenSteadyState;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.steady.Waveforms;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Dynamic envelopes against an explicit integrator of a general library on equations worked out by hand, run from the
 * unmodulated carrier until nothing of the start is left.
 */
class EnvelopeOracleTest {
    private static final Published SOURCE = Published.source(
            "engine",
            Kind.LIBRARY,
            "Hipparchus DormandPrince853 on equations of the modulated circuit reduced by hand, run until it repeats");

    /** What is asked for: 0.2 points of depth, 0.1 points of distortion or 2 % of it, 2 % of the swing. */
    private static final double DEPTH = 2e-3;

    private static final double DISTORTION = 1e-3;
    private static final double SHARE = 0.02;

    /** Below this a swing is rounding beside the carrier, Hz. */
    private static final double STILL = 0.05;

    static Stream<ModulatedCircuit> heavy() {
        return Stream.of(
                ModulatedCircuits.tailModulatedPair().at(5, 1000, 1),
                ModulatedCircuits.tailModulatedPair().at(6, 200, 4),
                ModulatedCircuits.emitterModulated(),
                ModulatedCircuits.emitterModulated().at(1.3, 200, 4),
                ModulatedCircuits.multipliedTank().at(1.1, 1000, 1));
    }

    @Test
    void a_tank_with_memory_is_modulated_as_a_run_in_time_says() {
        compare(ModulatedCircuits.multipliedTank());
    }

    @Test
    void an_oscillator_modulated_at_its_emitter_swings_as_a_run_in_time_says() {
        compare(ModulatedCircuits.emitterModulated().at(1, 100, 6));
    }

    @Tag("long")
    @ParameterizedTest
    @MethodSource("heavy")
    void envelopes_are_those_of_runs_in_time(ModulatedCircuit circuit) {
        compare(circuit);
    }

    private static void compare(ModulatedCircuit circuit) {
        SteadyState.Found carrier = carrier(circuit);
        double slow = carrier.waveforms().frequency() / circuit.cycles();
        Envelope ours = envelope(carrier, circuit, slow);
        // the slow period then holds a whole number of the modulated carrier's cycles
        ours = envelope(carrier, circuit, ours.frequency() / circuit.cycles());
        double amplitude = carrier.waveforms().currentAmplitude(circuit.part(), 1);
        ModulatedRun run = new ModulatedRun(circuit, ours.frequency(), swings(circuit, carrier.waveforms()));
        EnvelopeFigures theirs =
                EnvelopeFigures.of(run.envelope(start(circuit, carrier.waveforms())), amplitude, run.slow());
        EnvelopeFigures found = EnvelopeFigures.of(ours.current(circuit.part(), 1), amplitude, run.slow());
        String what = circuit.toString();
        SOURCE.matches(what + ": positive peak", theirs.positive(), found.positive(), DEPTH);
        SOURCE.matches(what + ": negative peak", theirs.negative(), found.negative(), DEPTH);
        SOURCE.matches(
                what + ": distortion",
                theirs.distortion(),
                found.distortion(),
                Math.max(DISTORTION, SHARE * theirs.distortion()));
        SOURCE.matches(what + ": swing, Hz", theirs.swing(), found.swing(), SHARE * theirs.swing() + STILL);
        assertThat(theirs.negative()).as("a modulation worth the name").isGreaterThan(0.1);
    }

    private static Envelope envelope(SteadyState.Found carrier, ModulatedCircuit circuit, double slow) {
        EnvelopeAnswer answer =
                new DynamicEnvelope(1e-4, Watch.NONE).solve(carrier, new SlowSource("A", circuit.level(), slow));
        assertThat(answer).as("%s: %s", circuit, answer).isInstanceOf(Envelope.class);
        return (Envelope) answer;
    }

    private static SteadyState.Found carrier(ModulatedCircuit circuit) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit.circuit()));
        boolean driven = point.equations().sourceFrequencies().length > 0;
        SteadyState state = driven
                ? new DrivenSteadyState(Accuracy.CERTIFIED).solve(point, ModulatedCircuits.CARRIER)
                : new SteadyOscillation(Accuracy.CERTIFIED)
                        .solve(point, Startup.readiest(point).orElseThrow());
        assertThat(state).as(circuit.name()).isInstanceOf(SteadyState.Found.class);
        return (SteadyState.Found) state;
    }

    private static double[] swings(ModulatedCircuit circuit, Waveforms ours) {
        double[] swings = new double[circuit.states().length];
        for (int k = 0; k < swings.length; k++) {
            int unknown = unknown(ours.equations(), circuit.states()[k]);
            swings[k] = Math.max(ours.swing(unknown), 1e-3 * Math.abs(ours.mean(unknown)));
        }
        return swings;
    }

    private static double[] start(ModulatedCircuit circuit, Waveforms ours) {
        double[] all = ours.at(0), start = new double[circuit.states().length];
        for (int k = 0; k < start.length; k++) start[k] = all[unknown(ours.equations(), circuit.states()[k])];
        return start;
    }

    private static int unknown(Equations equations, String name) {
        return equations.unknown(name).orElseThrow();
    }
}
