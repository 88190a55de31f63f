package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From one end of a trimmer to the other in one call, with an output of high Q that is passed on the way. */
class LongStepTest {
    private static Circuit at(double oscillator, double output, double q) {
        Circuit circuit = Circuits.transmitter();
        return circuit.with(((Trimmer) circuit.part("Ct").orElseThrow()).at(oscillator))
                .with(((Trimmer) circuit.part("Co").orElseThrow()).at(output))
                .with(Coil.ofQ("Lo", "rail", "out", 22e-6, q, 1e6));
    }

    private static SteadyState.Found cold(Circuit circuit) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        return (SteadyState.Found) new SteadyOscillation(Accuracy.LIVE)
                .solve(point, Startup.readiest(point).orElseThrow());
    }

    @ParameterizedTest
    @CsvSource({"0, 0.5, 1, 0.5, 60", "1, 0.5, 0, 0.5, 400", "0.5, 0, 0.5, 1, 400", "1, 1, 0, 0, 1000"})
    void a_step_across_the_whole_range_ends_where_a_cold_start_does(
            double ct, double co, double toCt, double toCo, double q) {
        Equations there = Equations.of(at(toCt, toCo, q));
        SteadyState warm = new SteadyOscillation(Accuracy.LIVE).solveNear(there, cold(at(ct, co, q)));
        assertThat(warm).isInstanceOf(SteadyState.Found.class);
        Waveforms found = ((SteadyState.Found) warm).waveforms(),
                wanted = cold(at(toCt, toCo, q)).waveforms();
        assertThat(found.frequency()).isCloseTo(wanted.frequency(), within(3e-6 * wanted.frequency()));
        double current = wanted.currentAmplitude("Lo", 1);
        assertThat(found.currentAmplitude("Lo", 1)).isCloseTo(current, within(0.02 * current));
    }

    /** Another supply, another gate capacitor: what Newton cannot do in one step is done by circuits in between. */
    @Test
    void a_change_that_one_step_does_not_bridge_is_bridged_by_circuits_in_between() {
        Circuit transmitter = at(0.5, 0.5, 60), hartley = Circuits.gateLeakHartley();
        int lost = 0;
        for (double volts : new double[] {3, 5, 18, 30}) {
            lost += bridged(transmitter, transmitter.with(new Battery("B", "rail", "ground", volts, 2)));
        }
        lost += bridged(hartley, hartley.with(new Capacitor("Cg", "top", "gate", 1e-9)));
        lost += bridged(hartley, hartley.with(new Resistor("Rg", "gate", "ground", 10e3)));
        assertThat(lost).as("otherwise this test tests nothing").isGreaterThanOrEqualTo(3);
    }

    /** 1 where one step would have lost the orbit. */
    private static int bridged(Circuit from, Circuit to) {
        SteadyState.Found start = cold(from);
        Equations there = Equations.of(to);
        Refinement refinement =
                new Refinement(new OrbitSystem(there, start.site()), Closing.Free.FREQUENCY, Accuracy.LIVE, Watch.NONE);
        Orbit led = refinement.led(start.coarse(), start.waveforms().equations());
        assertThat(led).isNotNull();
        Followed followed = new Follower(there, start.site(), Accuracy.LIVE, Watch.NONE)
                .follow(there, Followed.of(start))
                .orElseThrow();
        double wanted = cold(to).waveforms().frequency();
        assertThat(followed.waveforms().frequency()).isCloseTo(wanted, within(5e-6 * wanted));
        return refinement.improve(start.coarse().copy()) ? 0 : 1;
    }
}
