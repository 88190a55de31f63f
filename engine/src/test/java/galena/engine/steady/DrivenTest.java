package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.CurrentSource;
import galena.engine.part.Diode;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.proof.Kind;
import galena.proof.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Devices driven by a sine against the tables of their harmonics. */
class DrivenTest {
    private static final double VT = 1.380649e-23 * 298.15 / 1.602176634e-19;
    private static final double F = 1e6;

    /** Half a unit of the tables' ninth decimal, and what a certified harmonic may be off by: 0.02 dB. */
    private static final double PRINTED = 5e-10;

    private static final double CERTIFIED = 0.0023;

    /** A mean is not refined for by itself; at the corner of a square law it comes out this well, relative. */
    private static final double MEAN = 5e-6;

    /** Harmonics further down than this are not held to the accuracy. */
    private static final double FLOOR = 1e-4;

    private static final Bipolar.Model IDEAL =
            new Bipolar.Model(1e-16, 1e9, 1e9, Double.POSITIVE_INFINITY, 0, 0, 0, 0.7, 0.5, 0, 0.7, 0.5, 0);

    private static Waveforms drive(Circuit circuit, double fundamental) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        SteadyState state = new DrivenSteadyState(Accuracy.CERTIFIED).solve(point, fundamental);
        assertThat(state).as("%s", state).isInstanceOf(SteadyState.Found.class);
        SteadyState.Found found = (SteadyState.Found) state;
        assertThat(found.error().harmonicDecibels()).isLessThanOrEqualTo(Accuracy.CERTIFIED.harmonicDecibels());
        return found.waveforms();
    }

    private static VoltageSource direct(String name, String plus, String minus, double volts) {
        return new VoltageSource(name, plus, minus, new Wave.Direct(volts));
    }

    private static VoltageSource sine(String name, String plus, String minus, double offset, double peak) {
        return new VoltageSource(name, plus, minus, new Wave.Sine(offset, peak, F, 0.4));
    }

    private static void harmonic(Published source, String what, double expected, double fundamental, double found) {
        double size = Math.abs(expected);
        if (size < FLOOR * Math.abs(fundamental)) return;
        source.matches(what, size, found, CERTIFIED * size + PRINTED);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/exponential-junction.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void a_junction_under_a_sine_passes_the_harmonics_of_the_bessel_functions(
            double x, double lnI0, double i1, double i2, double i3, double i4, double i5) {
        Junction junction = Junction.silicon(1e-14, 1, 0, 0.7, 0.5, 0).withLeakage(0);
        Waveforms waveforms =
                drive(Circuit.of(sine("S", "a", "ground", 0.35, x * VT), new Diode("D", "a", "ground", junction)), F);
        double mean = -waveforms.meanCurrent("S");
        Published source = Published.source(
                "engine",
                Kind.TABLE,
                "K. K. Clarke and D. T. Hess, Communication Circuits (1971), exponential-junction tables: I_n(x)/I_0(x)");
        double[] table = {i1, i2, i3, i4, i5};
        for (int n = 1; n <= table.length; n++) {
            harmonic(
                    source, "I" + n + "/I0 at x " + x, table[n - 1], i1, waveforms.currentAmplitude("S", n) / mean / 2);
        }
        // mean current over that without the sine
        double still = 1e-14 * Math.expm1(0.35 / VT);
        source.matches("ln I0 at x " + x, lnI0, Math.log((mean + 1e-14) / (still + 1e-14)), 1e-7);
    }

    /** A constant mean current through a junction under a sine: the bias moves by V_T ln I₀, as at a gate or a detector. */
    @ParameterizedTest
    @CsvSource({"1, 0.235914359", "5, 3.304681", "10, 7.942972"})
    void a_coupled_junction_shifts_its_bias(double x, double lnI0) {
        double current = 1e-6, saturation = 1e-14;
        Junction junction = Junction.silicon(saturation, 1, 0, 0.7, 0.5, 0).withLeakage(0);
        Waveforms waveforms = drive(
                Circuit.of(
                        new CurrentSource("I", "ground", "a", new Wave.Direct(current)),
                        new Capacitor("C", "a", "ground", 1e-6),
                        new Diode("D", "a", "s", junction),
                        sine("S", "s", "ground", 0, x * VT)),
                F);
        double shift = Math.log1p(current / saturation) - waveforms.meanVoltage("a") / VT;
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "K. K. Clarke and D. T. Hess (1971): bias shift V_T ln I₀(x) of a capacitively coupled junction")
                .matches("shift over V_T at x " + x, lnI0, shift, 2e-5);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/differential-pair.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void a_differential_pair_has_its_odd_harmonics(double x, double a1, double a3, double a5) {
        double tail = 1e-3;
        Waveforms waveforms = drive(pair(x, 0, tail), F);
        Published source = Published.source(
                "engine",
                Kind.TABLE,
                "K. K. Clarke and D. T. Hess, Communication Circuits (1971), differential-pair tables a_n(x)");
        harmonic(source, "a1 at x " + x, a1, a1, waveforms.currentAmplitude("Vc", 1) / tail);
        harmonic(source, "a3 at x " + x, a3, a1, waveforms.currentAmplitude("Vc", 3) / tail);
        harmonic(source, "a5 at x " + x, a5, a1, waveforms.currentAmplitude("Vc", 5) / tail);
        assertThat(waveforms.currentAmplitude("Vc", 2) / tail)
                .as("even harmonics")
                .isLessThan(1e-6);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/differential-pair-degenerated.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void emitter_resistors_straighten_the_pair(double k, double x, double fundamental, double third) {
        double tail = 1e-3;
        Waveforms waveforms = drive(pair(x, k * 2 * VT / tail, tail), F);
        double first = 2 * waveforms.currentAmplitude("Vc", 1) / tail;
        Published source = Published.source(
                "engine",
                Kind.CLOSED_FORM,
                "K. K. Clarke and D. T. Hess (1971): pair with emitter resistors, v/V_T = 2 atanh y + 2ky");
        harmonic(source, "fundamental of y, k " + k + ", x " + x, fundamental, fundamental, first);
        harmonic(
                source,
                "third over fundamental, k " + k + ", x " + x,
                third,
                1,
                2 * waveforms.currentAmplitude("Vc", 3) / tail / first);
    }

    private static Circuit pair(double x, double resistance, double tail) {
        boolean direct = resistance == 0;
        Circuit pair = Circuit.of(
                direct("V", "rail", "ground", 9),
                direct("Vc", "rail", "c1", 0),
                direct("Vb", "b2", "ground", 4),
                sine("S", "b1", "b2", 0, x * VT),
                new Bipolar("Q1", Polarity.N, "c1", "b1", direct ? "tail" : "e1", IDEAL),
                new Bipolar("Q2", Polarity.N, "rail", "b2", direct ? "tail" : "e2", IDEAL),
                new CurrentSource("I", "tail", "ground", new Wave.Direct(tail)));
        return direct
                ? pair
                : pair.plus(new Resistor("R1", "e1", "tail", resistance), new Resistor("R2", "e2", "tail", resistance));
    }

    /** A JFET whose gate swings past cutoff: pulses of the square of a cosine's tip. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/conduction-angle.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void a_jfet_past_cutoff_conducts_in_pulses(int n, double phi, double i0, double i1, double i2, double i3) {
        if (n != 2) return; // no part has a broken straight line for a law
        double idss = 8e-3, pinchOff = -4, cosine = Math.cos(Math.toRadians(phi));
        Waveforms waveforms = drive(gateDriven(idss, pinchOff, pinchOff - cosine, 1), F);
        double peak = idss / (pinchOff * pinchOff) * (1 - cosine) * (1 - cosine);
        Published source = Published.source(
                "engine",
                Kind.CLOSED_FORM,
                "L. J. Sevin, Field-Effect Transistors (1965): square-law pulses of half-angle φ");
        source.matchesRelative("I0/Ip, φ " + phi, i0, -waveforms.meanCurrent("V") / peak, MEAN);
        harmonic(source, "I1/Ip, φ " + phi, i1, i1, waveforms.currentAmplitude("V", 1) / peak);
        harmonic(source, "I2/Ip, φ " + phi, i2, i1, waveforms.currentAmplitude("V", 2) / peak);
        harmonic(source, "I3/Ip, φ " + phi, i3, i1, waveforms.currentAmplitude("V", 3) / peak);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/jfet-square-law-sine.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void a_jfet_that_is_never_cut_off_makes_a_second_harmonic_and_no_third(
            double v0, double v1, String quantity, double value) {
        double idss = 8e-3, pinchOff = -4;
        Waveforms waveforms = drive(gateDriven(idss, pinchOff, v0 * pinchOff, v1 * -pinchOff), F);
        double found =
                switch (quantity) {
                    case "mean" -> -waveforms.meanCurrent("V");
                    case "fundamental" -> waveforms.currentAmplitude("V", 1);
                    default -> waveforms.currentAmplitude("V", 2);
                };
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "L. J. Sevin, Field-Effect Transistors (1965): (1 − v₀)² + v₁²/2, 2(1 − v₀)v₁, v₁²/2")
                .matchesRelative(quantity + " over I_DSS, v0 " + v0 + ", v1 " + v1, value, found / idss, 1e-6);
        assertThat(waveforms.currentAmplitude("V", 3) / idss).isLessThan(1e-7);
    }

    private static Circuit gateDriven(double idss, double pinchOff, double bias, double peak) {
        Junction gate = Junction.silicon(1e-20, 1, 0, 0.8, 0.5, 0).withLeakage(0);
        return Circuit.of(
                direct("V", "drain", "ground", 20),
                sine("S", "gate", "ground", bias, peak),
                new Jfet("Q", Polarity.N, "drain", "gate", "ground", new Jfet.Model(idss, pinchOff, 0, gate, gate)));
    }

    /** Linear circuits answer each of their sources as if it were alone. */
    @Test
    void a_linear_circuit_answers_two_tones_by_superposition() {
        double l = 100e-6, c = 250e-12, r = 40;
        Waveforms waveforms = drive(
                Circuit.of(
                        new VoltageSource("S", "in", "m", new Wave.Sine(0, 1, F, 0.3)),
                        new VoltageSource("T", "m", "ground", new Wave.Sine(2, 0.5, 3 * F, -1)),
                        new Coil("L", "in", "out", l, r, 0, 0),
                        new Capacitor("C", "out", "ground", c)),
                F);
        Published source = Published.source(
                "engine", Kind.CLOSED_FORM, "series resonance, F. E. Terman, Radio Engineers' Handbook (1943), sec. 3");
        source.matchesRelative(
                "capacitor voltage at the first tone",
                gain(r, l, c, F),
                waveforms.voltageAmplitude("out", "ground", 1),
                1e-6);
        source.matchesRelative(
                "capacitor voltage at the third",
                0.5 * gain(r, l, c, 3 * F),
                waveforms.voltageAmplitude("out", "ground", 3),
                1e-4);
        assertThat(waveforms.voltageAmplitude("out", "ground", 2)).isLessThan(1e-6);
        assertThat(waveforms.powerImbalance()).isLessThan(Accuracy.CERTIFIED.powerImbalance());
    }

    private static double gain(double r, double l, double c, double frequency) {
        double w = 2 * Math.PI * frequency;
        return 1 / Math.hypot(1 - w * w * l * c, w * c * r);
    }

    @Test
    void a_fundamental_that_does_not_divide_the_sources_is_refused() {
        Circuit circuit = Circuit.of(sine("S", "a", "ground", 0, 1), new Resistor("R", "a", "ground", 50));
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new DrivenSteadyState(Accuracy.LIVE).solve(point, 0.7 * F))
                .withMessageContaining("fundamental");
    }
}
