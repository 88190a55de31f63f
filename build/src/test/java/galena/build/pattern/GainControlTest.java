package galena.build.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.build.folder.Builds;
import galena.build.folder.Overlay;
import galena.build.source.BadInputException;
import galena.build.wiring.CircuitOf;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A gain-controlled amplifier, transistor by transistor, against its published equations: an input pair whose two currents are each
 * shared by a steering pair. The pattern builds one of the two halves.
 */
class GainControlTest {
    private static final String DAVIS = "W. R. Davis and J. E. Solomon, IEEE J. Solid-State Circuits SC-3, 408 (1968)";
    private static final double THERMAL = 1.380649e-23 * 300 / 1.602176634e-19;
    private static final double TAIL = 1e-3;
    private static final double MATCHED = 1e5;

    /** Leakage of 1 pS at some volts across each of the junctions that meet, over the tail current. */
    private static final double LEAKAGE = 5e-8;

    /** Base currents, which the equations leave out: 1/β at each of two transistors in series. */
    private static final double BASE_CURRENTS = 3e-5;

    /** Of the audio's cosine; the fifth harmonic and its kin fall short of it by far. */
    private static final int PHASES = 32;

    /**
     * @param control V, base of the dumping side less base of the side that leads to the load
     * @param input V between the inputs
     * @param series Ω at either base of the steering pairs
     */
    private static String amplifier(double control, double input, double series, double beta) {
        String npn = String.format(Locale.ROOT, "npn: {saturation_current: 1 fA, beta: %.6f}", beta);
        return String.format(
                Locale.ROOT,
                """
                galena: 1
                parts:
                  Vs: {voltage: 9 V, plus: rail, minus: ground}
                  It: {current: 1 mA, from: tail, to: ground}
                  Vp: {voltage: %2$.12f V, plus: plus, minus: ground}
                  Vm: {voltage: 1.6 V, plus: minus, minus: ground}
                  Q2: {%1$s, collector: left, base: plus, emitter: tail}
                  Q3: {%1$s, collector: right, base: minus, emitter: tail}
                  Q4: {%1$s, collector: outa, base: ref, emitter: left}
                  Q5: {%1$s, collector: rail, base: gain, emitter: left}
                  Q6: {%1$s, collector: rail, base: gain, emitter: right}
                  Q7: {%1$s, collector: outb, base: ref, emitter: right}
                  Vr: {voltage: 3.6 V, plus: reference, minus: ground}
                  Vg: {voltage: %3$.12f V, plus: pin, minus: ground}
                  R8: {resistor: %4$.6f Ω, from: reference, to: ref}
                  R9: {resistor: %4$.6f Ω, from: pin, to: gain}
                  Va: {voltage: 8 V, plus: outa, minus: ground}
                  Vb: {voltage: 8 V, plus: outb, minus: ground}
                """,
                npn,
                1.6 + input,
                3.6 + control,
                Math.max(series, 1));
    }

    private static OperatingPoint.Found solved(String text) throws BadInputException {
        Overlay warm = Overlay.NONE.atTemperature(300 - 273.15);
        Equations equations =
                Equations.of(CircuitOf.build(Builds.read(text), warm).circuit());
        return (OperatingPoint.Found) OperatingPointLadder.climb(equations);
    }

    /** Currents into both loads (A). */
    private static double[] loads(double control, double input, double series, double beta) throws BadInputException {
        OperatingPoint.Found point = solved(amplifier(control, input, series, beta));
        return new double[] {-point.current("Va"), -point.current("Vb")};
    }

