package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;

import galena.engine.HardCases;
import galena.engine.Kicks;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.engine.timerun.AmplitudeRun;
import galena.proof.Kind;
import galena.proof.Published;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Verdicts on circuits built to be nasty; what can be watched in time is. */
class VerdictTest {
    private static OperatingPoint.Found point(Circuit circuit) {
        return (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
    }

    private static AllOrbits.Answer answer(Circuit circuit) {
        return answer(point(circuit));
    }

    private static AllOrbits.Answer answer(OperatingPoint.Found point) {
        return new AllOrbits(Accuracy.LIVE, Watch.NONE).of(point);
    }

    private static double amplitude(SteadyState.Found found) {
        return found.waveforms().amplitude(found.site().a(), found.site().b(), 1);
    }

    /** The capacitor sees its own resistor, and the base divider with the transistor's input in parallel. */
    @ParameterizedTest
    @ValueSource(doubles = {100e3, 1e6})
    void a_coupling_capacitor_of_ten_microfarads_beside_a_carrier_of_a_megahertz_is_seen_to_settle(double ohms) {
        AllOrbits.Answer answer = answer(HardCases.coupledThroughTenMicrofarads(ohms));
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.STARTS);
        Floquet.Mode slowest = answer.orbits().get(0).state().floquet().modes().get(0);
        double divider = 22e3 * 10e3 / (22e3 + 10e3), input = 200 * 6.8e3;
        double seen = ohms + divider * input / (divider + input);
        Published.source("engine", Kind.CLOSED_FORM, "a capacitor discharges as exp(−t/RC)")
                .matches(
                        "slowest exponent beside a 1 MHz carrier, 10 µF and " + ohms / 1e3 + " kΩ, 1/s",
                        -1 / (seen * 10e-6),
                        slowest.exponent(),
                        slowest.bound() + 1e-3 / (seen * 10e-6));
        assertThat(slowest.bound()).isLessThan(-slowest.exponent() / 100);
    }

