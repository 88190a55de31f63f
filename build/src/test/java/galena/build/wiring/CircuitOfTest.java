package galena.build.wiring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import galena.build.folder.Build;
import galena.build.folder.Builds;
import galena.build.folder.Calibration;
import galena.build.folder.Coupled;
import galena.build.folder.Overlay;
import galena.build.folder.Stray;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import galena.build.source.Problem;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Jfet;
import galena.engine.part.Load;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.device.Device;
import galena.trade.device.DeviceLibrary;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class CircuitOfTest {
    /** The gate junctions' leakage, some picoamperes, against a milliampere. */
    private static final double JUNCTION_LEAKAGE = 1e-6;

    private static final Offset<Double> ROUNDING = within(1e-12);

    private static <P extends Part> P part(Circuit circuit, String name, Class<P> kind) {
        return kind.cast(circuit.part(name).orElseThrow(() -> new AssertionError("no part " + name)));
    }

    private static Circuit everything(Overlay overlay) throws BadInputException {
        return CircuitOf.build(Builds.read(Builds.EVERYTHING), overlay).circuit();
    }

    @Test
    void every_kind_of_part_reaches_the_engine_with_its_values() throws BadInputException {
        Circuit c = everything(Overlay.NONE);
        Coil tank = part(c, "Lt", Coil.class);
        assertThat(tank.inductance()).isEqualTo(180e-6);
        assertThat(2 * Math.PI * 1e6 * tank.inductance() / tank.seriesResistance())
                .isCloseTo(85, ROUNDING);
        assertThat(tank.selfCapacitance()).isEqualTo(3e-12);
        assertThat(tank.temperatureCoefficient()).isEqualTo(60e-6);
        assertThat(part(c, "Ls", Coil.class).inductance()).isCloseTo(168e-6, ROUNDING);
        assertThat(part(c, "Ls", Coil.class).seriesResistance()).isEqualTo(12);
        Trimmer trimmer = part(c, "Ct", Trimmer.class);
        assertThat(trimmer.capacitance()).isCloseTo(27e-12, ROUNDING);
        assertThat(part(c, "Rp", Preset.class).lower()).isCloseTo(100 + 0.25 * 9800, ROUNDING);
        Resonator crystal = part(c, "Xt", Resonator.class);
        assertThat(crystal.seriesFrequency()).isCloseTo(3.996e6, within(1e-6));
        assertThat(2 * Math.PI * 3.996e6 * crystal.motionalInductance() / crystal.motionalResistance())
                .isCloseTo(60000, within(1e-6));
        assertThat(part(c, "Xc", Resonator.class).motionalResistance()).isEqualTo(20);
        assertThat(part(c, "Q4", Jfet.class).polarity()).isEqualTo(Polarity.P);
        assertThat(part(c, "Q4", Jfet.class).model().pinchOff()).isEqualTo(-2.1);
        assertThat(part(c, "Q3", Bipolar.class).polarity()).isEqualTo(Polarity.P);
        assertThat(part(c, "Q7", Bipolar.class).model().forwardBeta()).isEqualTo(200);
        assertThat(part(c, "D2.resistance", Resistor.class).resistance()).isEqualTo(0.5);
        assertThat(part(c, "Vs", VoltageSource.class).wave()).isEqualTo(new Wave.Sine(1, 0.1, 1e6, Math.PI / 2));
        assertThat(part(c, "Au", VoltageSource.class).wave()).isEqualTo(new Wave.Sine(0, 0.3, 1000, 0));
        assertThat(part(c, "Au.resistance", Resistor.class).nets()).containsExactly("Au.inner", "g2");
        assertThat(part(c, "M1", Load.class).capacitance()).isEqualTo(15e-12);
        assertThat(part(c, "k(Lt,La)", Coupling.class).k()).isEqualTo(0.002);
        assertThat(part(c, "stray1(drain,ground)", Capacitor.class).capacitance())
                .isEqualTo(3e-12);
        assertThat(part(c, "supply", Battery.class).emf()).isBetween(6.5, 8.5);
        assertThat(c.part("probe(TP1)")).isEmpty();
    }

    @Test
    void every_engine_part_is_traced_to_its_place() throws BadInputException {
        Build build = Builds.read(Builds.EVERYTHING);
        Assembled assembled = CircuitOf.build(build, Overlay.NONE);
        for (Part part : assembled.circuit().parts()) {
            String path = assembled.origin(part.name()).orElseThrow();
            assertThat(build.top().find(path)).as(part.name()).isPresent();
        }
        assertThat(assembled.enginePartsOf("parts.D2")).containsExactly("D2", "D2.resistance");
    }

    @Test
    void every_device_of_the_library_stands_in_a_circuit_or_says_what_its_sheet_lacks() {
        int unusable = 0;
        for (Device device : DeviceLibrary.standard().devices()) {
            String part =
                    switch (device.family()) {
                        case N_JFET, P_JFET -> "{jfet: T, drain: rail, gate: a, source: ground}";
                        case NPN -> "{npn: T, collector: rail, base: a, emitter: ground}";
                        case PNP -> "{pnp: T, collector: ground, base: a, emitter: rail}";
                        case DUAL_GATE_N_MOSFET ->
                            "{dual_gate_mosfet: T, drain: rail, gate2: rail, gate1: a, source: ground}";
                        case TUNING_DIODE -> "{tuning_diode: T, anode: a, cathode: ground}";
                        case SILICON_DIODE, SCHOTTKY_DIODE, GERMANIUM_DIODE -> "{diode: T, anode: a, cathode: ground}";
                    };
            String text = "galena: 1\nsupply: {voltage: 9 V, resistance: 1 Ω}\nparts:\n  X: "
                    + part.replace("T,", device.type() + ",") + "\n  R: {resistor: 1k, from: rail, to: a}\n"
                    + "  S: {resistor: 1k, from: a, to: ground}\n";
            try {
                Circuit circuit =
                        CircuitOf.build(Builds.read(text), Overlay.NONE).circuit();
                assertThat(circuit.part("X")).as(device.type()).isPresent();
            } catch (BadInputException refused) {
                assertThat(refused.problems().get(0).found()).contains("can't be used");
                unusable++;
            }
        }
        assertThat(unusable).isLessThan(DeviceLibrary.standard().devices().size() / 5);
    }

    /** Square law with channel-length modulation: I = β (v_gs − V_P)² (1 + λ v_ds), the source resistor carrying I. */
    @Test
    void the_engine_rests_where_the_square_law_puts_the_stage() throws BadInputException {
        Circuit circuit =
                CircuitOf.build(Builds.read(Builds.STAGE), Overlay.NONE).circuit();
        OperatingPoint.Found rest = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        Jfet.Model q1 = part(circuit, "Q1", Jfet.class).model();
        double source = rest.voltage("source");
        double over = -source - q1.pinchOff();
        double current =
                q1.beta() * over * over * (1 + q1.channelLengthModulation() * (rest.voltage("drain") - source));
        Published.source("build", Kind.CLOSED_FORM, "JFET square law with channel-length modulation, self-biased")
                .matchesRelative("source current of the stage, A", current, source / 1000, JUNCTION_LEAKAGE)
                .matchesRelative("supply current of the stage, A", current, -rest.current("supply"), JUNCTION_LEAKAGE);
    }

    @Test
    void an_overlay_changes_the_circuit_and_not_the_build() throws BadInputException {
        Build build = Builds.read(Builds.EVERYTHING);
        Quantity pico = Quantity.of(1e-12, Unit.FARAD);
        Optional<Quantity> none = Optional.empty();
        Calibration calibration = new Calibration(
                "2026-03-08",
                Map.of(
                        "Lt",
                        new Calibration.Correction(Optional.of(Quantity.of(0.98, Unit.NUMBER)), none, none, none),
                        "Q1",
                        new Calibration.Correction(
                                none,
                                Optional.of(Quantity.of(7e-3, Unit.AMPERE)),
                                Optional.of(Quantity.of(-1.9, Unit.VOLT)),
                                none)),
                List.of(new Stray("out", "drain", pico)),
                List.of());
        Overlay overlay = Overlay.NONE
                .set("Ct", 1)
                .atTemperature(40)
                .withSupply(new Overlay.SupplyState(6, 2))
                .withStrays(List.of(new Stray("out", "ground", pico)))
                .withCouplings(List.of(new Coupled("La", "Lt", Quantity.of(0.01, Unit.NUMBER))))
                .withCalibration(calibration)
                .probing("TP1");
        Circuit c = CircuitOf.build(build, overlay).circuit();
        assertThat(part(c, "Ct", Trimmer.class).capacitance()).isCloseTo(60e-12, ROUNDING);
        assertThat(c.temperature()).isEqualTo(40);
        assertThat(part(c, "supply", Battery.class).emf()).isEqualTo(6);
        assertThat(part(c, "stray2(out,ground)", Capacitor.class).capacitance()).isEqualTo(1e-12);
        assertThat(part(c, "stray3(out,drain)", Capacitor.class).capacitance()).isEqualTo(1e-12);
        assertThat(part(c, "k(La,Lt)", Coupling.class).k()).isEqualTo(0.01);
        assertThat(c.part("k(Lt,La)")).isEmpty();
        assertThat(part(c, "Lt", Coil.class).inductance()).isCloseTo(0.98 * 180e-6, ROUNDING);
        assertThat(part(c, "Q1", Jfet.class).model().saturationCurrent()).isEqualTo(7e-3);
        assertThat(part(c, "probe(TP1)", Load.class).resistance()).isEqualTo(10e6);
        assertThat(part(everything(Overlay.NONE), "Ct", Trimmer.class).position())
                .isEqualTo(0.4);
    }

    @Test
    void an_overlay_of_another_build_is_refused_with_all_that_does_not_fit() throws BadInputException {
        Build build = Builds.read(Builds.STAGE);
        Quantity pico = Quantity.of(1e-12, Unit.FARAD);
        Overlay overlay = Overlay.NONE
                .set("Cx", 0.5)
                .atTemperature(300)
                .withStrays(List.of(new Stray("drian", "ground", pico), new Stray("out", "out", pico)))
                .withCouplings(List.of(new Coupled("Lt", "Cs", Quantity.of(0.1, Unit.NUMBER))))
                .probing("TP7");
        BadInputException bad = catchThrowableOfType(BadInputException.class, () -> CircuitOf.build(build, overlay));
        assertThat(bad.problems())
                .extracting(Problem::found)
                .containsExactly(
                        "the build has no adjustment \"Cx\"",
                        "the build has no net \"drian\"",
                        "a stray begins and ends at out",
                        "the build has no coil \"Cs\"",
                        "the build has no test point \"TP7\"",
                        "300.0 °C is out of range");
    }

    /** Each fault of structure in a small build: what is said, and where. */
    @ParameterizedTest
    @CsvFileSource(resources = "/slips/structure.txt", delimiter = '|', quoteCharacter = '\0', encoding = "UTF-8")
    void each_fault_of_structure_is_placed_in_the_file(String parts, String where, String found, String rest)
            throws BadInputException {
        Build build = Builds.read("galena: 1\nparts:\n  " + parts.replace("; ", "\n  ") + "\n");
        BadInputException bad =
                catchThrowableOfType(BadInputException.class, () -> CircuitOf.build(build, Overlay.NONE));
        assertThat(bad).as("%s has no fault", parts).isNotNull();
        Problem problem = bad.problems().get(0);
        assertThat(problem.place().line() + ":" + problem.place().column() + " " + problem.path())
                .isEqualTo(where);
        assertThat(problem.found()).isEqualTo(found);
        assertThat(problem.rule() + problem.remedy().map(r -> " " + r).orElse(""))
                .isEqualTo(rest);
    }

    @Test
    void couplings_that_cannot_exist_together_are_told() throws BadInputException {
        String text = Builds.STAGE
                .replace(
                        "strays:",
                        "  Lb: {coil: 5 µH, resistance: 1 Ω, from: b, to: ground}\n  Rb: {resistor: 1k, from: b, to: ground}\nstrays:")
                .replace("k: 0.1}", "k: 0.95}\n  - {between: [Lt, Lb], k: 0.95}\n  - {between: [La, Lb], k: -0.5}");
        Build build = Builds.read(text);
        BadInputException bad =
                catchThrowableOfType(BadInputException.class, () -> CircuitOf.build(build, Overlay.NONE));
        assertThat(bad.problems().get(0).found()).isEqualTo("the couplings of Lb with Lt, La can't exist together");
        assertThat(bad.problems().get(0).place().line()).isEqualTo(16);
    }

    @Test
    void what_is_odd_but_can_be_solved_is_a_warning() throws BadInputException {
        Build build = Builds.read(
                """
                galena: 1
                parts:
                  V1: {voltage: 1 V, plus: a, minus: ground}
                  C1: {capacitor: 1n, from: a, to: ground}
                  R1: {resistor: 1k, from: a, to: ground}
                """);
        List<Problem> warnings = CircuitOf.build(build, Overlay.NONE).warnings();
        assertThat(warnings).extracting(p -> p.place().line()).containsExactly(4);
    }
}