    private static double share(double control, double series, double beta) throws BadInputException {
        double[] loads = loads(control, 0, series, beta);
        return (loads[0] + loads[1]) / TAIL;
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/gain-control.csv", numLinesToSkip = 5, encoding = "UTF-8")
    void steers_and_modulates_as_published(
            String quantity, Double f0, double x, double value, Double mean, Double second, Double third)
            throws Exception {
        Published source = Published.source("build", Kind.CLOSED_FORM, DAVIS + ", current steering");
        if (quantity.equals("share")) {
            double found = share(x * THERMAL, 0, MATCHED);
            source.matches("share of the current at the load, u = " + x, value, found, LEAKAGE + BASE_CURRENTS * value);
            return;
        }
        double rest = Math.log(1 / f0 - 1);
        double[] sums = new double[4];
        for (int k = 0; k < PHASES; k++) {
            double angle = 2 * Math.PI * (k + 0.5) / PHASES;
            double f = share((rest + x * Math.cos(angle)) * THERMAL, 0, MATCHED);
            for (int h = 0; h < sums.length; h++) sums[h] += f * Math.cos(h * angle) * (h == 0 ? 1 : 2) / PHASES;
        }
        String at = ", f0 = " + f0 + ", audio of " + x + " VT";
        double fundamental = Math.abs(sums[1]);
        source.matchesRelative("mean envelope" + at, mean, sums[0], 5e-5)
                .matchesRelative("depth of the fundamental" + at, value, fundamental / sums[0], 5e-5)
                .matches("second harmonic (%)" + at, second, 100 * Math.abs(sums[2]) / fundamental, 2e-3)
                .matches("third harmonic (%)" + at, third, 100 * Math.abs(sums[3]) / fundamental, 2e-3);
    }

    /** i = f·I·tanh(v/2VT): the share multiplies what the input pair makes, whatever it makes. */
    @ParameterizedTest
    @CsvSource({"0, 0.01", "1, 0.02", "2, -0.04", "-1.5, 0.08", "3, -0.15"})
    void the_output_is_the_input_pairs_current_times_the_share(double u, double volts) throws Exception {
        double[] loads = loads(u * THERMAL, volts, 0, MATCHED);
        double expected = Math.tanh(volts / (2 * THERMAL)) / (1 + Math.exp(u));
        Published.source("build", Kind.CLOSED_FORM, DAVIS + ", transconductance of the whole")
                .matches(
                        "differential output over tail current, u = " + u + ", input " + volts + " V",
                        expected,
                        (loads[0] - loads[1]) / TAIL,
                        LEAKAGE + BASE_CURRENTS);
    }

    /** Far into cut-off the gain falls by 8.686/VT dB per volt. */
    @Test
    void gain_falls_by_a_third_of_a_decibel_per_millivolt() throws Exception {
        double fall = 20 * Math.log10(share(7 * THERMAL, 0, MATCHED) / share(8 * THERMAL, 0, MATCHED));
        Published.source("build", Kind.CLOSED_FORM, DAVIS + ", gain control far into cut-off")
                .matches("gain slope at 300 K (dB/mV)", 0.335985, fall / (1e3 * THERMAL), 5e-4);
    }

    /**
     * With R at both bases: V = u·VT + R·(1 − 2f)·I/β. The base currents at the input pair and in the steering pairs take 1/β of I
     * each, which the equation leaves out.
     */
    @ParameterizedTest
    @CsvSource({"-0.2, 60", "-0.1, 100", "0, 100", "0.05, 60", "0.15, 100", "0.25, 150"})
    void resistors_at_the_bases_stretch_the_curve_of_the_gain_pin(double volts, double beta) throws Exception {
        double series = 60e3, stretch = series * TAIL / beta;
        double low = 0, high = 1;
        for (int k = 0; k < 60; k++) {
            double f = (low + high) / 2;
            if (THERMAL * Math.log(1 / f - 1) + stretch * (1 - 2 * f) > volts) low = f;
            else high = f;
        }
        Published.source("build", Kind.CLOSED_FORM, DAVIS + ", control pin through a resistor")
                .matches(
                        "share at " + volts + " V through 60 kΩ, β " + beta,
                        low,
                        share(volts, series, beta),
                        1.5 / beta);
    }

    /** What the pattern's resistors are there for: 80 % by a voltage costs 6.7 % of third harmonic, through them less than half. */
    @Test
    void through_resistors_it_steers_in_proportion() throws Exception {
        double by = third(0), through = third(100e3);
        assertThat(by)
                .isCloseTo(0.066832, within(1e-4)); // audio of 2 VT: the published row for half the current and x = 2
        assertThat(through).isLessThan(by / 2.5);
    }

    /** Third harmonic over the fundamental of a swing whose crest and trough are those of 2 VT by a voltage. */
    private static double third(double series) throws BadInputException {
        double beta = 300, peak = 2 * THERMAL + series * TAIL / beta * Math.tanh(1);
        double first = 0, third = 0;
        for (int k = 0; k < PHASES; k++) {
            double angle = 2 * Math.PI * (k + 0.5) / PHASES;
            double f = share(peak * Math.cos(angle), series, beta);
            first += f * Math.cos(angle);
            third += f * Math.cos(3 * angle);
        }
        return Math.abs(third / first);
    }
}
