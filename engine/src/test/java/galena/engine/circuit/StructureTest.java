package galena.engine.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import galena.engine.Circuits;
import galena.engine.part.Battery;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.CurrentSource;
import galena.engine.part.Jfet;
import galena.engine.part.Mosfet;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Each way in which a circuit can be wired so that it has no solution, or an unusual one, named with its place. */
class StructureTest {
    private static final Wave THREE = new Wave.Direct(3);

    private static Part supply() {
        return new Battery("B", "rail", "ground", 9, 2);
    }

    private static Coil ideal(String name, String from, String to) {
        return new Coil(name, from, to, 1e-3, 0, 0, 0);
    }

    /** Kind, parts that must be named, nets that must be named, circuit. */
    static Stream<Arguments> faults() {
        return Stream.of(
                fault(
                        Fault.Kind.NO_GROUND,
                        List.of(),
                        List.of(),
                        new Resistor("R", "a", "b", 1),
                        new Resistor("S", "a", "b", 1)),
                fault(
                        Fault.Kind.LONE_PIN,
                        List.of("C"),
                        List.of("loose"),
                        supply(),
                        new Resistor("R", "rail", "ground", 1e3),
                        new Capacitor("C", "rail", "loose", 1e-9)),
                fault(
                        Fault.Kind.SOURCE_LOOP,
                        List.of("V", "W"),
                        List.of(),
                        new VoltageSource("V", "a", "ground", THREE),
                        new VoltageSource("W", "a", "ground", THREE)),
                fault(
                        Fault.Kind.SOURCE_LOOP,
                        List.of("V", "L"),
                        List.of(),
                        new VoltageSource("V", "a", "ground", THREE),
                        ideal("L", "a", "ground")),
                fault(
                        Fault.Kind.SOURCE_LOOP,
                        List.of("L1", "L2"),
                        List.of(),
                        supply(),
                        new Resistor("R", "rail", "a", 1e3),
                        ideal("L1", "a", "ground"),
                        ideal("L2", "a", "ground")),
                fault(
                        Fault.Kind.SOURCE_LOOP,
                        List.of("B", "L1", "L2"),
                        List.of(),
                        new Battery("B", "rail", "ground", 9, 0),
                        ideal("L1", "rail", "m"),
                        ideal("L2", "m", "ground"),
                        new Resistor("R", "m", "ground", 1e3)),
                fault(
                        Fault.Kind.SOURCE_LOOP,
                        List.of("V"),
                        List.of(),
                        new VoltageSource("V", "a", "a", THREE),
                        new Resistor("R", "a", "ground", 1e3)),
                fault(
                        Fault.Kind.NO_DIRECT_PATH,
                        List.of("C1", "C2"),
                        List.of("m"),
                        supply(),
                        new Capacitor("C1", "rail", "m", 1e-9),
                        new Capacitor("C2", "m", "ground", 1e-9)),
                fault(
                        Fault.Kind.NO_DIRECT_PATH,
                        List.of("C", "Q"),
                        List.of("gate"),
                        supply(),
                        new Resistor("R", "rail", "drain", 1e3),
                        new Capacitor("C", "rail", "gate", 1e-9),
                        new Jfet("Q", Polarity.N, "drain", "gate", "ground", Circuits.jfet(8e-3, -2.5))),
                fault(
                        Fault.Kind.NO_DIRECT_PATH,
                        List.of("M"),
                        List.of("gate"),
                        supply(),
                        new Resistor("R", "rail", "drain", 1e3),
                        new Capacitor("C", "rail", "gate", 1e-9),
                        new Mosfet(
                                "M",
                                Polarity.N,
                                "drain",
                                "gate",
                                "ground",
                                new Mosfet.Model(1, 1e-3, 0, 1e-12, 1e-12, 0, 1e-9, null))),
                fault(
                        Fault.Kind.NO_DIRECT_PATH,
                        List.of("X"),
                        List.of("m"),
                        supply(),
                        Resonator.ofFrequency("X", "rail", "m", 1e6, 1e4, 1e-14, 4e-12),
                        new Capacitor("C", "m", "ground", 1e-11)),
                fault(
                        Fault.Kind.NO_DIRECT_PATH,
                        List.of("Lb", "R"),
                        List.of("p", "q"),
                        supply(),
                        new Coil("La", "rail", "ground", 1e-3, 5, 0, 0),
                        new Coil("Lb", "p", "q", 1e-3, 5, 0, 0),
                        new Coupling("K", "La", "Lb", 0.5),
                        new Resistor("R", "p", "q", 1e3)),
                fault(
                        Fault.Kind.CURRENT_SOURCE_CUT,
                        List.of("I", "J"),
                        List.of("m"),
                        supply(),
                        new CurrentSource("I", "rail", "m", THREE),
                        new CurrentSource("J", "m", "ground", THREE)),
                fault(
                        Fault.Kind.CURRENT_SOURCE_CUT,
                        List.of("I", "C"),
                        List.of("m"),
                        supply(),
                        new CurrentSource("I", "rail", "m", THREE),
                        new Capacitor("C", "m", "ground", 1e-9)),
                fault(
                        Fault.Kind.CAPACITOR_ACROSS_SOURCE,
                        List.of("V", "C"),
                        List.of(),
                        new VoltageSource("V", "a", "ground", THREE),
                        new Capacitor("C", "a", "ground", 1e-9)),
                fault(
                        Fault.Kind.CAPACITOR_ACROSS_SOURCE,
                        List.of("V", "W", "T"),
                        List.of(),
                        new VoltageSource("V", "a", "ground", THREE),
                        new VoltageSource("W", "b", "a", THREE),
                        new Trimmer("T", "b", "ground", 1e-12, 2e-12, 0.5, 0),
                        new Resistor("R", "b", "ground", 1e3)),
                fault(
                        Fault.Kind.COILS_IN_SERIES,
                        List.of("L1", "L2"),
                        List.of("m"),
                        supply(),
                        ideal("L1", "rail", "m"),
                        new Coil("L2", "m", "a", 1e-3, 3, 0, 0),
                        new Resistor("R", "a", "ground", 1e3)));
    }

