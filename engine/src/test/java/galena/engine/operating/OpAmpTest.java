package galena.engine.operating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.part.OpAmp;
import galena.engine.part.Part;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.startup.Linearised;
import galena.engine.steady.Accuracy;
import galena.engine.steady.DrivenSteadyState;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The op-amp against the closed forms of its trade. */
class OpAmpTest {
    private static final double GAIN = 1e5;
    private static final double GBW = 1e6;
    private static final double SLEW = 0.5e6;
    private static final double LOW = 1.2;
    private static final double HIGH = 1.5;
    private static final OpAmp.Model MODEL = new OpAmp.Model(GAIN, GBW, SLEW, LOW, HIGH, 75, 20e-3, 1.5e-3, 0, 1e12);
    private static final Published FEEDBACK = Published.source(
            "engine",
            Kind.CLOSED_FORM,
            "Feedback amplifier of one pole: gain A0/(1 + A0·b), bandwidth GBW·b·(1 + 1/(A0·b)), as in J. E. Solomon,"
                    + " IEEE J. Solid-State Circuits SC-9 (1974) 314");
    private static final Published FULL_POWER = Published.source(
            "engine",
            Kind.CLOSED_FORM,
            "Full-power bandwidth SR/(2π·Vp), and the triangle of peak SR/(4f) far above it");

    /** The output resistance against the load, 75 Ω in 10 kΩ, over a loop gain of thousands: below this. */
    private static final double LOADING = 2e-5;

    /** What the tail of the hyperbolic tangent leaves of the corners of a triangle driven twenty times its slewing input. */
    private static final double CORNERS = 0.02;

    private static List<Part> amplifier(OpAmp.Model model, double times, Wave in) {
        List<Part> parts = new ArrayList<>(List.of(
                new VoltageSource("B", "p", "ground", new Wave.Direct(6)),
                new VoltageSource("N", "ground", "n", new Wave.Direct(6)),
                new VoltageSource("S", "in", "ground", in),
                new OpAmp("U", "in", "back", "out", "p", "n", model),
                new Resistor("Rf", "out", "back", times == 1 ? 1 : (times - 1) * 1e3),
                new Resistor("RL", "out", "ground", 10e3)));
        parts.add(new Resistor("Rg", "back", "ground", times == 1 ? 1e12 : 1e3));
        return parts;
    }

    private static OperatingPoint.Found rest(List<Part> parts) {
        return (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(Circuit.of(parts)));
    }

