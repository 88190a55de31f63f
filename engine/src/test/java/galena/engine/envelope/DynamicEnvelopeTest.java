package galena.engine.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Laws of modulated oscillations. */
class DynamicEnvelopeTest {
    private static SteadyState.Found carrier(Circuit circuit) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        return (SteadyState.Found) new SteadyOscillation(Accuracy.CERTIFIED)
                .solve(point, Startup.readiest(point).orElseThrow());
    }

    /** The transmitter with its audio through 10 µF: a memory of a tenth of a second. */
    private static Circuit transmitter() {
        List<Part> parts = new ArrayList<>(Circuits.transmitter().parts());
        parts.add(new VoltageSource("A", "audio", "ground", new Wave.Direct(0)));
        parts.add(new Resistor("Rs1", "audio", "line", 10e3));
        parts.add(new Capacitor("Ca", "line", "mod", 10e-6));
        return Circuit.of(parts);
    }

    private static double peak(double[][] z) {
        double most = 0;
        for (int k = 0; k < z[0].length; k++) most = Math.max(most, Math.hypot(z[0][k], z[1][k]));
        return most;
    }

    /** Fifty hertz beside 10 µF take no more Newton steps than a kilohertz does, and nothing is waited for. */
    @Test
    void slow_audio_through_a_large_capacitor_costs_what_fast_audio_costs() {
        SteadyState.Found carrier = carrier(transmitter());
        DynamicEnvelope solver = new DynamicEnvelope(1e-4, Watch.NONE);
        Envelope slow = (Envelope) solver.solve(carrier, new SlowSource("A", 1, 50));
        Envelope fast = (Envelope) solver.solve(carrier, new SlowSource("A", 1, 1000));
        assertThat(slow.iterations()).isLessThanOrEqualTo(fast.iterations() + 3);
        assertThat(slow.error().orElseThrow().amplitude()).isLessThan(1e-4);
        // far above the corner of 10 µF and far below the tank's width both depths are nearly one
        assertThat(peak(slow.current("Lo", 1)))
                .isCloseTo(peak(fast.current("Lo", 1)), within(0.01 * peak(fast.current("Lo", 1))));
    }

    /** The slowest ripple on a battery does what a change of the battery does. */
    @Test
    void the_slowest_ripple_is_a_derivative() {
        Circuit circuit = Circuits.groundedGateColpitts();
        SteadyState.Found carrier = carrier(circuit);
        int coil = carrier.waveforms().equations().current("Lt").orElseThrow();
        double delta = 0.02;
        SteadyState.Found[] sides = new SteadyState.Found[2];
        for (int k = 0; k < 2; k++) {
            Equations moved =
                    Equations.of(circuit.with(new Battery("B", "rail", "ground", 9 + (2 * k - 1) * delta, 2)));
            sides[k] = (SteadyState.Found) new SteadyOscillation(Accuracy.CERTIFIED).solveNear(moved, carrier);
        }
        double frequency = (sides[1].coarser().frequency() - sides[0].coarser().frequency()) / (2 * delta);
        double amplitude = (sides[1].coarser().currentAmplitude("Lt", 1)
                        - sides[0].coarser().currentAmplitude("Lt", 1))
                / (2 * delta * carrier.coarser().currentAmplitude("Lt", 1));
        Response.Modulation found = new Sidebands(carrier, "B").at(1e-3).modulation(coil, 0, 1);
        // a square law bends over a step of 20 mV by a thousandth
        assertThat(found.amplitude()[0]).isCloseTo(amplitude, within(2e-3 * Math.abs(amplitude)));
        assertThat(found.frequency()[0]).isCloseTo(frequency, within(2e-3 * Math.abs(frequency) + 0.01));
    }

    @Test
    void a_long_solve_stops_when_told() {
        SteadyState.Found carrier = carrier(transmitter());
        assertThatThrownBy(() ->
                        new DynamicEnvelope(1e-4, new Watch(() -> true)).solve(carrier, new SlowSource("A", 1, 1000)))
                .isInstanceOf(CancellationException.class);
    }

    /** A long-tailed pair that modulates itself through its tail, so deep that it stops for part of every millisecond. */
    @Tag("long")
    @Test
    void what_quits_in_the_trough_is_said_and_followed_in_time() {
        Circuit circuit = Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                Coil.ofQ("Lt", "rail", "tank", 10e-6, 50, 1e6),
                new Resistor("Rt", "rail", "tank", 390),
                new Capacitor("Ct", "tank", "ground", 2.2e-9),
                new Bipolar("Q1", Polarity.N, "rail", "tank", "tail", Circuits.npn()),
                new Bipolar("Q2", Polarity.N, "tank", "rail", "tail", Circuits.npn()),
                new Resistor("Re", "tail", "foot", 8.2e3),
                new VoltageSource("A", "foot", "ground", new Wave.Direct(0)));
        SteadyState.Found carrier = carrier(circuit);
        SlowSource tone = new SlowSource("A", 6, 1000);
        EnvelopeAnswer answer = new DynamicEnvelope(1e-3, Watch.NONE).solve(carrier, tone);
        assertThat(answer).isInstanceOf(EnvelopeAnswer.NotFound.class);
        assertThat(((EnvelopeAnswer.NotFound) answer).reason()).isEqualTo(EnvelopeAnswer.Reason.QUITS);
        EnvelopeRun run = (EnvelopeRun) new EnvelopeInTime(20_000, Watch.NONE).run(carrier, tone);
        assertThat(run.repeats()).isLessThan(0.01);
        double[][] z = run.current("Lt");
        double lowest = Double.POSITIVE_INFINITY,
                unmodulated = carrier.waveforms().currentAmplitude("Lt", 1);
        for (int k = 0; k < z[0].length; k++) lowest = Math.min(lowest, Math.hypot(z[0][k], z[1][k]));
        assertThat(lowest).isLessThan(0.02 * unmodulated);
        // what can be had both ways is the same
        SlowSource milder = new SlowSource("A", 4, 1000);
        Envelope direct = (Envelope) new DynamicEnvelope(1e-3, Watch.NONE).solve(carrier, milder);
        EnvelopeRun followed = (EnvelopeRun) new EnvelopeInTime(20_000, Watch.NONE).run(carrier, milder);
        assertThat(peak(followed.current("Lt"))).isCloseTo(peak(direct.current("Lt", 1)), within(2e-3 * unmodulated));
    }

    @Test
    void a_slow_period_with_too_many_cycles_is_not_followed() {
        SteadyState.Found carrier = carrier(Circuits.groundedGateColpitts());
        EnvelopeAnswer answer = new EnvelopeInTime(1000, Watch.NONE).run(carrier, new SlowSource("B", 0.1, 1000));
        assertThat(((EnvelopeAnswer.NotFound) answer).reason()).isEqualTo(EnvelopeAnswer.Reason.TOO_LONG);
    }
}
