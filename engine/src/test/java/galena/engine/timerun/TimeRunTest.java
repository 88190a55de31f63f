package galena.engine.timerun;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import galena.engine.Circuits;
import galena.engine.HardCases;
import galena.engine.Kicks;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.AllOrbits;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.engine.steady.Waveforms;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class TimeRunTest {
    /** What the step control's tolerance of 1e-3 leaves over some hundred cycles. */
    private static final double AMPLITUDE = 1e-4;

    private static final double FREQUENCY = 3e-6;

    private static OperatingPoint.Found point(Circuit circuit) {
        return (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
    }

    /** Circuit and the cycles after which its slowest exponent has died away. */
    static Stream<Arguments> oscillators() {
        return Stream.of(
                Arguments.of(Circuits.groundedGateColpitts(), 100),
                Arguments.of(Circuits.gateLeakHartley(), 250),
                Arguments.of(Circuits.bipolarColpitts(), 700));
    }

    @ParameterizedTest
    @MethodSource("oscillators")
    void from_switch_on_the_amplitude_and_frequency_are_reached_that_were_found_without_waiting(
            Circuit circuit, double cycles) {
        OperatingPoint.Found point = point(circuit);
        Startup startup = Startup.readiest(point).orElseThrow();
        Waveforms steady =
                ((SteadyState.Found) new SteadyOscillation(Accuracy.CERTIFIED).solve(point, startup)).waveforms();
        int a = startup.site().a(), b = startup.site().b();
        double[] kick = Kicks.along(point.equations(), startup.mode(), point.x(), 0.01);
        AmplitudeRun run =
                AmplitudeRun.run(point.equations(), point.x(), kick, a, b, steady.frequency(), cycles, Watch.NONE);
        assertThat(run.end()).isEqualTo(TimeRun.End.REACHED);
        double last = run.peaks().get(run.peaks().size() - 1);
        assertThat(last / highest(steady, a, b, point.x()[a] - point.x()[b]) - 1)
                .isBetween(-AMPLITUDE, AMPLITUDE);
        assertThat(run.frequency().orElseThrow() / steady.frequency() - 1).isBetween(-FREQUENCY, FREQUENCY);
        assertThat(run.steadiness()).isGreaterThan(1 - 1e-3);
    }

    private static double highest(Waveforms steady, int a, int b, double rest) {
        double highest = 0;
        int points = 4000;
        for (int k = 0; k < points; k++) {
            double phase = (double) k / points;
            highest = Math.max(highest, steady.at(a, phase) - steady.at(b, phase) - rest);
        }
        return highest;
    }

    /** Voltage falls at R/2L, energy twice as fast. */
    @Test
    void a_struck_tank_loses_its_energy_as_the_formula_says() {
        double henries = 180e-6, farads = 140e-12, ohms = 12;
        Equations equations = Equations.of(Circuit.of(
                new Coil("L", "a", "ground", henries, ohms, 0, 0), new Capacitor("C", "a", "ground", farads)));
        double[] rest = new double[equations.stride()], kick = new double[equations.stride()];
        kick[equations.net("a")] = farads; // one volt on the capacitor
        double decay = ohms / (2 * henries);
        double angular = Math.sqrt(1 / (henries * farads) - decay * decay);
        AmplitudeRun run =
                AmplitudeRun.run(equations, rest, kick, equations.net("a"), 0, angular / (2 * Math.PI), 45, Watch.NONE);
        int last = run.peaks().size() - 1, first = 5;
        double seconds = run.times().get(last) - run.times().get(first);
        double kept = Math.pow(run.peaks().get(last) / run.peaks().get(first), 2);
        Published.source("engine", Kind.CLOSED_FORM, "energy of a coil and capacitor with series loss: exp(−t R/L)")
                .matchesRelative(
                        "energy kept in time after " + (last - first) + " cycles",
                        Math.exp(-2 * decay * seconds),
                        kept,
                        1e-3)
                .matchesRelative(
                        "ringing frequency in time, √(1/LC − (R/2L)²)/2π",
                        angular / (2 * Math.PI),
                        run.frequency().orElseThrow(),
                        1e-6);
    }

    /** The Hartley's gate conducts with a time constant of a fraction of a nanosecond in every cycle of a microsecond. */
    @Test
    void gate_conduction_a_thousand_times_faster_than_the_carrier_does_not_stall_the_run() {
        Equations equations = Equations.of(Circuits.gateLeakHartley());
        OperatingPoint.Found point = point(Circuits.gateLeakHartley());
        Startup startup = Startup.readiest(point).orElseThrow();
        double[] kick = Kicks.along(equations, startup.mode(), point.x(), 0.1);
        int[] steps = {0};
        double[] forward = {0};
        int gate = equations.net("gate"), tap = equations.net("tap");
        TimeRun.End end = new TimeRun(equations, 1e-3, Watch.NONE).run(point.x(), kick, 0, 100e-6, 1e-9, passage -> {
            steps[0]++;
            forward[0] = Math.max(forward[0], passage.x()[gate] - passage.x()[tap]);
            return true;
        });
        assertThat(end).isEqualTo(TimeRun.End.REACHED);
        assertThat(forward[0]).as("the gate conducts").isGreaterThan(0.5);
        // who had to step at the time constant would need two million
        assertThat(steps[0]).as("steps in a hundred cycles").isLessThan(40_000);
    }

    /**
     * The base has to charge through 6.9 kΩ before anything can grow. Who waits until ten cycles in a row differ by less than a
     * millivolt takes the dead time for the end.
     */
    @Test
    void a_test_for_settled_amplitude_is_passed_falsely_while_the_base_still_charges() {
        Circuit circuit = HardCases.slowBase();
        Equations equations = Equations.of(circuit);
        double[] nothing = new double[equations.stride()];
        AmplitudeRun run = AmplitudeRun.run(
                equations,
                nothing,
                nothing,
                equations.net("rail"),
                equations.net("collector"),
                1.04e6,
                1500,
                Watch.NONE);
        int settled = firstSettled(run.peaks());
        assertThat(settled).isPositive();
        assertThat(run.times().get(settled)).as("taken for settled").isLessThan(100e-6);
        assertThat(run.peaks().get(settled)).as("while nothing swings").isLessThan(1e-3);
        assertThat(run.peaks().get(run.peaks().size() - 1)).as("later").isGreaterThan(1);
        assertThat(new AllOrbits(Accuracy.LIVE, Watch.NONE).of(point(circuit)).verdict())
                .isEqualTo(AllOrbits.Verdict.STARTS);
    }

    private static int firstSettled(List<Double> peaks) {
        for (int k = 10; k < peaks.size(); k++) {
            double lowest = Double.POSITIVE_INFINITY, highest = 0;
            for (int j = k - 9; j <= k; j++) {
                lowest = Math.min(lowest, peaks.get(j));
                highest = Math.max(highest, peaks.get(j));
            }
            if (highest - lowest < 1e-3) return k;
        }
        return -1;
    }

    @Test
    void a_run_stops_when_its_listener_has_seen_enough() {
        Equations equations = Equations.of(Circuits.bipolarColpitts());
        OperatingPoint.Found point = point(Circuits.bipolarColpitts());
        double[] last = {Double.NaN};
        TimeRun.End end = new TimeRun(equations, 1e-3, Watch.NONE)
                .run(point.x(), new double[equations.stride()], 0, 1e-3, 1e-8, passage -> {
                    if (!Double.isNaN(last[0])) assertThat(passage.start()).isEqualTo(last[0]);
                    last[0] = passage.end();
                    return passage.end() < 1e-6;
                });
        assertThat(end).isEqualTo(TimeRun.End.STOPPED);
        assertThat(last[0]).isGreaterThanOrEqualTo(1e-6);
    }

    @Test
    void tolerances_and_steps_that_mean_nothing_are_refused() {
        Equations equations = Equations.of(Circuits.bipolarColpitts());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new TimeRun(equations, 0, Watch.NONE))
                .withMessageContaining("tolerance");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new TimeRun(equations, 1e-3, 0, Watch.NONE))
                .withMessageContaining("step");
    }
}
