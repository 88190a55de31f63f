package galena.build.substitute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Mosfet;
import galena.engine.part.Polarity;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** From readings back to the device: the way that a builder goes with the test. */
class WindowSearchTest {
    private static final Junction GATE = Junction.silicon(1e-14, 1, 2e-12, 0.8, 0.4, 0);

    @Test
    void two_readings_give_a_jfet_back() {
        back(new JfetLaw(new Jfet.Model(8e-3, -2.5, 0.01, GATE, GATE)), 15e-3, 4);
    }

    @Test
    void two_readings_give_a_diode_back() {
        back(new DiodeLaw(Junction.silicon(3e-9, 1.8, 1e-12, 0.7, 0.3, 0), 0.5), 0.35, 1.1);
    }

    @Test
    void three_readings_give_a_dual_gate_mosfet_back() {
        Mosfet.Model channel = new Mosfet.Model(-1.2, 8e-3, 0.01, 0, 0, 0, 1e-9, null);
        DualGateMosfet typical = new DualGateMosfet("Q", Polarity.N, "d", "g2", "g1", "s", channel, channel);
        back(new DualGateLaw(typical, 2e-12, 1e-12, 1e-12), 7e-3, 0.9, 1.6);
    }

    private static void back(Law law, double... numbers) {
        double[] readings = new double[numbers.length];
        for (int k = 0; k < readings.length; k++) readings[k] = law.reading(k, numbers);
        double[] found = WindowSearch.showing(law, readings).orElseThrow();
        for (int k = 0; k < numbers.length; k++) assertThat(found[k]).isCloseTo(numbers[k], within(1e-4 * numbers[k]));
    }

    /** No JFET shows more across ten kilohms than across a hundredth of that and less than its pinch-off allows. */
    @Test
    void readings_that_no_device_shows_are_told_apart() {
        Optional<double[]> none =
                WindowSearch.showing(new JfetLaw(new Jfet.Model(8e-3, -2.5, 0, GATE, GATE)), new double[] {3, 0.1});
        assertThat(none).isEmpty();
    }
}
