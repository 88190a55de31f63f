package galena.build.wiring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.build.folder.Builds;
import galena.build.folder.PartEntry;
import galena.build.source.BadInputException;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.Rod;
import galena.trade.ferrite.RodCoil;
import galena.trade.wire.Wire;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Adjustable coils: slugs, and windings slid along a rod. */
final class TravelTest {
    private static final String ROD =
            "loopstick: 300 µH, q: 100 @ 1 MHz, turns: 50, rod_length: 120 mm, rod_diameter: 10 mm, "
                    + "winding_length: 25 mm, winding_diameter: 10.6 mm, permeability: 250, from: out, to: ground";

    private static PartEntry part(String text) throws Exception {
        return Builds.read("galena: 1\nparts:\n  La: {" + text + "}\n  Ra: {resistor: 1k, from: out, to: ground}\n")
                .part("La")
                .orElseThrow();
    }

    /** The same winding solved by the trade's own rod. */
    private static RodCoil coil() {
        return new RodCoil(
                Rod.of(0.12, 0.01),
                Material.ofPermeability(250),
                50,
                0.0106,
                0.5e-3,
                0,
                Wire.Solid.bareCopper(0.45e-3));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "25, 10", "60, 24", "83, 33.2", "100, 40"})
    void a_slid_winding_follows_its_rod(double percent, double millimetres) throws Exception {
        PartEntry slid = part(ROD + ", slide: 0..40 mm");
        double share = coil().at(millimetres / 1000).inductance() / coil().inductance();
        assertThat(slid.isAdjustable()).isTrue();
        assertThat(Travel.inductance(slid, percent / 100)).isCloseTo(300e-6 * share, within(300e-6 * 2e-4));
    }

    @Test
    void a_slug_runs_evenly_and_a_fixed_coil_stands_still() throws Exception {
        PartEntry slug = part("coil: 100..140 µH, set: 25 %, q: 80 @ 1 MHz, from: out, to: ground");
        assertThat(Travel.inductance(slug, 0.25)).isCloseTo(110e-6, within(1e-12));
        PartEntry fixed = part(ROD);
        assertThat(Travel.inductance(fixed, 0.25)).isEqualTo(Travel.inductance(fixed, 1));
    }

    @Test
    void a_slide_without_a_grade_takes_the_core_that_the_inductance_tells() throws Exception {
        double middle = coil().inductance();
        String stated = String.format(java.util.Locale.ROOT, "loopstick: %.2f µH", middle * 1e6);
        PartEntry told =
                part(ROD.replace("loopstick: 300 µH", stated).replace("permeability: 250, ", "") + ", slide: 0..40 mm");
        assertThat(Travel.inductance(told, 1)).isCloseTo(coil().at(0.04).inductance(), within(5e-3 * middle));
    }

    @ParameterizedTest
    @ValueSource(strings = {"slide: 0..80 mm", "slide: 0..30 mm, position: 5 mm"})
    void a_slide_that_cannot_be_is_refused_with_its_place(String slide) {
        assertThatThrownBy(() -> part(ROD + ", " + slide))
                .isInstanceOf(BadInputException.class)
                .hasMessageContaining("slide");
    }

    @Test
    void a_slide_needs_a_rod_and_no_slug() {
        assertThatThrownBy(() -> part("loopstick: 300 µH, q: 100 @ 1 MHz, slide: 0..30 mm, from: out, to: ground"))
                .hasMessageContaining("no rod to slide on");
        assertThatThrownBy(() -> part(ROD.replace("300 µH", "280..300 µH") + ", slide: 0..30 mm"))
                .hasMessageContaining("two adjustments");
    }
}
