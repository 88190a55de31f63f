package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.Scaled;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Part;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every steady oscillation, whatever its circuit. */
class SteadyLawsTest {
    /** Two certified results may differ by twice the accuracy. */
    private static final double FREQUENCY = 2 * Accuracy.CERTIFIED.frequency();

    private static final double AMPLITUDE = 1e-5;

    /** At a square law's corners the conductances jump, and a multiplier keeps only the first order of the mesh. */
    private static final double CORNERS = 1e-3;

    static Stream<Circuit> oscillators() {
        return Stream.of(
                Circuits.groundedGateColpitts(),
                Circuits.gateLeakHartley(),
                Circuits.bipolarColpitts(),
                Circuits.transmitter());
    }

    private static OperatingPoint.Found point(Circuit circuit) {
        return (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
    }

    private static SteadyState solve(Circuit circuit, Accuracy accuracy) {
        OperatingPoint.Found point = point(circuit);
        return new SteadyOscillation(accuracy)
                .solve(point, Startup.readiest(point).orElseThrow());
    }

    private static SteadyState.Found certified(Circuit circuit) {
        SteadyState state = solve(circuit, Accuracy.CERTIFIED);
        assertThat(state).as("%s", state).isInstanceOf(SteadyState.Found.class);
        return (SteadyState.Found) state;
    }

    private static void sameFigures(Waveforms expected, Waveforms found, double times, double volts) {
        assertThat(found.frequency() * times).isCloseTo(expected.frequency(), within(FREQUENCY * expected.frequency()));
        Equations equations = expected.equations();
        for (String net : equations.circuit().nets()) {
            double first = expected.voltageAmplitude(net, Circuit.GROUND, 1);
            if (first < 1e-3) continue;
            assertThat(found.voltageAmplitude(net, Circuit.GROUND, 1))
                    .as(net)
                    .isCloseTo(first, within(AMPLITUDE * first));
            assertThat(volts * found.meanVoltage(net))
                    .as("mean of %s", net)
                    .isCloseTo(expected.meanVoltage(net), within(AMPLITUDE * 10));
        }
    }

    @ParameterizedTest
    @MethodSource("oscillators")
    void scaling_every_inductance_and_charge_divides_the_frequency_and_leaves_the_amplitudes(Circuit circuit) {
        Waveforms fast = certified(circuit).waveforms(),
                slow = certified(Scaled.slower(circuit, 1.7)).waveforms();
        sameFigures(fast, slow, 1.7, 1);
    }

    @ParameterizedTest
    @MethodSource("oscillators")
    void the_mirrored_circuit_of_the_other_polarity_oscillates_alike(Circuit circuit) {
        sameFigures(
                certified(circuit).waveforms(),
                certified(Scaled.mirrored(circuit)).waveforms(),
                1,
                -1);
    }

    @ParameterizedTest
    @MethodSource("oscillators")
    void what_the_battery_delivers_is_what_the_parts_take_up(Circuit circuit) {
        SteadyState.Found found = certified(circuit);
        double sum = 0;
        for (Part part : circuit.parts()) sum += found.waveforms().meanPower(part.name());
        assertThat(found.waveforms().meanPower("B")).isNegative();
        assertThat(Math.abs(sum))
                .isLessThan(
                        Accuracy.CERTIFIED.powerImbalance() * found.waveforms().deliveredPower());
        for (Part part : circuit.parts()) {
            if (part instanceof Capacitor || part instanceof Trimmer) {
                assertThat(found.waveforms().meanPower(part.name())).isZero();
            } else if (part instanceof Coil || part instanceof Resistor) {
                assertThat(found.waveforms().meanPower(part.name())).isNotNegative();
            }
        }
    }

    /** A shift in time neither grows nor dies; every other disturbance of these circuits dies. */
    @ParameterizedTest
    @MethodSource("oscillators")
    void one_multiplier_is_one_and_the_others_lie_within_the_circle(Circuit circuit) {
        SteadyState.Found found = certified(circuit);
        Floquet floquet = found.floquet();
        assertThat(floquet.trivial()).isCloseTo(1, within(CORNERS));
        assertThat(floquet.largest()).isLessThan(1);
        assertThat(floquet.stability()).isEqualTo(Floquet.Stability.STABLE);
    }

    @ParameterizedTest
    @MethodSource("oscillators")
    void halving_the_leakage_of_devices_moves_no_frequency(Circuit circuit) {
        Circuit halved = circuit;
        for (Part part : circuit.parts()) {
            if (part instanceof Jfet q) {
                Junction gate = q.model().gateSource().withLeakage(Junction.USUAL_LEAKAGE / 2);
                Jfet.Model m = q.model();
                halved = halved.with(new Jfet(
                        q.name(),
                        q.polarity(),
                        q.drain(),
                        q.gate(),
                        q.source(),
                        new Jfet.Model(m.saturationCurrent(), m.pinchOff(), m.channelLengthModulation(), gate, gate)));
            }
        }
        sameFigures(certified(circuit).waveforms(), certified(halved).waveforms(), 1, 1);
    }

    /** Warm from a neighbour or cold from rest: the same orbit. */
    @ParameterizedTest
    @MethodSource("oscillators")
    void a_warm_start_leads_where_a_cold_one_does(Circuit circuit) {
        Circuit nudged = circuit.plus(new Capacitor("stray", circuit.nets().get(1), Circuit.GROUND, 1e-12));
        Circuit moved = nudged.with(new Capacitor("stray", circuit.nets().get(1), Circuit.GROUND, 1.5e-12));
        SteadyState warm = new SteadyOscillation(Accuracy.CERTIFIED).solveNear(Equations.of(moved), certified(nudged));
        assertThat(warm).isInstanceOf(SteadyState.Found.class);
        sameFigures(certified(moved).waveforms(), ((SteadyState.Found) warm).waveforms(), 1, 1);
    }

    @ParameterizedTest
    @MethodSource("oscillators")
    void the_same_question_has_the_same_answer_to_the_last_digit(Circuit circuit) {
        SteadyState.Found once = certified(circuit), again = certified(circuit);
        assertThat(again.waveforms().frequency()).isEqualTo(once.waveforms().frequency());
        assertThat(again.waveforms().at(0.3)).containsExactly(once.waveforms().at(0.3));
    }

    @Test
    void an_oscillator_with_too_much_loss_is_said_to_decay() {
        Circuit lossy = Circuits.groundedGateColpitts().plus(new Resistor("heavy", "drain", "rail", 1.5e3));
        SteadyState state = solve(lossy, Accuracy.CERTIFIED);
        assertThat(state).isInstanceOf(SteadyState.NotFound.class);
        assertThat(((SteadyState.NotFound) state).reason()).isEqualTo(SteadyState.Reason.DECAYS);
        assertThat(((SteadyState.NotFound) state).load())
                .as("loss that would have to go")
                .isNegative();
    }

    @ParameterizedTest
    @MethodSource("oscillators")
    void sensible_oscillators_are_told_to_start(Circuit circuit) {
        AllOrbits.Answer answer = new AllOrbits(Accuracy.LIVE, Watch.NONE).of(point(circuit));
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.STARTS);
        assertThat(answer.orbits()).isNotEmpty();
    }

    @Test
    void a_loaded_down_oscillator_is_told_to_decay() {
        Circuit lossy = Circuits.groundedGateColpitts().plus(new Resistor("heavy", "drain", "rail", 1.5e3));
        assertThat(new AllOrbits(Accuracy.LIVE, Watch.NONE).of(point(lossy)).verdict())
                .isEqualTo(AllOrbits.Verdict.DECAYS);
    }

    @Test
    void another_structure_is_refused_as_a_warm_start() {
        SteadyState.Found known = certified(Circuits.bipolarColpitts());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SteadyOscillation(Accuracy.LIVE)
                        .solveNear(Equations.of(Circuits.groundedGateColpitts()), known))
                .withMessageContaining("structure");
    }

    @Test
    void a_solve_stops_when_told_to() {
        OperatingPoint.Found point = point(Circuits.transmitter());
        Startup startup = Startup.readiest(point).orElseThrow();
        int[] asked = {0};
        Watch watch = new Watch(() -> ++asked[0] > 3);
        assertThatExceptionOfType(CancellationException.class)
                .isThrownBy(() -> new SteadyOscillation(Accuracy.CERTIFIED, watch).solve(point, startup));
        assertThat(asked[0]).isEqualTo(4);
    }
}
