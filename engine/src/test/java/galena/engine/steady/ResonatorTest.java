package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.startup.Startup;
import org.junit.jupiter.api.Test;

/** A quartz between base and ground, with the base's standing voltage across it and a tuned coil in the collector. */
class ResonatorTest {
    private static final double MOTIONAL_INDUCTANCE = 2.8156;
    private static final double MOTIONAL_CAPACITANCE = 9e-15;

    private static Circuit quartz() {
        return Circuit.of(
                new Battery("B", "rail", "ground", 8, 1),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                new Resonator("X1", "base", "ground", MOTIONAL_INDUCTANCE, MOTIONAL_CAPACITANCE, 300, 4e-12),
                new Capacitor("Cf", "base", "emitter", 220e-12),
                new Capacitor("Cs", "emitter", "ground", 220e-12),
                new Resistor("R1", "rail", "base", 100e3),
                new Resistor("R2", "base", "ground", 68e3),
                new Resistor("Re", "emitter", "ground", 3.3e3),
                Coil.ofQ("Lo", "rail", "out", 47e-6, 120, 1e6),
                new Resistor("Ro", "rail", "out", 2.2e3),
                new Capacitor("Co", "out", "rail", 540e-12),
                new Bipolar("Q1", Polarity.N, "out", "base", "emitter", Circuits.npn()));
    }

    @Test
    void a_quartz_with_a_bias_across_it_is_where_its_own_oscillation_is_looked_for_and_found() {
        OperatingPoint rest = OperatingPointLadder.climb(Equations.of(quartz()));
        assertThat(rest).isInstanceOf(OperatingPoint.Found.class);
        OperatingPoint.Found point = (OperatingPoint.Found) rest;
        Startup startup = Startup.readiest(point).orElseThrow();
        assertThat(startup.grows()).isTrue();
        assertThat(startup.site().part()).isEqualTo("X1");

        SteadyState state = new SteadyOscillation(Accuracy.CERTIFIED).solve(point, startup);
        assertThat(state).isInstanceOf(SteadyState.Found.class);
        SteadyState.Found found = (SteadyState.Found) state;
        // between its series resonance and its parallel one with nothing but the holder across it
        double series = 1 / (2 * Math.PI * Math.sqrt(MOTIONAL_INDUCTANCE * MOTIONAL_CAPACITANCE));
        double parallel = series * Math.sqrt(1 + MOTIONAL_CAPACITANCE / 4e-12);
        assertThat(found.waveforms().frequency()).isBetween(series, parallel);
        assertThat(found.floquet().stability()).isEqualTo(Floquet.Stability.STABLE);
    }
}
