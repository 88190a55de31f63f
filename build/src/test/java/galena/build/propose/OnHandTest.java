package galena.build.propose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.build.attempt.Aim;
import galena.build.attempt.Looking;
import galena.build.attempt.Stock;
import galena.build.folder.Drawer;
import galena.build.pattern.Pattern;
import galena.build.predict.Progress;
import galena.build.reach.Surroundings;
import galena.build.source.BadInputException;
import galena.build.spread.Conditions;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a drawer holds is taken. */
class OnHandTest {
    private static final String INTENT =
            "galena: 1\nintent: {carrier: 1287 kHz, programme: {level: 400 mV, band: 60 Hz..4.5 kHz}}\n";

    @TempDir
    private Path folder;

    private Wish wish(String drawer) throws Exception {
        Files.writeString(folder.resolve("build.yaml"), INTENT);
        Files.writeString(folder.resolve("drawer.yaml"), "galena: 1\n" + drawer);
        return Wish.open(folder);
    }

    @Test
    void coils_go_on_the_drawers_rod_and_tube_with_its_wire() throws Exception {
        Drawer drawer =
                wish("rods: [{rod: 140 mm, diameter: 10 mm, permeability: 220}]\ntubes: [20 mm]\nwires: [0.3 mm]\n")
                        .drawer();
        OnHand onHand = new OnHand(1287e3, drawer);
        OnHand.Form rod = onHand.forms().get(0);
        OnHand.Wound aerial = onHand.aerial(rod, 45e-6).orElseThrow();
        assertThat(aerial.keys()).contains("rod_length: 140 mm", "rod_diameter: 10 mm", "permeability: 220");
        assertThat(aerial.recipe()).contains("0.3 mm", "rod of 14 cm");
        OnHand.Wound coil = onHand.tube(100e-6).orElseThrow();
        assertThat(coil.recipe()).contains("0.3 mm", "a tube of 20 mm");
        assertThat(coil.inductance()).isCloseTo(100e-6, within(2e-6));
        assertThat(new OnHand(1287e3, Drawer.EMPTY).tube(100e-6).orElseThrow().recipe())
                .contains("a tube of 16 mm");
    }

    @Test
    void wire_that_nobody_winds_is_told_where_it_stands() throws Exception {
        assertThatThrownBy(() -> Propose.of(wish("wires: [30 mm]\n"), Propose.Request.USUAL, Progress.SILENT))
                .isInstanceOf(BadInputException.class)
                .hasMessageContaining("drawer.yaml")
                .hasMessageContaining("thicker than wire");
        assertThatThrownBy(() -> wish("wires: [thin]\n")).hasMessageContaining("drawer.yaml:2");
    }

    @Test
    void a_crystal_of_the_drawer_opens_its_channel_to_the_pattern_with_quartz() throws Exception {
        assertThat(hindrance("resistors: [1 kΩ]\n")).contains("the drawer holds none for the channel");
        assertThat(hindrance("crystals: [1 MHz, 1287 kHz]\n")).isEmpty();
    }

    private String hindrance(String drawer) throws Exception {
        return start(wish(drawer)).hindrance(Pattern.named("quartz")).orElse("");
    }

    private static Start start(Wish wish) throws Exception {
        Stock stock = new Stock(wish.drawer());
        OnHand onHand = new OnHand(1287e3, wish.drawer());
        Looking looking = new Looking(
                new Aim(wish.build().intent(), Surroundings.RESIDENTIAL, "rod-set"),
                Conditions.FULL,
                1,
                Progress.SILENT);
        return new Start(wish, stock, onHand, new Tuning(looking, stock, onHand, Progress.SILENT.watch()));
    }
}
