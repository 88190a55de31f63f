package galena.build.fault;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.DemoBuild;
import galena.build.fault.Fault.Kind;
import galena.build.folder.Build;
import galena.build.folder.Builds;
import galena.build.folder.Overlay;
import galena.build.folder.Supply;
import galena.build.pattern.Pattern;
import galena.build.wiring.Assembled;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.circuit.Structure;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Resistor;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FaultsTest {
    static Stream<String> builds() {
        return Stream.concat(
                Stream.of(Builds.EVERYTHING), Pattern.all().stream().map(Pattern::text));
    }

    @ParameterizedTest
    @MethodSource("builds")
    void every_fault_of_every_pattern_gives_a_circuit_that_can_be_solved(String text) throws Exception {
        Build build = Builds.read(text);
        Assembled healthy = CircuitOf.build(build, Overlay.NONE);
        Set<String> words = new HashSet<>();
        for (Fault fault : Faults.of(build, Overlay.NONE)) {
            assertThat(words.add(fault.words())).as(fault.words()).isTrue();
            for (String part : fault.parts())
                assertThat(build.part(part).isPresent() || part.equals(Supply.NAME))
                        .as(part)
                        .isTrue();
            Assembled faulty = fault.in(healthy);
            assertThat(Structure.faults(faulty.circuit()).stream()
                            .filter(f -> f.kind().fatal()))
                    .as(fault.words())
                    .isEmpty();
            assertThat(faulty.circuit().temperature())
                    .isEqualTo(healthy.circuit().temperature());
            assertThat(faulty.circuit().parts())
                    .as(fault.words())
                    .isNotEqualTo(healthy.circuit().parts());
        }
    }

    @Test
    void the_demo_has_faults_of_every_kind_but_a_reversed_coil(@TempDir Path folder) throws Exception {
        Set<Kind> kinds = EnumSet.noneOf(Kind.class);
        Faults.of(DemoBuild.in(folder).build(), Overlay.NONE).forEach(f -> kinds.add(f.kind()));
        assertThat(kinds).isEqualTo(EnumSet.complementOf(EnumSet.of(Kind.REVERSED)));
    }

    @Test
    void a_fault_is_laid_on_any_circuit_of_the_build(@TempDir Path folder) throws Exception {
        Build build = DemoBuild.in(folder).build();
        Circuit other =
                CircuitOf.build(build, Overlay.NONE).circuit().with(new Resistor("Rs", "source", "ground", 4000));
        Fault fault = named(build, "Rs of the wrong decade, 33 kΩ");
        assertThat(((Resistor) fault.in(other).part("Rs").orElseThrow()).resistance())
                .isEqualTo(40000);
    }

    @Test
    void parts_side_by_side_share_one_bridge(@TempDir Path folder) throws Exception {
        Build build = DemoBuild.in(folder).build();
        List<Fault> bridges = Faults.of(build, Overlay.NONE).stream()
                .filter(f -> f.kind() == Kind.SHORTED && f.parts().contains("La"))
                .toList();
        assertThat(bridges).hasSize(1);
        assertThat(bridges.get(0).parts()).containsExactly("La", "Ro", "Co", "Cq");
    }

    @Test
    void exchanged_parts_keep_their_places(@TempDir Path folder) throws Exception {
        Build build = DemoBuild.in(folder).build();
        Circuit faulty = named(build, "Cf and Cs exchanged")
                .in(CircuitOf.build(build, Overlay.NONE).circuit());
        Capacitor cf = (Capacitor) faulty.part("Cf").orElseThrow();
        assertThat(cf.capacitance()).isEqualTo(1e-9);
        assertThat(cf.nets()).containsExactly("drain", "source");
    }

    /** A lossless ring with coupling k leaves 1 − k² of the inductance: F. W. Grover, Inductance Calculations, 1946. */
    @Test
    void a_shorted_turn_is_a_closed_ring_in_the_field_of_its_coil(@TempDir Path folder) throws Exception {
        Build build = DemoBuild.in(folder).build();
        Circuit faulty = named(build, "La with a shorted turn")
                .in(CircuitOf.build(build, Overlay.NONE).circuit());
        Coil ring = (Coil) faulty.part("La.turn").orElseThrow();
        assertThat(ring.from()).isEqualTo(ring.to());
        assertThat(ring.inductance())
                .isCloseTo(47e-6 / (0.49 * 21 * 21), org.assertj.core.data.Percentage.withPercentage(1e-6));
    }

    static Fault named(Build build, String words) throws galena.build.source.BadInputException {
        return Faults.of(build, Overlay.NONE).stream()
                .filter(f -> f.words().equals(words))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no fault is called " + words));
    }

    @Test
    void a_crystal_and_what_pulls_it_belong_to_the_oscillator() throws Exception {
        Build build = Builds.read(Pattern.named("quartz").text());
        Stage oscillator = Stages.of(build, "X1").stream()
                .filter(s -> s.name().equals("oscillator"))
                .findFirst()
                .orElseThrow();
        assertThat(oscillator.parts()).contains("X1", "Ct", "Q1").doesNotContain("Q2", "S1");
    }
}