    private static Arguments fault(Fault.Kind kind, List<String> parts, List<String> nets, Part... circuit) {
        return Arguments.of(kind, parts, nets, Circuit.of(circuit));
    }

    @ParameterizedTest
    @MethodSource("faults")
    void a_fault_is_named_with_its_place_and_a_remedy(
            Fault.Kind kind, List<String> parts, List<String> nets, Circuit circuit) {
        List<Fault> found =
                Structure.faults(circuit).stream().filter(f -> f.kind() == kind).toList();
        assertThat(found).as("faults of %s", Structure.faults(circuit)).isNotEmpty();
        Fault fault = found.get(0);
        assertThat(fault.parts()).containsAll(parts);
        assertThat(fault.nets()).containsAll(nets);
        assertThat(fault.toString()).contains(kind.rule()).contains(kind.remedy());
        for (String name : parts) assertThat(fault.toString()).contains(name);
    }

    @Test
    void every_kind_of_fault_is_tried() {
        Set<Fault.Kind> tried = faults().map(a -> (Fault.Kind) a.get()[0]).collect(Collectors.toSet());
        assertThat(tried).containsExactlyInAnyOrderElementsOf(EnumSet.allOf(Fault.Kind.class));
    }

    @Test
    void sensible_builds_have_no_faults() {
        for (Circuit circuit : List.of(
                Circuits.groundedGateColpitts(),
                Circuits.gateLeakHartley(),
                Circuits.bipolarColpitts(),
                Circuits.transmitter())) {
            assertThat(Structure.faults(circuit)).isEmpty();
        }
    }

    @Test
    void capacitors_alone_may_form_loops_and_coils_with_resistance_may_lie_across_a_source() {
        assertThat(Structure.faults(Circuit.of(
                        supply(),
                        new Capacitor("C1", "rail", "a", 1e-9),
                        new Capacitor("C2", "a", "ground", 1e-9),
                        new Capacitor("C3", "rail", "ground", 1e-9),
                        new Resistor("R", "a", "ground", 1e6))))
                .isEmpty();
        assertThat(Structure.faults(Circuit.of(
                        new VoltageSource("V", "a", "ground", THREE), new Coil("L", "a", "ground", 1e-3, 1, 0, 0))))
                .isEmpty();
    }

    @Test
    void all_faults_of_a_circuit_come_at_once_the_fatal_ones_first() {
        List<Fault> faults = Structure.faults(Circuit.of(
                new VoltageSource("V", "a", "ground", THREE),
                new Capacitor("C", "a", "ground", 1e-9),
                new Capacitor("D", "a", "loose", 1e-9)));
        assertThat(faults.stream().map(Fault::kind))
                .contains(Fault.Kind.LONE_PIN, Fault.Kind.NO_DIRECT_PATH, Fault.Kind.CAPACITOR_ACROSS_SOURCE);
        assertThat(faults.get(faults.size() - 1).kind().fatal()).isFalse();
        assertThat(faults.get(0).kind().fatal()).isTrue();
    }

    @Test
    void windings_that_would_share_all_flux_are_refused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Coupling("K", "La", "Lb", 1))
                .withMessageContaining("K")
                .withMessageContaining("La");
        assertThatIllegalArgumentException().isThrownBy(() -> new Coupling("K", "La", "La", 0.5));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Circuit.of(ideal("La", "a", "ground"), new Coupling("K", "La", "R", 0.5)))
                .withMessageContaining("not a coil");
    }

    @Test
    void names_are_unique_and_temperatures_within_reason() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Circuit.of(new Resistor("R", "a", "ground", 1), new Resistor("R", "a", "ground", 2)))
                .withMessageContaining("R");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Circuits.bipolarColpitts().atTemperature(Double.NaN));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Circuits.bipolarColpitts().with(new Resistor("none", "a", "b", 1)));
    }
}