    @Test
    void a_quartz_of_q_a_hundred_thousand_starts_where_its_load_capacitance_puts_it_and_settles_at_its_own_pace() {
        OperatingPoint.Found point = point(HardCases.quartz());
        AllOrbits.Answer answer = answer(point);
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.STARTS);
        SteadyState.Found orbit = answer.orbits().get(0).state();
        double load = 330e-12 / 2, pulled = 1e6 * (1 + 10e-15 / (2 * (4e-12 + load)));
        double pace = Math.PI * 1e6 / 1e5; // R/2L = ω/2Q
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "a resonator's motional arm of C₁ under shunt and load capacitance runs at fₛ (1 + C₁/2(C₀ + C_L)); its current"
                                + " dies at R/2L, and under a drive that limits it settles at one to a few times that rate")
                .matchesRelative(
                        "carrier of a quartz oscillator",
                        pulled,
                        orbit.waveforms().frequency(),
                        5e-6)
                .liesWithin(
                        "slowest exponent over −R/2L, Q 1e5",
                        0.7,
                        4,
                        -orbit.floquet().modes().get(0).exponent() / pace);
    }

    /** A coil in series with its capacitor has Q times their common voltage across it, and is limited all the same. */
    @Test
    void a_quartz_drawn_as_coil_and_capacitors_runs_as_the_resonator_does() {
        SteadyState.Found part = answer(HardCases.quartz()).orbits().get(0).state();
        AllOrbits.Answer drawn = answer(HardCases.quartzDrawn());
        assertThat(drawn.verdict()).isEqualTo(AllOrbits.Verdict.STARTS);
        SteadyState.Found found = drawn.orbits().get(0).state();
        assertThat(found.waveforms().frequency() / part.waveforms().frequency()).isBetween(1 - 1e-8, 1 + 1e-8);
        double base = part.waveforms().voltageAmplitude("base", "ground", 1);
        assertThat(found.waveforms().voltageAmplitude("base", "ground", 1) / base)
                .isBetween(0.999, 1.001);
    }

    @ParameterizedTest
    @ValueSource(doubles = {80, 300, 3000})
    void a_series_tank_of_any_q_has_its_orbit_and_a_decided_stability(double q) {
        AllOrbits.Answer answer = answer(HardCases.seriesTank(q));
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.STARTS);
        assertThat(answer.orbits()).hasSize(1);
    }

    /** A growth of 1,400 1/s on 1 MHz, watched over a thousand cycles. */
    @Test
    void a_quartz_grows_in_time_at_the_rate_that_its_eigenvalue_says() {
        OperatingPoint.Found point = point(HardCases.quartz());
        Startup startup = Startup.readiest(point).orElseThrow();
        Equations equations = point.equations();
        double[] kick = Kicks.along(equations, startup.mode(), point.x(), 0.01);
        AmplitudeRun run = AmplitudeRun.run(
                equations,
                point.x(),
                kick,
                startup.site().a(),
                startup.site().b(),
                startup.mode().frequency(),
                900,
                Watch.NONE);
        int early = run.peaks().size() / 3, late = run.peaks().size() - 1;
        double growth = Math.log(run.peaks().get(late) / run.peaks().get(early))
                / (run.times().get(late) - run.times().get(early));
        assertThat(startup.margin()).isPositive().isFinite();
        assertThat(growth / startup.mode().growth()).isBetween(0.99, 1.01);
    }

    @Test
    void a_gate_leak_that_forgets_more_slowly_than_the_tank_squegs_and_time_shows_it() {
        AllOrbits.Answer answer = answer(HardCases.longGateLeak());
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.SQUEGS);
        SteadyState.Found orbit = answer.orbits().get(0).state();
        Floquet.Mode worst = orbit.floquet().modes().get(0);
        assertThat(worst.exponent() - worst.bound()).isPositive();
        AmplitudeRun run = AmplitudeRun.from(orbit, 2500, Watch.NONE);
        assertThat(run.steadiness()).isLessThan(0.01);
        // it comes again: more than one burst in the second half
        int bursts = 0;
        for (int k = run.peaks().size() / 2; k < run.peaks().size(); k++) {
            if (run.peaks().get(k) > 1 && run.peaks().get(k - 1) <= 1) bursts++;
        }
        assertThat(bursts).isGreaterThan(1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.85, 1.15})
    void a_hard_starting_stage_dies_below_its_threshold_and_stays_above_it(double share) {
        OperatingPoint.Found point = point(HardCases.heldBeyondPinchOff(3.2, 50e3, 220e3));
        AllOrbits.Answer answer = answer(point);
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.ONLY_IF_KICKED);
        AllOrbits.Listed settled = answer.orbits().get(0);
        SteadyState.Found threshold = answer.thresholds().get(0);
        assertThat(threshold.floquet().stability()).isEqualTo(Floquet.Stability.UNSTABLE);
        assertThat(settled.threshold()).isEqualTo(amplitude(threshold)).isPositive();
        AmplitudeRun run = AmplitudeRun.run(
                point.equations(),
                point.x(),
                Kicks.towards(threshold, point.x(), share),
                threshold.site().a(),
                threshold.site().b(),
                threshold.waveforms().frequency(),
                200,
                Watch.NONE);
        double end = run.peaks().get(run.peaks().size() - 1);
        if (share < 1) assertThat(end).isLessThan(0.01 * amplitude(threshold));
        else assertThat(end).isGreaterThan(0.8 * amplitude(settled.state()));
    }

    /** With more load, threshold and settled orbit come together just before both vanish: 2 % apart here. */
    @Test
    void a_pair_of_orbits_two_per_cent_apart_is_not_stepped_over() {
        AllOrbits.Answer answer = answer(HardCases.heldBeyondPinchOff(2.6, 5e3, 22e3));
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.ONLY_IF_KICKED);
        AllOrbits.Listed settled = answer.orbits().get(0);
        assertThat(amplitude(settled.state()) / settled.threshold()).isBetween(1.005, 1.05);
        assertThat(answer(HardCases.heldBeyondPinchOff(4, 5e3, 22e3)).verdict()).isEqualTo(AllOrbits.Verdict.DECAYS);
    }

    @Test
    void two_coupled_tanks_have_two_oscillations_and_both_are_listed() {
        AllOrbits.Answer answer = answer(HardCases.twoTanks(0.1));
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.SEVERAL);
        assertThat(answer.orbits()).hasSize(2).allMatch(o -> o.stability() == Floquet.Stability.STABLE);
        double first = 2 * (1 + 0.95) * 22e-6, second = 88e-6; // the push-pull coil's halves in series
        double k = 2 * 0.1 * Math.sqrt(22e-6 * 88e-6) / Math.sqrt(first * second);
        double a = 1 / (first * 280e-12), b = 1 / (second * 280e-12);
        double root = Math.sqrt((a - b) * (a - b) + 4 * k * k * a * b);
        double high = Math.sqrt((a + b + root) / (2 * (1 - k * k))) / (2 * Math.PI);
        double low = Math.sqrt((a + b - root) / (2 * (1 - k * k))) / (2 * Math.PI);
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "two lossless tanks of inductive coupling k: ω² = (a + b ± √((a − b)² + 4k²ab)) / 2(1 − k²)")
                .matchesRelative(
                        "upper of two oscillations",
                        high,
                        frequency(answer.orbits().get(0)),
                        0.01)
                .matchesRelative(
                        "lower of two oscillations",
                        low,
                        frequency(answer.orbits().get(1)),
                        0.01);
        for (AllOrbits.Listed listed : answer.orbits()) {
            AmplitudeRun run = AmplitudeRun.from(listed.state(), 150, Watch.NONE);
            assertThat(run.steadiness()).isGreaterThan(0.98);
            assertThat(run.frequency().orElseThrow() / frequency(listed)).isBetween(0.9999, 1.0001);
        }
    }

    private static double frequency(AllOrbits.Listed listed) {
        return listed.state().waveforms().frequency();
    }

    @Test
    void an_oscillator_stops_at_a_supply_between_two_where_it_stopped_or_ran() {
        double dead = 1.5, alive = 3;
        assertThat(answer(HardCases.onSupply(dead)).verdict()).isEqualTo(AllOrbits.Verdict.DECAYS);
        assertThat(answer(HardCases.onSupply(alive)).verdict()).isEqualTo(AllOrbits.Verdict.STARTS);
        for (int k = 0; k < 7; k++) {
            double middle = (dead + alive) / 2;
            if (answer(HardCases.onSupply(middle)).verdict() == AllOrbits.Verdict.DECAYS) dead = middle;
            else alive = middle;
        }
        assertThat(Startup.readiest(point(HardCases.onSupply(dead)))
                        .orElseThrow()
                        .margin())
                .isNegative();
        assertThat(Startup.readiest(point(HardCases.onSupply(alive)))
                        .orElseThrow()
                        .margin())
                .isPositive();
        AllOrbits.Listed last = answer(HardCases.onSupply(alive)).orbits().get(0);
        assertThat(last.byItself()).isTrue();
        assertThat(amplitude(last.state()))
                .as("it fades, it does not break off")
                .isLessThan(0.5);
    }

    @Test
    void a_latch_locks_at_rest() {
        AllOrbits.Answer answer = answer(HardCases.latch());
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.LOCKS_AT_REST);
        assertThat(answer.orbits()).isEmpty();
    }

    @Test
    void an_oscillator_without_feedback_decays() {
        AllOrbits.Answer answer = answer(HardCases.nonStarter());
        assertThat(answer.verdict()).isEqualTo(AllOrbits.Verdict.DECAYS);
        assertThat(answer.orbits()).isEmpty();
        assertThat(answer.thresholds()).isEmpty();
    }
}
