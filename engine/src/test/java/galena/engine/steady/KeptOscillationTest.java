package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is kept from one position to the next changes no answer. */
class KeptOscillationTest {
    static Stream<Circuit> oscillators() {
        return Stream.of(Circuits.groundedGateColpitts(), Circuits.gateLeakHartley(), Circuits.transmitter());
    }

    private static SteadyState.Found cold(Equations equations) {
        OperatingPoint.Found point = (OperatingPoint.Found) OperatingPointLadder.climb(equations);
        return (SteadyState.Found) new SteadyOscillation(Accuracy.LIVE)
                .solve(point, Startup.readiest(point).orElseThrow());
    }

    private static Equations turned(Circuit circuit, double position) {
        Trimmer trimmer = (Trimmer) circuit.part("Ct").orElseThrow();
        return Equations.of(circuit.with(trimmer.at(position)));
    }

    @ParameterizedTest
    @MethodSource("oscillators")
    void every_position_is_answered_as_from_cold(Circuit circuit) {
        KeptOscillation kept = new KeptOscillation(cold(turned(circuit, 0.3)), Accuracy.LIVE, Watch.NONE);
        for (int k = 1; k <= 30; k++) {
            Equations there = turned(circuit, 0.3 + 0.02 * k);
            SteadyState.Found found = (SteadyState.Found) kept.move(there);
            assertThat(found.error().meets(Accuracy.LIVE)).isTrue();
            if (k % 10 != 0) continue;
            SteadyState.Found own = cold(there);
            int a = found.site().a(), b = found.site().b();
            double amplitude = own.waveforms().amplitude(a, b, 1);
            assertThat(found.waveforms().frequency() / own.waveforms().frequency())
                    .isCloseTo(1, within(2 * Accuracy.LIVE.frequency()));
            assertThat(found.waveforms().amplitude(a, b, 1) / amplitude).isCloseTo(1, within(1e-3));
        }
    }

    /** Past the bend of a curve the oscillation quits: that is said, and the way back is still known. */
    @Test
    void an_oscillation_that_quits_is_said_to_be_lost_and_is_found_again_on_the_way_back() {
        Circuit circuit = Circuits.groundedGateColpitts();
        Equations here = turned(circuit, 0.5);
        KeptOscillation kept = new KeptOscillation(cold(here), Accuracy.LIVE, Watch.NONE);
        double frequency = kept.last().waveforms().frequency();
        Resistor source = (Resistor) circuit.part("Rs").orElseThrow();
        Circuit starved = circuit.with(
                new Resistor(source.name(), source.nets().get(0), source.nets().get(1), 1e6));
        assertThat(kept.move(turned(starved, 0.5))).isInstanceOf(SteadyState.NotFound.class);
        SteadyState.Found back = (SteadyState.Found) kept.move(here);
        assertThat(back.waveforms().frequency() / frequency).isCloseTo(1, within(1e-7));
    }

    @Test
    void another_structure_is_refused() {
        KeptOscillation kept =
                new KeptOscillation(cold(turned(Circuits.groundedGateColpitts(), 0.5)), Accuracy.LIVE, Watch.NONE);
        Equations other = turned(Circuits.transmitter(), 0.5);
        assertThatThrownBy(() -> kept.move(other)).isInstanceOf(IllegalArgumentException.class);
    }
}
