package galena.build.reach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.Builds;
import galena.build.predict.Prediction;
import galena.build.quantity.Unit;
import galena.engine.steady.Floquet;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reach from predictions made up by hand, so that every current is known. */
final class ReachingTest {
    private static final double CARRIER = 1e6;
    private static final double LIGHT = 299_792_458;
    private static final String LOOP =
            "La: {loop: 200 µH, resistance: 4 Ω, turns: 10, width: 50 cm, height: 40 cm, from: out, to: ground}";

    private static Build build(String rules, String aerial) throws Exception {
        return Builds.read("galena: 1\nintent: {carrier: 1 MHz, rules: " + rules
                + ", distance: 10 m, modulation: 80 %}\nparts:\n  " + aerial
                + "\n  Ra: {resistor: 1k, from: out, to: ground}\n");
    }

    /** A carrier of 1 MHz with this peak current (A) in La, known to ±10 %, and its second harmonic 40 dB below. */
    private static Prediction predicted(double peak) {
        Figure.Known current = known(peak, 0.9 * peak, 1.1 * peak, Unit.AMPERE);
        Figure.Known second = known(-40, -43, -37, Unit.DECIBEL);
        Prediction.Spectrum spectrum =
                new Prediction.Spectrum("La", "current in La", current, List.of(second, missing("harmonic 3")));
        Prediction.Oscillation oscillation = new Prediction.Oscillation(
                known(CARRIER, CARRIER - 1, CARRIER + 1, Unit.HERTZ),
                1e-9,
                0.01,
                Floquet.Stability.STABLE,
                0.5,
                List.of(spectrum),
                missing("supply current"),
                known(0.02, 0.018, 0.022, Unit.WATT),
                Map.of(),
                missing("battery life"),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        return prediction(oscillation);
    }

    private static Prediction prediction(Prediction.Running running) {
        return new Prediction(
                "Tried",
                "digest",
                new Prediction.Setting(25, Optional.empty(), Map.of(), "live"),
                new Prediction.Rest("plain", List.of()),
                Optional.empty(),
                running,
                new Prediction.NoCurve("none"),
                List.of(),
                List.of());
    }

    private static Figure.Known known(double value, double low, double high, Unit unit) {
        return new Figure.Known(value, unit, low, high, "made up", "made up", "");
    }

    private static Figure missing(String what) {
        return new Figure.Missing(what, "made up");
    }

    private static Reach reach(Build build, double peak) {
        return (Reach) Reaching.of(build, predicted(peak), Surroundings.RESIDENTIAL);
    }

    private static String refusal(Build build) {
        return ((ReachAnswer.None) Reaching.of(build, predicted(0.01), Surroundings.RESIDENTIAL)).reason();
    }

    private static Level at(Reach reach, double distance) {
        return reach.levels().stream()
                .filter(l -> l.distance() == distance)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_loops_field_is_that_of_its_turns_area_and_rms_current() throws Exception {
        Reach reach = reach(build("cept", LOOP), 0.01);
        double moment = 10 * 0.5 * 0.4 * 0.01 / Math.sqrt(2), r = 10, k = 2 * Math.PI * CARRIER / LIGHT;
        double axis = moment / (2 * Math.PI * r * r * r) * Math.hypot(1, k * r);
        double electric = 376.730313 * k * moment / (4 * Math.PI * r * r) * Math.hypot(1, k * r);
        Published.source(
                        "build",
                        Kind.CLOSED_FORM,
                        "field of a small loop, near and far terms (C. A. Balanis, Antenna Theory, 5.2)")
                .matchesRelative(
                        "H on the axis at 10 m (A/m)",
                        axis,
                        at(reach, r).hAxis().orElseThrow().value(),
                        1e-6)
                .matchesRelative(
                        "E broadside at 10 m (V/m)",
                        electric,
                        at(reach, r).eBroadside().value(),
                        1e-6);
    }

    @Test
    void the_interval_of_a_field_joins_those_of_current_and_size() throws Exception {
        Figure.Known h = at(reach(build("cept", LOOP), 0.01), 10).hAxis().orElseThrow();
        double high = Math.hypot(Math.log(1.1), Math.log(1 + Aerial.SIZES_KNOWN_TO));
        assertThat(Math.log(h.high() / h.value())).isCloseTo(high, within(1e-9));
    }

    @Test
    void the_second_harmonic_has_its_own_field_and_the_uncertified_third_is_named() throws Exception {
        Reach reach = reach(build("cept", LOOP), 0.01);
        assertThat(reach.emissions()).extracting(Emission::order).containsExactly(1, 2);
        Emission second = reach.emissions().get(1);
        assertThat(second.frequency()).isEqualTo(2 * CARRIER);
        assertThat(second.current().value()).isCloseTo(1e-4 / Math.sqrt(2), within(1e-12));
        assertThat(second.high()).isGreaterThan(reach.carrier().high());
        assertThat(reach.notes()).anyMatch(n -> n.startsWith("1 of 2 harmonics"));
    }

    /** The limit of −15 dBµA/m at 10 m is 0.178 µA/m; with 2 m² the near-field law gives the current that meets it. */
    @ParameterizedTest
    @CsvSource({"0.2e-3, WITHIN", "0.42e-3, TYPICALLY", "2e-3, EXCEEDED"})
    void a_limit_is_judged_at_the_crest_of_modulation_and_with_the_interval(double peak, Standing expected)
            throws Exception {
        Rules.Judged rules = (Rules.Judged) reach(build("cept", LOOP), peak).rules();
        Rules.Route route = rules.routes().get(0);
        Rules.Line carrier = route.lines().get(0);
        assertThat(carrier.standing()).isEqualTo(expected);
        assertThat(route.standing()).isEqualTo(expected);
        assertThat(route.verified()).isFalse();
        double crest = carrier.margin().orElseThrow().value()
                - carrier.crestMargin().orElseThrow().value();
        assertThat(crest).isCloseTo(20 * Math.log10(1.8), within(1e-9));
        Figure.Known margin = carrier.margin().orElseThrow();
        assertThat(margin.low()).isLessThan(margin.value());
        assertThat(margin.high()).isGreaterThan(margin.value());
    }

    @Test
    void power_and_length_are_taken_from_the_build_or_asked_for() throws Exception {
        Rules.Line[] asked = powerAndLength(build("us", LOOP));
        assertThat(asked[0].standing()).isEqualTo(Standing.WITHIN);
        assertThat(asked[0].found().orElseThrow().value()).isEqualTo(0.022);
        assertThat(asked[1].standing()).isEqualTo(Standing.OPEN);
        assertThat(asked[1].remark()).contains("Write lead and ground_lead into parts.La.");
        String measured = LOOP.replace("from: out", "lead: 20 cm, ground_lead: 1 m, from: out");
        Rules.Line[] told = powerAndLength(build("us", measured));
        assertThat(told[1].found().orElseThrow().value()).isEqualTo(1.2);
        assertThat(told[1].standing()).isEqualTo(Standing.OPEN); // 18 m of wire on the loop: nothing settles it
        assertThat(told[1].remark()).contains("19.20 m with the wire of the coil");
    }

    private static Rules.Line[] powerAndLength(Build build) {
        Rules.Judged rules = (Rules.Judged) reach(build, 0.001).rules();
        List<Rules.Line> lines = rules.routes().stream()
                .filter(r -> r.name().equals("power and length"))
                .findFirst()
                .orElseThrow()
                .lines();
        return new Rules.Line[] {lines.get(0), lines.get(1)};
    }

    @Test
    void a_final_stage_that_takes_too_much_exceeds_and_a_whole_build_that_does_is_asked() throws Exception {
        Surroundings known =
                Surroundings.in("rural", 0, OptionalDouble.empty(), OptionalDouble.of(25), OptionalDouble.of(0.2));
        Reach reach = (Reach) Reaching.of(build("us", LOOP), predicted(0.001), known);
        Rules.Judged rules = (Rules.Judged) reach.rules();
        assertThat(rules.routes()).anyMatch(r -> r.standing() == Standing.EXCEEDED);
        assertThat(reach.hearing()).allMatch(h -> h.neighbour().orElseThrow().distance() == 25);
    }

    @Test
    void regions_without_figures_say_so_and_where_to_read() throws Exception {
        assertThat(reach(build("uk", LOOP), 0.001).rules()).isInstanceOf(Rules.NotHeld.class);
        Rules.NotHeld none = (Rules.NotHeld) reach(build("uk", LOOP), 0.001).rules();
        assertThat(none.check()).contains("Ofcom");
        assertThat(reach(build("uk", LOOP), 0.001).caution()).contains("regulator");
    }

    @Test
    void more_current_is_heard_farther_and_more_noise_less_far() throws Exception {
        Build build = build("cept", LOOP);
        List<Double> pleasant = new ArrayList<>();
        for (double peak : new double[] {1e-3, 3e-3, 1e-2})
            pleasant.add(((Figure.Known) reach(build, peak).hearing().get(0).pleasant()).value());
        assertThat(pleasant).isSorted().doesNotHaveDuplicates();
        Surroundings noisy =
                Surroundings.in("city", 20, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
        Reach loud = (Reach) Reaching.of(build, predicted(1e-2), noisy);
        Figure.Known near = (Figure.Known) loud.hearing().get(0).pleasant();
        assertThat(near.value()).isLessThan(pleasant.get(2));
        assertThat(near.low()).isLessThan(near.value());
    }

    @Test
    void a_wire_carries_no_axis_and_its_field_grows_with_its_height() throws Exception {
        String wire = "La: {wire: 2 m, diameter: 1 mm, ground_loss: 40 Ω, from: out, to: ground}";
        Reach reach = reach(build("us", wire), 0.001);
        Level ten = at(reach, 10);
        assertThat(ten.hAxis()).isEmpty();
        assertThat(reach.moment()).isInstanceOf(Figure.Missing.class);
        Level taller = at(reach(build("us", wire.replace("2 m", "3 m")), 0.001), 10);
        assertThat(taller.eBroadside().value()).isGreaterThan(ten.eBroadside().value());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "La: {coil: 20 µH, resistance: 2 Ω, from: out, to: ground} | no aerial",
                "La: {loop: 20 µH, resistance: 2 Ω, from: out, to: ground} | doesn't say turns",
                "La: {loop: 20 µH, resistance: 2 Ω, turns: 3, width: 1 m, from: out, to: ground} | doesn't say height",
                "La: {loopstick: 20 µH, resistance: 2 Ω, turns: 30, from: out, to: ground} | rod_length, rod_diameter, winding_length",
                "La: {loopstick: 20 mH, resistance: 2 Ω, turns: 30, rod_length: 100 mm, rod_diameter: 10 mm, winding_length: 20 mm, from: out, to: ground} | no core gives",
                "La: {loopstick: 20 µH, resistance: 2 Ω, turns: 30, rod_length: 1 m, rod_diameter: 1 mm, winding_length: 20 mm, from: out, to: ground} | can be reckoned",
                "Lb: {loop: 20 µH, resistance: 2 Ω, turns: 3, diameter: 1 m, from: out, to: ground} | hardly any carrier"
            })
    void what_cannot_be_reckoned_says_why(String aerial, String why) throws Exception {
        assertThat(refusal(build("cept", aerial))).contains(why);
    }

    @Test
    void nothing_that_oscillates_reaches_nowhere() throws Exception {
        ReachAnswer answer = Reaching.of(
                build("cept", LOOP), prediction(new Prediction.Silent("it decays")), Surroundings.RESIDENTIAL);
        assertThat(answer).isEqualTo(new ReachAnswer.None("it decays"));
    }
}
