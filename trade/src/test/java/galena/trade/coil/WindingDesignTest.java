package galena.trade.coil;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.Rod;
import galena.trade.ferrite.RodFormer;
import galena.trade.ferrite.Toroid;
import galena.trade.ferrite.ToroidFormer;
import galena.trade.wire.OutOfRange;
import galena.trade.wire.Wire;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class WindingDesignTest {
    private static final Wire.Solid WIRE = Wire.Solid.copper(0.4e-3, 0.44e-3);
    private static final WindingDesign.Goal GOAL = new WindingDesign.Goal(180e-6, 1e6, 20);

    static Stream<Former> formers() {
        Material grade = Material.named("4B1 (NiZn)").orElseThrow();
        return Stream.of(
                new TubeFormer(50e-3, 0.3e-3, 60e-3, 0.44e-3, 0.03, WIRE),
                new BobbinFormer(15e-3, 0.1e-3, 12e-3, 40e-3, 0.44e-3, 0.42e-3, 0.05, WIRE),
                new SpiralFormer(50e-3, 1e-3, 160e-3, 0.8e-3, 0.05, WIRE),
                new FrameFormer(0.4, 0.3, 2e-3, 0.1, 3e-3, 0.05, RectangularFrame.Lay.BOX, WIRE),
                new FrameFormer(0.4, 0.3, 2e-3, 0.1, 3e-3, 0.05, RectangularFrame.Lay.FLAT, WIRE),
                RodFormer.closeWound(Rod.of(120e-3, 10e-3), grade, WIRE),
                new ToroidFormer(Toroid.rectangular(36e-3, 23e-3, 15e-3), grade, 0.9, WIRE));
    }

    private static WindingSheet sheet(Former former, WindingDesign.Goal goal) {
        var design = WindingDesign.design(former, goal);
        assertThat(design).isInstanceOf(WindingDesign.Wound.class);
        return ((WindingDesign.Wound) design).sheet();
    }

    @ParameterizedTest
    @MethodSource("formers")
    void every_former_gives_the_nearest_whole_turns(Former former) {
        WindingSheet sheet = sheet(former, GOAL);
        double miss = Math.abs(sheet.inductance().value() - 180e-6);
        Winding exact = former.wind(sheet.exactTurns());
        assertThat(exact.inductance(1e6, 20) + exact.inductanceShift(1e6, 20)).isCloseTo(180e-6, within(0.2e-6));
        assertThat(sheet.winding().turns()).isEqualTo(Math.rint(sheet.exactTurns()));
        assertThat(sheet.oneTurnLess()).isLessThan(sheet.inductance().value());
        assertThat(sheet.oneTurnMore()).isGreaterThan(sheet.inductance().value());
        assertThat(miss)
                .isLessThanOrEqualTo(1.2 * Math.abs(sheet.oneTurnLess() - 180e-6))
                .isLessThanOrEqualTo(1.2 * Math.abs(sheet.oneTurnMore() - 180e-6));
        assertThat(sheet.inductance().low()).isLessThan(sheet.inductance().value());
        assertThat(sheet.contributions()).containsKey("formula").hasSizeGreaterThan(1);
        assertThat(sheet.turnsToSpare()).isNotNegative();
        assertThat(sheet.losses()).isInstanceOfSatisfying(WindingSheet.Known.class, known -> {
            assertThat(known.losses().q().value()).isBetween(20.0, 800.0);
            assertThat(known.losses().dc()).isEqualTo(sheet.dcResistance());
        });
    }

    @ParameterizedTest
    @MethodSource("formers")
    void measured_as_reckoned_asks_for_the_designed_turns(Former former) {
        WindingSheet sheet = sheet(former, GOAL);
        int wound = (int) sheet.winding().turns() - 3;
        double measured =
                (former.wind(wound).inductance(1e6, 20) + former.wind(wound).inductanceShift(1e6, 20)) * 1.02;
        TurnsChange change = TurnsChange.of(former, wound, Interval.within(measured, 0.01), GOAL);
        assertThat(change.calibration().value()).isCloseTo(1.02, within(1e-9));
        assertThat(change.change()).isBetween(1, 3);
        assertThat(change.turnsWanted().low()).isLessThan(change.turnsWanted().high());
        Winding wanted = former.wind(change.turnsWanted().value());
        // the share that eddy currents take moves by a few tenths of a per cent over three turns
        assertThat((wanted.inductance(1e6, 20) + wanted.inductanceShift(1e6, 20)) * 1.02)
                .isCloseTo(180e-6, within(1e-6));
    }

    @Test
    void says_when_the_former_is_too_small_or_one_turn_too_much() {
        var tube = new TubeFormer(20e-3, 0.2e-3, 15e-3, 0.44e-3, 0.03, WIRE);
        assertThat(WindingDesign.design(tube, GOAL)).isInstanceOfSatisfying(WindingDesign.DoesNotFit.class, much -> {
            assertThat(much.mostTurns()).isEqualTo(34);
            assertThat(much.share()).isLessThan(0.2);
        });
        var frame = new FrameFormer(1, 1, 2e-3, 0.1, 3e-3, 0.05, RectangularFrame.Lay.BOX, WIRE);
        assertThat(WindingDesign.design(frame, new WindingDesign.Goal(1e-6, 1e6, 20)))
                .isInstanceOf(WindingDesign.OneTurnIsTooMuch.class);
        assertThatThrownBy(() -> new TubeFormer(20e-3, 0, 0.1e-3, 0.44e-3, 0, WIRE))
                .isInstanceOf(OutOfRange.class)
                .hasMessageContaining("Not one turn fits");
    }

    /** A roomy former holds more than its form covers; few turns on it must still come out. */
    @Test
    void roomy_formers_are_cut_to_what_the_form_covers() {
        var thin = Wire.Solid.copper(0.1e-3, 0.12e-3);
        var goal = new WindingDesign.Goal(50e-6, 1e6, 20);
        sheet(new FrameFormer(0.2, 0.15, 0, 0.5, 0.5e-3, 0, RectangularFrame.Lay.FLAT, thin), goal);
        sheet(new FrameFormer(0.2, 0.15, 0, 0.5, 3e-3, 0, RectangularFrame.Lay.BOX, thin), goal);
        sheet(new SpiralFormer(20e-3, 0, 0.3, 0.2e-3, 0, thin), goal);
        sheet(new BobbinFormer(6e-3, 0, 3e-3, 60e-3, 0.12e-3, 0.12e-3, 0, thin), goal);
    }

    /** Single-layer rule in use by builders: µH = N²d²/(18d + 40l) in inches. */
    @Test
    void agrees_with_the_builders_rule_for_air_coils() {
        WindingSheet sheet = sheet(new TubeFormer(50e-3, 0, 80e-3, 0.44e-3, 0, WIRE), GOAL);
        double n = sheet.winding().turns(), d = 50.44e-3 / 0.0254, l = n * 0.44e-3 / 0.0254;
        Published.source("trade", Kind.COMMON_PRACTICE, "µH = N²d²/(18d + 40l), inches, good to 1 or 2 %")
                .matchesRelative(
                        "L (H)",
                        n * n * d * d / (18 * d + 40 * l) * 1e-6,
                        sheet.inductance().value(),
                        0.02);
    }

    @Test
    void wires_on_hand_are_ranked_by_q() {
        var thin = Wire.Solid.copper(0.1e-3, 0.125e-3);
        List<WindingSheet> best = WindingDesign.best(
                List.of(
                        new TubeFormer(50e-3, 0, 60e-3, 0.125e-3, 0, thin),
                        new TubeFormer(50e-3, 0, 60e-3, 0.6e-3, 0, WIRE),
                        new TubeFormer(20e-3, 0, 5e-3, 0.44e-3, 0, WIRE)),
                GOAL);
        assertThat(best).hasSize(2);
        assertThat(best.get(0).winding().wire()).isEqualTo(WIRE);
    }

    @Test
    void two_resonances_give_inductance_and_self_capacitance() {
        double l = 182e-6, own = 9e-12, c1 = 470e-12, c2 = 100e-12;
        double f1 = 1 / (2 * Math.PI * Math.sqrt(l * (c1 + own))), f2 = 1 / (2 * Math.PI * Math.sqrt(l * (c2 + own)));
        var found = Resonance.ofTwo(
                Interval.within(c1, 0.01),
                Interval.within(f1, 1e-4),
                Interval.within(c2, 0.01),
                Interval.within(f2, 1e-4));
        assertThat(found.inductance().value()).isCloseTo(l, withinPercentage(1e-6));
        assertThat(found.selfCapacitance().value()).isCloseTo(own, withinPercentage(1e-6));
        assertThat(found.selfCapacitance().low()).isLessThan(8e-12);
        assertThat(Resonance.inductance(Interval.exactly(c1 + own), Interval.exactly(f1))
                        .value())
                .isCloseTo(l, withinPercentage(1e-9));
        assertThatThrownBy(() -> Resonance.ofTwo(
                        Interval.exactly(c1), Interval.exactly(f1), Interval.exactly(c1), Interval.exactly(f1)))
                .isInstanceOf(OutOfRange.class)
                .hasMessageContaining("3 to 1 apart");
        double resonance = 1 / (2 * Math.PI * Math.sqrt(l * own));
        assertThat(Resonance.apparentInductance(l, resonance, resonance / 2))
                .isCloseTo(l * 4 / 3, withinPercentage(1e-9));
    }
}
