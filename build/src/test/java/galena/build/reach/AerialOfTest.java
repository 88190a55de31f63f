package galena.build.reach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.build.folder.Builds;
import galena.build.folder.PartEntry;
import galena.trade.ferrite.Material;
import galena.trade.ferrite.Rod;
import galena.trade.ferrite.RodCoil;
import galena.trade.wire.Wire;
import org.junit.jupiter.api.Test;

final class AerialOfTest {
    private static final String ROD =
            "{loopstick: %s, resistance: 2 Ω, turns: 50, rod_length: 120 mm, rod_diameter: 10 mm, winding_length: 25 mm, "
                    + "winding_diameter: 10.6 mm, %sfrom: out, to: ground}";

    private static PartEntry part(String text) throws Exception {
        return Builds.read("galena: 1\nparts:\n  La: " + text + "\n  Ra: {resistor: 1k, from: out, to: ground}\n")
                .part("La")
                .orElseThrow();
    }

    private static Aerial.Wound wound(String text) throws Exception {
        return (Aerial.Wound) ((AerialOf.Known) AerialOf.of(part(text))).aerial();
    }

    /** The same winding solved by the trade's own rod, with a permeability of 250. */
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

    @Test
    void a_rod_of_known_grade_has_the_moment_of_its_winding() throws Exception {
        String inductance = String.format(java.util.Locale.ROOT, "%.1f µH", coil().inductance() * 1e6);
        Aerial.Wound aerial = wound(ROD.formatted(inductance, "permeability: 250, "));
        assertThat(aerial.momentPerAmpere().value()).isCloseTo(coil().momentPerAmpere(), within(1e-5));
        assertThat(aerial.notes()).isEmpty();
        assertThat(aerial.momentPerAmpere().low())
                .isLessThan(0.99 * aerial.momentPerAmpere().value());
    }

    @Test
    void without_a_grade_the_inductance_tells_the_moment() throws Exception {
        String inductance = String.format(java.util.Locale.ROOT, "%.1f µH", coil().inductance() * 1e6);
        Aerial.Wound aerial = wound(ROD.formatted(inductance, ""));
        assertThat(aerial.momentPerAmpere().value() / coil().momentPerAmpere()).isCloseTo(1, within(0.03));
        assertThat(aerial.words()).contains("told by its inductance");
    }

    @Test
    void sizes_and_inductance_that_contradict_each_other_are_told() throws Exception {
        assertThat(wound(ROD.formatted("47 µH", "permeability: 250, ")).notes())
                .singleElement()
                .asString()
                .contains("the build says 47 µH");
        assertThat(wound(ROD.formatted("47 µH", "")).notes())
                .singleElement()
                .asString()
                .contains("Check the turns");
    }

    @Test
    void a_loops_wire_is_its_turns_round_the_frame() throws Exception {
        Aerial.Wound round = wound("{loop: 20 µH, resistance: 2 Ω, turns: 4, diameter: 50 cm, from: out, to: ground}");
        assertThat(round.wireLength()).isCloseTo(2 * Math.PI, within(1e-12));
        assertThat(round.momentPerAmpere().value()).isCloseTo(Math.PI / 4, within(1e-12));
    }
}
