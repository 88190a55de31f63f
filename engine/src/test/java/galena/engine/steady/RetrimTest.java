package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.Circuits;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Trimmer;
import galena.engine.startup.Startup;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Turning a trimmer to a frequency: from anywhere to anywhere in its range, and to the stop where the range ends. */
class RetrimTest {
    private static final Circuit CIRCUIT = Circuits.transmitter();
    private static final double POSITION = 1e-5;

    private static SteadyState.Found settle(Circuit circuit) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        return (SteadyState.Found) new SteadyOscillation(Accuracy.CERTIFIED)
                .solve(point, Startup.readiest(point).orElseThrow());
    }

    private static Circuit at(double position) {
        return CIRCUIT.with(((Trimmer) CIRCUIT.part("Ct").orElseThrow()).at(position));
    }

    private static Retrim.Outcome trim(double from, double wanted) {
        return new Retrim(Accuracy.CERTIFIED, Watch.NONE)
                .toFrequency(position -> Equations.of(at(position)), 0, 1, from, settle(at(from)), wanted);
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "1, 0", "0, 0.02", "1, 0.97", "0.5, 0.51", "0.3, 0.9", "0.02, 0", "0.99, 1"})
    void leads_from_any_position_to_any_other(double from, double to) {
        double wanted = settle(at(to)).waveforms().frequency();
        Retrim.Outcome outcome = trim(from, wanted);
        assertThat(outcome).isInstanceOf(Retrim.Trimmed.class);
        Retrim.Trimmed there = (Retrim.Trimmed) outcome;
        assertThat(there.parameter()).isCloseTo(to, within(POSITION));
        assertThat(there.state().waveforms().frequency())
                .isCloseTo(wanted, within(2 * Accuracy.CERTIFIED.frequency() * wanted));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.01, 0.5, 1})
    void a_frequency_above_the_range_ends_at_the_open_stop_and_one_below_at_the_closed(double from) {
        double open = settle(at(0)).waveforms().frequency(),
                closed = settle(at(1)).waveforms().frequency();
        Retrim.OutOfRange above = (Retrim.OutOfRange) trim(from, open * 1.001);
        assertThat(above.stop()).isZero();
        assertThat(above.state().waveforms().frequency()).isCloseTo(open, within(1e-6 * open));
        assertThat(above)
                .hasToString(String.format(
                        java.util.Locale.ROOT, "out of range: at the stop the frequency is %.6g Hz", open));
        Retrim.OutOfRange below = (Retrim.OutOfRange) trim(from, closed * 0.7);
        assertThat(below.stop()).isEqualTo(1);
        assertThat(below.state().waveforms().frequency()).isCloseTo(closed, within(1e-6 * closed));
    }

    /** The same through a follower that keeps its arrays, from an orbit of another copy of the circuit. */
    @Test
    void a_follower_trims_one_copy_after_another() {
        SteadyState.Found known = settle(CIRCUIT);
        Follower follower = new Follower(Equations.of(CIRCUIT), known.site(), Accuracy.CERTIFIED, Watch.NONE);
        double wanted = known.waveforms().frequency();
        for (double factor : new double[] {0.99, 1.01, 1.004}) {
            Circuit copy =
                    CIRCUIT.with(((galena.engine.part.Coil) CIRCUIT.part("Lt").orElseThrow()).scaled(factor, 1));
            Trimmer trimmer = (Trimmer) copy.part("Ct").orElseThrow();
            Followed asSet =
                    follower.follow(Equations.of(copy), Followed.of(known)).orElseThrow();
            Retrim.Outcome outcome = follower.toFrequency(
                    position -> Equations.of(copy.with(trimmer.at(position))), 0, 1, trimmer.position(), asSet, wanted);
            Retrim.Trimmed there = (Retrim.Trimmed) outcome;
            SteadyState.Found cold = settle(copy.with(trimmer.at(there.parameter())));
            assertThat(cold.waveforms().frequency()).isCloseTo(wanted, within(3e-7 * wanted));
            assertThat(there.state().waveforms().amplitude(1, 0, 1))
                    .isCloseTo(cold.waveforms().amplitude(1, 0, 1), within(1e-5));
        }
    }

    private static Retrim.Outcome turn(OrbitFigure figure, double from, double wanted) {
        return new Retrim(Accuracy.CERTIFIED, Watch.NONE)
                .to(figure, position -> Equations.of(at(position)), 0, 1, from, settle(at(from)), wanted);
    }

    private static OrbitFigure tankVoltage() {
        Equations equations = Equations.of(CIRCUIT);
        return OrbitFigure.amplitude(equations.net("drain"), equations.net("rail"), 1);
    }

    /** The imposed figure is the amplitude or a standing voltage instead: the position is the one from which it was read. */
    @ParameterizedTest
    @CsvSource({"0.1, 0.8", "0.9, 0.2", "0.5, 0.52"})
    void an_imposed_amplitude_is_found_again(double from, double to) {
        double wanted = tankVoltage().of(settle(at(to)).waveforms());
        Retrim.Outcome outcome = turn(tankVoltage(), from, wanted);
        assertThat(outcome).isInstanceOf(Retrim.Trimmed.class);
        Retrim.Trimmed there = (Retrim.Trimmed) outcome;
        assertThat(tankVoltage().of(there.state().waveforms())).isCloseTo(wanted, within(1e-5 * wanted));
        assertThat(tankVoltage().of(settle(at(there.parameter())).waveforms()))
                .isCloseTo(wanted, within(1e-5 * wanted));
    }

    @ParameterizedTest
    @CsvSource({"0.1, 0.8", "0.9, 0.2"})
    void an_imposed_mean_is_found_again(double from, double to) {
        OrbitFigure source = OrbitFigure.mean(Equations.of(CIRCUIT).net("source"), 0);
        double wanted = source.of(settle(at(to)).waveforms());
        Retrim.Outcome outcome = turn(source, from, wanted);
        assertThat(outcome).isInstanceOf(Retrim.Trimmed.class);
        assertThat(source.of(((Retrim.Trimmed) outcome).state().waveforms())).isCloseTo(wanted, within(1e-5));
    }

    /** A tuned output is largest in the middle of its trimmer's range: more than that is had at no position. */
    @Test
    void an_amplitude_above_the_peak_of_an_output_tank_turns_back_at_the_peak() {
        Trimmer output = (Trimmer) CIRCUIT.part("Co").orElseThrow();
        Family family = position -> Equations.of(CIRCUIT.with(output.at(position)));
        int current = Equations.of(CIRCUIT).current("Lo").orElseThrow();
        OrbitFigure figure = OrbitFigure.amplitude(current, 0, 1);
        double best = 0, where = 0;
        SteadyState.Found known = settle(CIRCUIT.with(output.at(0)));
        for (int k = 0; k <= 50; k++) {
            double here = figure.of(settle(CIRCUIT.with(output.at(k / 50.0))).waveforms());
            if (here > best) {
                best = here;
                where = k / 50.0;
            }
        }
        assertThat(where).isBetween(0.05, 0.95);
        Retrim.Outcome outcome =
                new Retrim(Accuracy.CERTIFIED, Watch.NONE).to(figure, family, 0, 1, 0, known, 1.5 * best);
        assertThat(outcome).isInstanceOf(Retrim.TurnsBack.class);
        Retrim.TurnsBack peak = (Retrim.TurnsBack) outcome;
        assertThat(peak.parameter()).isCloseTo(where, within(0.02));
        assertThat(peak.value()).isGreaterThanOrEqualTo(best * (1 - 1e-5));
        Retrim.Outcome below =
                new Retrim(Accuracy.CERTIFIED, Watch.NONE).to(figure, family, 0, 1, 0, known, 0.7 * best);
        assertThat(below).isInstanceOf(Retrim.Trimmed.class);
        assertThat(figure.of(((Retrim.Trimmed) below).state().waveforms())).isCloseTo(0.7 * best, within(1e-4 * best));
    }
}
