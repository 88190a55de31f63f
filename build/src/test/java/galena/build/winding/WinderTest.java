package galena.build.winding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import galena.build.figure.Figure;
import galena.build.source.BadInputException;
import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.Rod;
import galena.trade.ferrite.RodCoil;
import galena.trade.wire.Wire;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class WinderTest {
    private static final OptionalDouble CLOSE = OptionalDouble.empty();

    private static Reel reel(String text) throws BadInputException {
        return Reel.read(text, OptionalDouble.empty());
    }

    private static Winder winder(Shape shape, String wire, OptionalDouble pitch) throws BadInputException {
        return new Winder(shape, reel(wire), pitch, 1e6, 20);
    }

    private static Coil coil(Shape shape, String wire, double inductance) throws BadInputException {
        return (Coil) winder(shape, wire, CLOSE).wind(inductance);
    }

    /** Wheeler's formula knows no round wire, which is half a per cent, nor what crowding takes at high frequencies. */
    @ParameterizedTest
    @CsvSource({"0.05, 0.5 mm, 200e-6", "0.0254, 0.3 mm, 150e-6", "0.08, 1 mm, 400e-6"})
    void a_tubes_turns_give_what_wheelers_formula_says(double diameter, String wire, double inductance)
            throws Exception {
        Winder slow = new Winder(new Shape.Tube(diameter, 0.3), reel(wire), CLOSE, 1e3, 20);
        Coil coil = (Coil) slow.wind(inductance);
        double pitch = coil.windingLength() / coil.turns();
        double a = (diameter + pitch) / 2, inches = 0.0254;
        double n = coil.exactTurns(), length = n * pitch;
        double microhenries = (a / inches) * (a / inches) * n * n / (9 * a / inches + 10 * length / inches);
        Published.source(
                        "build",
                        Kind.TABLE,
                        "H. A. Wheeler, Proc. IRE 16 (1928) p. 1398: within 1 % for length over 0.8 radius")
                .matchesRelative("inductance of a wound tube (H)", microhenries * 1e-6, inductance, 0.015);
    }

    @Test
    void whole_turns_lie_between_one_less_and_one_more() throws Exception {
        Coil coil = coil(new Shape.Tube(0.05, 0.2), "0.5 mm", 100e-6);
        double found = ((Figure.Known) coil.inductance()).value();
        assertThat(coil.oneLess()).isLessThan(found);
        assertThat(coil.oneMore()).isGreaterThan(found);
        assertThat(Math.abs(coil.turns() - coil.exactTurns())).isLessThanOrEqualTo(0.5);
        assertThat(coil.tuning() * found).isCloseTo(1 / Math.pow(2 * Math.PI * 1e6, 2), within(1e-22));
        assertThat(coil.losses().values().stream().mapToDouble(v -> v).sum()).isCloseTo(1, within(1e-9));
        assertThat(coil.curve()).hasSize(13);
    }

    @Test
    void every_form_answers() throws Exception {
        Cores.Material core = Cores.named("4B1").orElseThrow();
        Shape[] shapes = {
            new Shape.Tube(0.05, 0.1),
            new Shape.Bobbin(0.008, 0.02, 0.012),
            new Shape.Frame(0.4, 0.3, 0.05, false),
            new Shape.Frame(0.4, 0.3, 0.1, true),
            new Shape.Card(0.04, 0.2),
            core.stick(0.12, 0.01, 0.01, 0.02),
            core.ring(0.036, 0.023, 0.01, 0.9)
        };
        for (Shape shape : shapes) {
            Coil coil = coil(shape, "0.4 mm", 60e-6);
            Figure.Known l = (Figure.Known) coil.inductance();
            assertThat(l.low()).as(shape.words()).isLessThan(l.value());
            assertThat(l.value() / 60e-6).as(shape.words()).isBetween(0.8, 1.25);
            assertThat(coil.q()).as(shape.words()).isInstanceOf(Figure.Known.class);
        }
    }

    @Test
    void what_does_not_fit_says_how_much_does() throws Exception {
        CoilAnswer.None full = (CoilAnswer.None)
                winder(new Shape.Tube(0.02, 0.02), "0.5 mm", CLOSE).wind(1e-3);
        assertThat(full.reason()).contains("turns that fit give", "of what is wanted");
        CoilAnswer.None one = (CoilAnswer.None)
                winder(new Shape.Frame(1, 1, 0.1, false), "1 mm", CLOSE).wind(1e-6);
        assertThat(one.reason()).contains("a single turn gives");
        CoilAnswer.None rod =
                (CoilAnswer.None) winder(Cores.named("250").orElseThrow().stick(0.01, 0.1, 0.1, 0), "1 mm", CLOSE)
                        .wind(1e-6);
        assertThat(rod.reason()).contains("rod length/diameter");
    }

    @Test
    void a_core_without_a_loss_has_no_q_but_tells_what_the_wire_would_allow() throws Exception {
        Coil coil = coil(Cores.named("250").orElseThrow().stick(0.14, 0.01, 0.01, 0), "0.3 mm", 180e-6);
        assertThat(coil.q().text()).contains("the core's loss is not given", "the wire alone would allow");
        assertThat(coil.curve()).isEmpty();
    }

    /** A winding reckoned on a rod of 160 is handed in as measured: the trial finds 160 again. */
    @Test
    void a_trial_finds_the_permeability_that_it_was_made_with_and_the_turns_to_change() throws Exception {
        Wire wire = reel("0.3 mm").wire();
        RodCoil made = new RodCoil(
                Rod.of(0.14, 0.01),
                Material.ofPermeability(160),
                60,
                0.01 + wire.outerDiameter(),
                wire.outerDiameter(),
                0,
                wire);
        Shape shape = Cores.unknown().stick(0.14, 0.01, 0.01, 0);
        TrialAnswer answer =
                winder(shape, "0.3 mm", CLOSE).judge(60, made.inductance(), 0.02, OptionalDouble.of(180e-6));
        Trial trial = ((TrialAnswer.Told) answer).trial();
        Figure.Known mu = (Figure.Known) trial.permeability().orElseThrow();
        assertThat(mu.value()).isCloseTo(160, within(1.0));
        assertThat(mu.low()).isLessThan(155);
        double wanted = ((Figure.Known) trial.wanted().orElseThrow()).value();
        assertThat(trial.change().orElseThrow())
                .isEqualTo((int) Math.round(wanted) - 60)
                .isNegative();
        Figure.Known slide = (Figure.Known) trial.slide().orElseThrow();
        assertThat(made.at(slide.value()).inductance()).isCloseTo(180e-6, within(0.5e-6));
        assertThat(slide.low()).isLessThan(slide.value());
    }

    @Test
    void a_trial_that_no_core_explains_and_an_air_coil_that_disagrees_are_told() throws Exception {
        Shape rod = Cores.unknown().stick(0.14, 0.01, 0.01, 0);
        TrialAnswer.None none =
                (TrialAnswer.None) winder(rod, "0.3 mm", CLOSE).judge(60, 5e-3, 0.02, OptionalDouble.empty());
        assertThat(none.reason()).contains("no core of that size");
        Trial air = ((TrialAnswer.Told) winder(new Shape.Tube(0.05, 0.1), "0.5 mm", CLOSE)
                        .judge(60, 50e-6, 0.02, OptionalDouble.empty()))
                .trial();
        assertThat(air.notes()).anyMatch(n -> n.startsWith("Sizes and turns reckon to"));
        assertThat(air.change()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.3 mm, 0.3e-3", "AWG 24, 0.5106e-3", "awg30, 0.2546e-3", "SWG 28, 0.3759e-3", "0.5mm, 0.5e-3"})
    void wire_is_read_as_it_stands_on_the_reel(String text, double bare) throws Exception {
        Wire.Solid wire = (Wire.Solid) reel(text).wire();
        assertThat(wire.diameter()).isCloseTo(bare, within(1e-7));
        assertThat(wire.outerDiameter()).isGreaterThan(bare);
        assertThat(reel(text).assumed()).contains("--over");
    }

    /** IEC 60317-0-1, grade 1: least and greatest increase in diameter due to the insulation, recalled. */
    @ParameterizedTest
    @CsvSource({
        "0.1e-3, 0.008e-3, 0.017e-3",
        "0.3e-3, 0.017e-3, 0.034e-3",
        "0.5e-3, 0.024e-3, 0.045e-3",
        "1e-3, 0.034e-3, 0.063e-3"
    })
    void assumed_enamel_lies_within_grade_one(double bare, double least, double most) throws Exception {
        double enamel = reel(bare * 1e3 + " mm").wire().outerDiameter() - bare;
        Published.source("build", Kind.MEMORY, "IEC 60317-0-1, grade 1 enamelled round wire")
                .liesWithin("enamel on " + bare * 1e3 + " mm (m)", least, most + 0.5e-6, enamel);
    }

    @Test
    void litz_has_its_strands() throws Exception {
        Wire.Litz litz = (Wire.Litz) reel("20x0.07 mm").wire();
        assertThat(litz.strands()).isEqualTo(20);
        assertThat(litz.strandDiameter()).isEqualTo(0.07e-3, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.3 | has no unit",
                "30 mm | thicker than wire",
                "AWG 99 | no size that is held",
                "1x0.07 mm | litz of one strand",
                "thin | is no number"
            })
    void what_is_no_wire_is_refused(String text, String why) {
        BadInputException bad = catchThrowableOfType(BadInputException.class, () -> reel(text));
        assertThat(bad.problems().get(0).toString()).contains("--wire", why);
    }

    @Test
    void insulation_thinner_than_the_wire_is_refused_and_cores_are_named_or_not() {
        BadInputException bad =
                catchThrowableOfType(BadInputException.class, () -> Reel.read("0.5 mm", OptionalDouble.of(0.4e-3)));
        assertThat(bad.problems().get(0).toString()).contains("--over");
        assertThat(Cores.named("4b1")).isPresent();
        assertThat(Cores.named("0.5")).isEmpty();
        assertThat(Cores.named("iron")).isEmpty();
    }
}