    private static double magnitude(OperatingPoint.Found rest, double frequency) {
        Equations equations = rest.equations();
        double[][] x = Linearised.at(equations, rest.x()).respond(frequency, equations.unitDeparture("S"));
        int out = equations.net("out");
        return Math.hypot(x[0][out], x[1][out]);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 11, 101})
    void closed_loop_gain_and_bandwidth_are_those_of_one_pole(double times) {
        OperatingPoint.Found rest = rest(amplifier(MODEL, times, new Wave.Sine(0, 1, 1e3, 0)));
        double back = 1 / times, flat = GAIN / (1 + GAIN * back), corner = GBW * back * (1 + 1 / (GAIN * back));
        FEEDBACK.matchesRelative("gain of " + times + " times", flat, magnitude(rest, 1e-3), LOADING * times);
        // 75 Ω and the network beside 10 kΩ share the output; the loop's gain at its corner is 1, so the share shows
        // there
        double network = times == 1 ? 10e3 : 1 / (1 / 10e3 + 1 / (times * 1e3));
        double shared = network / (network + 75);
        double lowered = GBW * shared * back;
        FEEDBACK.matchesRelative(
                "3 dB down at the bandwidth of " + times + " times",
                flat / Math.sqrt(2),
                magnitude(rest, lowered * (1 + 1 / (GAIN * back))),
                2e-4 + LOADING * times);
        assertThat(lowered).isLessThan(corner);
    }

    private static Waveforms follow(double peak, double frequency) {
        Circuit circuit = Circuit.of(amplifier(MODEL, 1, new Wave.Sine(0, peak, frequency, 0)));
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        SteadyState state = new DrivenSteadyState(Accuracy.CERTIFIED).solve(point, frequency);
        assertThat(state).as("%s", state).isInstanceOf(SteadyState.Found.class);
        return ((SteadyState.Found) state).waveforms();
    }

    @Test
    void the_full_power_bandwidth_is_where_slewing_begins() {
        double peak = 3, full = SLEW / (2 * Math.PI * peak);
        double below = follow(peak, 0.3 * full).voltageAmplitude("out", "ground", 3) / peak;
        Waveforms beyond = follow(peak, 5 * full);
        FULL_POWER.liesWithin("third harmonic at 0.3 of the full-power bandwidth", 0, 2e-3, below);
        double triangle = SLEW / (4 * 5 * full);
        double first = 8 / (Math.PI * Math.PI) * triangle;
        FULL_POWER.matchesRelative(
                "fundamental of the triangle at 5 times it, V",
                first,
                beyond.voltageAmplitude("out", "ground", 1),
                CORNERS);
        FULL_POWER.matchesRelative(
                "its third harmonic, V", first / 9, beyond.voltageAmplitude("out", "ground", 3), 5 * CORNERS);
    }

    @Test
    void an_overdriven_output_stops_short_of_its_rails() {
        Published swing = Published.source(
                "engine", Kind.CLOSED_FORM, "An unloaded output that is overdriven stands at its rail less the swing");
        for (double drive : new double[] {-1, 1}) {
            List<Part> parts = List.of(
                    new VoltageSource("B", "p", "ground", new Wave.Direct(9)),
                    new VoltageSource("S", "in", "ground", new Wave.Direct(2 + drive)),
                    new VoltageSource("R", "ref", "ground", new Wave.Direct(2)),
                    new OpAmp("U", "in", "ref", "out", "p", "ground", MODEL),
                    new Resistor("RL", "out", "ground", 1e9));
            double expected = drive > 0 ? 9 - HIGH : LOW;
            // the room between the stops is widened by 50 mV squared over itself; little else shows
            swing.matches(
                    "output driven by " + drive + " V", expected, rest(parts).voltage("out"), 1e-3);
        }
    }

    @Test
    void the_output_current_is_limited_and_comes_from_the_rail_that_gives_it() {
        List<Part> parts = new ArrayList<>(amplifier(MODEL, 1, new Wave.Direct(3)));
        parts.set(5, new Resistor("RL", "out", "ground", 10));
        OperatingPoint.Found rest = rest(parts);
        double out = rest.voltage("out") / 10;
        assertThat(out).isBetween(0.9 * 20e-3, 20e-3);
        int supply = rest.equations().current("B").orElseThrow();
        assertThat(-rest.x()[supply]).isCloseTo(out + 1.5e-3, org.assertj.core.api.Assertions.within(0.3e-3));
    }

    @Test
    void a_bias_current_shifts_the_output_by_its_drop() {
        OpAmp.Model biased = new OpAmp.Model(GAIN, GBW, SLEW, LOW, HIGH, 75, 20e-3, 1.5e-3, 80e-9, 1e12);
        List<Part> parts = List.of(
                new VoltageSource("B", "p", "ground", new Wave.Direct(9)),
                new VoltageSource("S", "at", "ground", new Wave.Direct(4)),
                new Resistor("Rs", "at", "in", 1e6),
                new OpAmp("U", "in", "out", "out", "p", "ground", biased));
        assertThat(rest(parts).voltage("out")).isCloseTo(4 - 0.08, org.assertj.core.api.Assertions.within(1e-3));
    }

    @Test
    void values_that_no_op_amp_has_are_refused() {
        assertThatThrownBy(() -> new OpAmp.Model(1e5, 0, 1, 0, 0, 75, 1, 0, 0, 1))
                .hasMessageContaining("gain-bandwidth")
                .hasMessageContaining("above zero");
    }
}
