package galena.engine.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Bipolar;
import galena.engine.part.CurrentSource;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Polarity;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.proof.Kind;
import galena.proof.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

class LawTest {
    private static final double HALF_OF_TENTH_DIGIT = 5e-9;
    private static final double LEAKAGE = 1e-12 * 5.5;

    @Test
    void thermal_voltage_is_that_of_the_exact_constants() {
        Published.source(
                        "engine",
                        Kind.STANDARD,
                        "SI Brochure, 9th ed. (2019): k = 1.380649e-23 J/K, e = 1.602176634e-19 C")
                .matchesRelative("kT/e at 300 K, V", 0.025851999786435, Heat.thermalVoltage(26.85), 1e-12);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/jfet-square-law-point.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void a_jfet_at_rest_has_the_transconductance_of_the_square_law(
            double idss, double pinchOff, double vgs, double gm, double id) {
        Junction gate = Junction.silicon(1e-14, 1, 0, 0.8, 0.5, 0);
        double[] out = new double[ChannelLaw.WIDTH];
        ChannelLaw.of(new Jfet.Model(idss, pinchOff, 0, gate, gate), 25).evaluate(vgs, 10, out, 0);
        Published.source("engine", Kind.CLOSED_FORM, "L. J. Sevin, Field-Effect Transistors (1965): square law")
                .matchesRelative("drain current, V_GS " + vgs, id, out[0], HALF_OF_TENTH_DIGIT)
                .matchesRelative("transconductance, V_GS " + vgs, gm, out[1], HALF_OF_TENTH_DIGIT);
    }

    /** What the device's leakage adds to the smaller share is allowed for: 1 pS at up to 5 V. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/current-steering.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void a_steering_pair_divides_its_current_by_the_logistic_law(double u, double share) {
        Bipolar.Model ideal =
                new Bipolar.Model(1e-17, 1e9, 1e9, Double.POSITIVE_INFINITY, 0, 0, 0, 0.7, 0.5, 0, 0.7, 0.5, 0);
        double tail = 2e-3;
        OperatingPoint.Found point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(Circuit.of(
                new VoltageSource("V", "rail", "ground", new Wave.Direct(9)),
                new VoltageSource("Vload", "rail", "load", new Wave.Direct(0)),
                new VoltageSource("Vb", "base", "ground", new Wave.Direct(4)),
                new VoltageSource("Vu", "dump", "base", new Wave.Direct(u * Heat.thermalVoltage(25))),
                new Bipolar("Q1", Polarity.N, "load", "base", "tail", ideal),
                new Bipolar("Q2", Polarity.N, "rail", "dump", "tail", ideal),
                new CurrentSource("I", "tail", "ground", new Wave.Direct(tail)))));
        double found = point.current("Vload") / tail;
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "W. R. Davis and J. E. Solomon, IEEE J. Solid-State Circuits SC-3 (1968) 408: f = 1/(1 + exp u)")
                .matches("share of the current, u " + u, share, found, 1e-8)
                .matches(
                        "logarithm of the share, u " + u,
                        Math.log(share),
                        Math.log(found),
                        1e-6 + LEAKAGE / tail / share);
    }

    /** C₀/(1 − v/φ)^m below φ/2; the tangent above errs by less than the documented 4 % of C₀ at 0.6 φ. */
    @Test
    void depletion_follows_the_power_law_and_then_its_tangent() {
        double phi = 0.8, c0 = 3e-12;
        JunctionLaw law = new JunctionLaw(Junction.silicon(1e-14, 1, c0, phi, 0.5, 0), 25);
        double[] out = new double[JunctionLaw.WIDTH];
        Published source = Published.source(
                "engine",
                Kind.CLOSED_FORM,
                "S. M. Sze, Physics of Semiconductor Devices: abrupt junction C₀/√(1 − v/φ)");
        for (double v : new double[] {-20, -5, -1, -0.1, 0.1, 0.39}) {
            law.evaluate(v, out, 0);
            source.matchesRelative("capacitance at " + v + " V", c0 / Math.sqrt(1 - v / phi), out[3], 1e-12);
        }
        law.evaluate(0.6 * phi, out, 0);
        source.matches("capacitance at 0.6 φ, share of C₀", 1 / Math.sqrt(0.4), out[3] / c0, 0.04);
    }

    /** Charge is the integral of capacitance, across the bend as well, for any grading. */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.5, 1, 1.2})
    void charge_is_the_integral_of_capacitance(double grading) {
        JunctionLaw law = new JunctionLaw(Junction.silicon(1e-14, 1, 5e-12, 0.7, grading, 0), 25);
        double[] out = new double[JunctionLaw.WIDTH];
        double sum = 0, from = -8, to = 0.6;
        int steps = 20000;
        for (int k = 0; k <= steps; k++) {
            law.evaluate(from + (to - from) * k / steps, out, 0);
            sum += (k == 0 || k == steps ? 1 : k % 2 == 1 ? 4 : 2) * out[3];
        }
        sum *= (to - from) / steps / 3;
        law.evaluate(to, out, 0);
        double above = out[2];
        law.evaluate(from, out, 0);
        assertThat(above - out[2]).isCloseTo(sum, within(1e-9 * sum));
    }

    @Test
    void silicon_moves_with_temperature_as_silicon_does() {
        double[] cold = new double[JunctionLaw.WIDTH], hot = new double[JunctionLaw.WIDTH];
        Junction junction = Junction.silicon(1e-14, 1, 0, 0.7, 0.5, 0);
        double current = 1e-3;
        double change = (forward(junction, 35, current) - forward(junction, 15, current)) / 20;
        new JunctionLaw(junction, 25).evaluate(-1, cold, 0);
        new JunctionLaw(junction, 35).evaluate(-1, hot, 0);
        double saturationRatio = (hot[0] + junction.leakage()) / (cold[0] + junction.leakage());
        Published.source(
                        "engine",
                        Kind.COMMON_PRACTICE,
                        "a silicon junction at constant current falls by about 2 mV/K; its reverse current grows some four to five times in 10 K by the diffusion law")
                .liesWithin("forward voltage, mV/K", -2.3, -1.5, 1e3 * change)
                .liesWithin("saturation current, 35 °C over 25 °C", 3.5, 6, saturationRatio);
    }

    private static double forward(Junction junction, double celsius, double current) {
        double low = 0, high = 1;
        double[] out = new double[JunctionLaw.WIDTH];
        for (int k = 0; k < 60; k++) {
            double middle = (low + high) / 2;
            new JunctionLaw(junction, celsius).evaluate(middle, out, 0);
            if (out[0] < current) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }

    @Test
    void a_jfet_has_a_point_that_temperature_does_not_move() {
        Junction gate = Junction.silicon(1e-14, 1, 0, 0.8, 0.5, 0);
        Jfet.Model model = new Jfet.Model(8e-3, -2.5, 0, gate, gate);
        double[] cool = new double[3], warm = new double[3];
        double still = Double.NaN;
        for (double vgs = -2.4; vgs < 0; vgs += 0.001) {
            ChannelLaw.of(model, 20).evaluate(vgs, 8, cool, 0);
            ChannelLaw.of(model, 30).evaluate(vgs, 8, warm, 0);
            if (warm[0] < cool[0]) {
                still = vgs;
                break;
            }
        }
        Published.source(
                        "engine",
                        Kind.COMMON_PRACTICE,
                        "a JFET's current stands still with temperature some 0.6 to 0.8 V above pinch-off")
                .liesWithin("v_gs − V_P there, V", 0.55, 0.85, still - model.pinchOff());
    }
}
