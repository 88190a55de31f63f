package galena.build.substitute;

import galena.engine.part.Bipolar;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Mosfet;
import galena.proof.Kind;
import galena.proof.Published;
import org.junit.jupiter.api.Test;

/** The test circuits' readings against closed forms. */
class TestCircuitTest {
    private static final double SUPPLY = 9;

    private static Jfet.Model jfet(double saturation, double pinchOff) {
        Junction gate = Junction.silicon(1e-14, 1, 2e-12, 0.8, 0.4, 0);
        return new Jfet.Model(saturation, pinchOff, 0, gate, gate);
    }

    /** x = 1 − IR/|VP| is the positive root of (IDSS·R/|VP|)·x² + x − 1 = 0. */
    @Test
    void a_source_resistor_shows_what_the_square_law_says() {
        for (double resistor : new double[] {100, 10e3}) {
            double saturation = 8e-3, pinchOff = 2.5;
            double a = saturation * resistor / pinchOff;
            double x = (Math.sqrt(1 + 4 * a) - 1) / (2 * a);
            Published.source("build", Kind.CLOSED_FORM, "square law of a JFET with a source resistor, a quadratic")
                    .matchesRelative(
                            "volts across " + resistor + " ohms",
                            pinchOff * (1 - x),
                            TestCircuit.sourceVoltage(jfet(saturation, -pinchOff), SUPPLY, resistor),
                            1e-6);
        }
    }

    /** Base current (9 V − VBE)/1 MΩ times the gain, VBE from the exponential law by fixed-point iteration. */
    @Test
    void a_collector_resistor_shows_the_gain() {
        double beta = 290, saturation = 2e-14, thermal = 1.380649e-23 * 298.15 / 1.602176634e-19;
        Bipolar.Model model =
                new Bipolar.Model(saturation, beta, 4, Double.POSITIVE_INFINITY, 0, 0, 0, 0.75, 0.33, 0, 0.75, 0.33, 0);
        double junction = 0.65;
        for (int k = 0; k < 50; k++) junction = thermal * Math.log(beta * (SUPPLY - junction) / 1e6 / saturation);
        Published.source(
                        "build",
                        Kind.CLOSED_FORM,
                        "transistor fed through a base resistor: Ohm's law and the exponential law")
                .matchesRelative(
                        "volts across 1 kilohm in the collector",
                        beta * (SUPPLY - junction) / 1e6 * 1e3,
                        TestCircuit.collectorVoltage(model, SUPPLY, 1e6, 1e3),
                        1e-4);
    }

    /** Two currents through one junction: the drops differ by n·kT/q for each e-fold. */
    @Test
    void two_resistors_show_the_emission_coefficient() {
        Junction junction = Junction.silicon(2e-9, 1.8, 0, 0.7, 0.5, 0).withLeakage(0);
        double high = TestCircuit.forwardVoltage(junction, 0, SUPPLY, 10e3),
                low = TestCircuit.forwardVoltage(junction, 0, SUPPLY, 1e6);
        double currents = (SUPPLY - high) / 10e3 / ((SUPPLY - low) / 1e6);
        Published.source("build", Kind.CLOSED_FORM, "Shockley's law at two currents")
                .matchesRelative(
                        "difference of a diode's drops", 1.8 * DiodeLaw.THERMAL * Math.log(currents), high - low, 2e-3);
    }

    /** With the upper channel wide open a dual-gate MOSFET reads as the square law of its lower one. */
    @Test
    void an_open_upper_channel_leaves_the_lower_one_to_read() {
        double cutoff = 1.5, current = 6e-3, resistor = 1e3;
        Mosfet.Model lower = channel(-cutoff, current / (cutoff * cutoff)), upper = channel(-2, 0.02);
        double a = current * resistor / cutoff, x = (Math.sqrt(1 + 4 * a) - 1) / (2 * a);
        Published.source("build", Kind.CLOSED_FORM, "square law with a source resistor, a quadratic")
                .matchesRelative(
                        "volts across 1 kilohm under a dual-gate MOSFET",
                        cutoff * (1 - x),
                        TestCircuit.sourceVoltage(lower, upper, SUPPLY, 0, SUPPLY / 2, resistor),
                        1e-3);
    }

    private static Mosfet.Model channel(double threshold, double beta) {
        return new Mosfet.Model(threshold, beta, 0, 0, 0, 0, 1e-9, null);
    }
}
