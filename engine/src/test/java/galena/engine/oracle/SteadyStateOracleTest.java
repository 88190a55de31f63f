package galena.engine.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Steady states against an explicit integrator of a general library on equations worked out by hand: the returns through a
 * section are solved for their fixed point from our orbit displaced in every state, and three circuits are simply run from
 * the moment of switching on until they repeat.
 */
class SteadyStateOracleTest {
    private static final String SOURCE =
            "Hipparchus DormandPrince853 on equations of the circuit reduced by hand, fixed point of its Poincaré returns";
    private static final String FROM_COLD =
            "Hipparchus DormandPrince853 on equations of the circuit reduced by hand, run from switching on until it repeats";

    /** Share of each state's value by which the orbit is displaced before the oracle starts. */
    private static final double DISPLACED = 1e-3;

    /** What the integration itself may be off by, relative. */
    private static final double INTEGRATION = 1e-9;

    /**
     * The printed error is the change on halving the mesh. At a square law's corners a halving that happens to lay a mesh point
     * worse gains less than a factor of two, and the finer orbit's error can then exceed the change: by 10 % in one circuit here.
     */
    private static final double ESTIMATE = 2;

    static Stream<ReducedCircuit> oscillators() {
        return Stream.of(
                ReducedCircuits.groundedGateColpitts(),
                ReducedCircuits.gateLeakHartley(),
                ReducedCircuits.bipolarColpitts());
    }

    static Stream<ReducedCircuit> fastOnes() {
        return Stream.of(
                ReducedCircuits.clampedColpitts(), ReducedCircuits.longTailedPair(), ReducedCircuits.quickHartley());
    }

    @ParameterizedTest
    @MethodSource({"oscillators", "fastOnes"})
    void certified_orbits_are_those_of_the_returns(ReducedCircuit reduced) {
        compareWithReturns(reduced, Accuracy.CERTIFIED);
    }

    @ParameterizedTest
    @MethodSource({"oscillators", "fastOnes"})
    void live_orbits_are_those_of_the_returns(ReducedCircuit reduced) {
        compareWithReturns(reduced, Accuracy.LIVE);
    }

    private static void compareWithReturns(ReducedCircuit reduced, Accuracy accuracy) {
        SteadyState.Found found = solve(reduced, accuracy);
        Waveforms ours = found.waveforms();
        ReturnMap map = new ReturnMap(reduced, ours.frequency(), swings(reduced, ours));
        double[] start = crossing(reduced, ours);
        for (int k = 0; k < start.length; k++) start[k] *= 1 + DISPLACED;
        ReturnMap.Return theirs = map.fixedPoint(start);
        compare(Published.source("engine", Kind.LIBRARY, SOURCE), reduced, accuracy, ours, map, theirs);
        assertThat(Math.abs(theirs.time() - 1))
                .as("the frequency's true error against the printed one")
                .isLessThanOrEqualTo(ESTIMATE * found.error().frequency() + INTEGRATION);
    }

    @ParameterizedTest
    @MethodSource("fastOnes")
    void fast_circuits_settle_into_the_orbit_from_cold(ReducedCircuit reduced) {
        Waveforms ours = solve(reduced, Accuracy.CERTIFIED).waveforms();
        double[] swing = swings(reduced, ours);
        ReturnMap map = new ReturnMap(reduced, ours.frequency(), swing);
        double level = crossing(reduced, ours)[reduced.coil()];
        double[] y = map.integrate(new double[swing.length], 0, 60);
        // on to the section, by the first rising passage of its level
        double time = 0, step = 1.0 / 64;
        while (true) {
            double[] there = map.integrate(y, time, time + step);
            boolean passed = y[reduced.coil()] < level && there[reduced.coil()] >= level;
            y = there;
            time += step;
            if (passed) break;
            assertThat(time).as("periods without a passage of the section").isLessThan(3);
        }
        ReturnMap.Return back = new ReturnMap.Return(y, 1);
        for (int k = 0; k < 400; k++) {
            ReturnMap.Return next = map.next(back.state(), back.time());
            double moved = map.distance(next.state(), back.state());
            back = next;
            if (moved < 1e-11) break;
        }
        compare(Published.source("engine", Kind.LIBRARY, FROM_COLD), reduced, Accuracy.CERTIFIED, ours, map, back);
    }

    private static void compare(
            Published source,
            ReducedCircuit reduced,
            Accuracy accuracy,
            Waveforms ours,
            ReturnMap map,
            ReturnMap.Return theirs) {
        String what = reduced.name() + ", " + accuracy.name();
        double frequency = ours.frequency() / theirs.time();
        source.matchesRelative(what + ": frequency, Hz", frequency, ours.frequency(), accuracy.frequency());
        harmonics(
                source,
                what + ": tank voltage",
                reduced,
                accuracy,
                ours,
                map.amplitudes(theirs, reduced.tank()),
                reduced.tank());
        harmonics(
                source,
                what + ": coil current",
                reduced,
                accuracy,
                ours,
                map.amplitudes(theirs, reduced.coil()),
                reduced.coil());
    }

    private static void harmonics(
            Published source,
            String what,
            ReducedCircuit reduced,
            Accuracy accuracy,
            Waveforms ours,
            double[] theirs,
            int state) {
        int unknown = unknown(ours.equations(), reduced.states()[state]);
        double floor = theirs[1] * Math.pow(10, -accuracy.floor() / 20);
        for (int h = 1; h <= ReturnMap.HARMONICS; h++) {
            if (theirs[h] < floor) continue;
            source.matches(
                    what + ", harmonic " + h + ", dB of 1",
                    20 * Math.log10(theirs[h]),
                    20 * Math.log10(ours.amplitude(unknown, 0, h)),
                    accuracy.harmonicDecibels());
        }
    }

    private static SteadyState.Found solve(ReducedCircuit reduced, Accuracy accuracy) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(reduced.circuit()));
        Startup startup = Startup.readiest(point).orElseThrow();
        SteadyState state = new SteadyOscillation(accuracy).solve(point, startup);
        assertThat(state).as(reduced.name()).isInstanceOf(SteadyState.Found.class);
        return (SteadyState.Found) state;
    }

    private static int unknown(Equations equations, String name) {
        for (int k = 1; k <= equations.size(); k++) if (equations.name(k).equals(name)) return k;
        throw new AssertionError("no unknown " + name);
    }

    /** Each state's swing; a state that hardly moves counts with a thousandth of its mean. */
    private static double[] swings(ReducedCircuit reduced, Waveforms ours) {
        double[] swings = new double[reduced.states().length];
        for (int k = 0; k < swings.length; k++) {
            int unknown = unknown(ours.equations(), reduced.states()[k]);
            swings[k] = Math.max(ours.swing(unknown), 1e-3 * Math.abs(ours.mean(unknown)));
        }
        return swings;
    }

    /** The states where the coil current rises through its mean. */
    private static double[] crossing(ReducedCircuit reduced, Waveforms ours) {
        int coil = unknown(ours.equations(), reduced.states()[reduced.coil()]);
        double mean = ours.mean(coil);
        int steps = 512;
        for (int k = 0; k < steps; k++) {
            double phase = (double) k / steps;
            if (ours.at(coil, phase) < mean && ours.at(coil, phase + 1.0 / steps) >= mean) {
                double[] all = ours.at(phase);
                double[] states = new double[reduced.states().length];
                for (int j = 0; j < states.length; j++) states[j] = all[unknown(ours.equations(), reduced.states()[j])];
                return states;
            }
        }
        throw new AssertionError("the coil current does not pass its mean");
    }
}
