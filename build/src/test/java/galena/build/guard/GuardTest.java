package galena.build.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import galena.build.DemoBuild;
import galena.build.folder.BuildFolder;
import galena.build.folder.Overlay;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.predict.StaticDepth;
import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.Part;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import galena.engine.steady.Accuracy;
import galena.engine.steady.OrbitAdjoint;
import galena.engine.steady.Retrim;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What guard says of the demo build, against solving the changed build again. */
final class GuardTest {
    /** Of a change: what a finite step bends, and twice the certified frequency error over it. */
    private static final double AGAIN = 0.01;

    @TempDir
    static Path here;

    private static BuildFolder demo;
    private static Running running;
    private static GuardReport report;

    @BeforeAll
    static void guard() throws Exception {
        demo = DemoBuild.in(here.resolve("demo"));
        running = Running.of(demo.build(), Overlay.NONE, Accuracy.CERTIFIED, Progress.SILENT);
        report = Guard.of(demo, Overlay.NONE, Accuracy.CERTIFIED, Progress.SILENT);
    }

    private static SteadyState.Found again(Circuit circuit) {
        return (SteadyState.Found)
                new SteadyOscillation(Accuracy.CERTIFIED).solveNear(Equations.of(circuit), running.state());
    }

    private static GuardReport.Moves part(String value) {
        return report.parts().stream()
                .filter(p -> p.value().equals(value))
                .findFirst()
                .orElseThrow()
                .perPercent();
    }

    private record Change(String value, Part below, Part above) {
        @Override
        public String toString() {
            return value;
        }
    }

    /** A tenth of a percent either way: the difference is that of one fifth of a percent. */
    static Stream<Change> changes() throws Exception {
        guard();
        Circuit c = running.circuit();
        Coil lt = (Coil) c.part("Lt").orElseThrow(), la = (Coil) c.part("La").orElseThrow();
        Capacitor cf = (Capacitor) c.part("Cf").orElseThrow();
        Resistor rs = (Resistor) c.part("Rs").orElseThrow(),
                re = (Resistor) c.part("Re").orElseThrow();
        return Stream.of(
                new Change("Lt inductance", lt.scaled(0.999, 0.999), lt.scaled(1.001, 1.001)),
                new Change("La inductance", la.scaled(0.999, 0.999), la.scaled(1.001, 1.001)),
                new Change("La loss", la.scaled(1, 0.999), la.scaled(1, 1.001)),
                new Change("Cf capacitance", cf.scaled(0.999), cf.scaled(1.001)),
                new Change("Rs resistance", rs.scaled(0.999), rs.scaled(1.001)),
                new Change("Re resistance", re.scaled(0.999), re.scaled(1.001)));
    }

    @ParameterizedTest
    @MethodSource("changes")
    void one_percent_does_what_solving_again_does(Change change) {
        SteadyState.Found below = again(running.circuit().with(change.below)),
                above = again(running.circuit().with(change.above));
        GuardReport.Moves said = part(change.value);
        double frequency =
                5 * (above.waveforms().frequency() - below.waveforms().frequency());
        assertThat(said.carrier()).isCloseTo(frequency, within(AGAIN * Math.abs(frequency) + 2));
        double output = 5 * decibels(below, above, 1);
        assertThat(said.fixed().output()).isCloseTo(output, within(AGAIN * Math.abs(output) + 1e-4));
        double second = 5 * decibels(below, above, 2) - output;
        assertThat(said.fixed().harmonic(2)).isCloseTo(second, within(AGAIN * Math.abs(second) + 1e-3));
    }

    private static double decibels(SteadyState.Found below, SteadyState.Found above, int h) {
        return 20
                * Math.log10(above.waveforms().currentAmplitude("La", h)
                        / below.waveforms().currentAmplitude("La", h));
    }

    @ParameterizedTest
    @MethodSource("changes")
    void re_trimmed_figures_are_those_after_turning_the_trimmer_back(Change change) {
        assertThat(report.trimmer()).isEqualTo("Ct");
        double output = 5 * decibels(trimmedBack(change.below), trimmedBack(change.above), 1);
        assertThat(part(change.value).retrimmed().output()).isCloseTo(output, within(AGAIN * Math.abs(output) + 2e-4));
    }

    private static SteadyState.Found trimmedBack(Part part) {
        Circuit changed = running.circuit().with(part);
        Trimmer trimmer = (Trimmer) changed.part("Ct").orElseThrow();
        return ((Retrim.Trimmed) new Retrim(Accuracy.CERTIFIED, Watch.NONE)
                        .toFrequency(
                                p -> Equations.of(changed.with(trimmer.at(p))),
                                0,
                                1,
                                trimmer.position(),
                                again(changed),
                                report.carrier()))
                .state();
    }

    /** The whole procedure again: carrier, held voltages, trough. */
    @ParameterizedTest
    @MethodSource("changes")
    void static_depth_moves_as_it_does_when_all_is_solved_again(Change change) {
        double difference = 5 * (depth(change.above) - depth(change.below));
        assertThat(part(change.value).fixed().depth().orElseThrow())
                .isCloseTo(difference, within(AGAIN * Math.abs(difference) + 1e-5));
    }

    private static double depth(Part part) {
        SteadyState.Found carrier = again(running.circuit().with(part));
        return StaticDepth.of(
                        carrier,
                        new OrbitAdjoint(carrier),
                        "S1",
                        running.audioLevel(),
                        "La",
                        Accuracy.CERTIFIED,
                        Watch.NONE)
                .orElseThrow()
                .value();
    }

    @Test
    void heat_and_supply_move_it_as_they_do_when_it_is_solved_again() throws Exception {
        double warm = frequency(Overlay.NONE.atTemperature(26)), cold = frequency(Overlay.NONE.atTemperature(24));
        assertThat(report.drift().perTenKelvin().carrier()).isCloseTo(5 * (warm - cold), within(2.0));
        double shares = report.drift().byPart().stream()
                .mapToDouble(GuardReport.Share::hertz)
                .sum();
        assertThat(shares).isCloseTo(report.drift().perTenKelvin().carrier(), within(1e-6));
        double ohms =
                ((galena.engine.part.Battery) running.circuit().part("supply").orElseThrow()).internalResistance();
        double emf =
                ((galena.engine.part.Battery) running.circuit().part("supply").orElseThrow()).emf();
        double more = frequency(Overlay.NONE.withSupply(new Overlay.SupplyState(emf + 0.1, ohms)));
        double less = frequency(Overlay.NONE.withSupply(new Overlay.SupplyState(emf - 0.1, ohms)));
        assertThat(report.drift().perVolt().carrier()).isCloseTo(5 * (more - less), within(3.0));
    }

    private static double frequency(Overlay overlay) throws Exception {
        return Running.of(demo.build(), overlay, Accuracy.CERTIFIED, Progress.SILENT)
                .state()
                .waveforms()
                .frequency();
    }

    @ParameterizedTest
    @ValueSource(strings = {"TP1", "TP2"})
    void a_named_probe_moves_the_carrier_by_what_predict_finds_with_it(String point) throws Exception {
        double with = frequency(Overlay.NONE.probing(point)), without = frequency(Overlay.NONE);
        assertThat(report.points().stream()
                        .filter(p -> p.name().equals(point))
                        .findFirst()
                        .orElseThrow()
                        .hertz()
                        .orElseThrow())
                .isCloseTo(with - without, within(0.5));
    }

    /** Either sign of a stray coupling: k = 0.0010 more and less than the build's 0.002. */
    @Test
    void a_stray_coupling_moves_it_either_way() {
        Coupling k = (Coupling) running.circuit().parts().stream()
                .filter(Coupling.class::isInstance)
                .findFirst()
                .orElseThrow();
        double more = again(running.circuit().with(k.scaled(1.25))).waveforms().frequency();
        double less = again(running.circuit().with(k.scaled(0.75))).waveforms().frequency();
        double said = report.couplings().get(0).moves().carrier();
        assertThat(said).isCloseTo(more - less, within(AGAIN * Math.abs(said) + 0.5));
    }

    @Test
    void metal_near_a_coil_is_less_inductance_and_more_loss() {
        Coil lt = (Coil) running.circuit().part("Lt").orElseThrow();
        double near = again(running.circuit().with(lt.scaled(0.999, 1.01)))
                .waveforms()
                .frequency();
        double said = report.tools().stream()
                .filter(t -> t.coil().equals("Lt"))
                .findFirst()
                .orElseThrow()
                .moves()
                .carrier();
        assertThat(said / 10).isCloseTo(near - report.carrier(), within(AGAIN * Math.abs(said / 10)));
    }

    @Test
    void every_number_of_every_device_is_there() {
        List<String> values =
                report.parts().stream().map(GuardReport.Part::value).toList();
        assertThat(values)
                .contains(
                        "Q1 saturation current",
                        "Q1 pinch off",
                        "Q1 channel length modulation",
                        "Q1 gate-source zero bias capacitance",
                        "Q1 gate-drain built in",
                        "Q2 forward beta",
                        "Q4 collector capacitance",
                        "Rs resistance",
                        "Pm track",
                        "supply voltage")
                .doesNotHaveDuplicates();
        // a third of a percent of gate-drain capacitance, some 3 pF, is some hundredth of a picofarad on the tank
        assertThat(part("Q1 gate-drain zero bias capacitance").carrier())
                .isNegative()
                .isGreaterThan(-200);
    }

    @Test
    void lists_run_from_the_largest_and_strays_are_named_once() {
        assertThat(report.parts().stream()
                        .map(p -> -Math.abs(p.perPercent().carrier()))
                        .toList())
                .isSorted();
        assertThat(report.strays().stream()
                        .map(s -> -Math.abs(s.perPicofarad().carrier()))
                        .toList())
                .isSorted();
        assertThat(report.distinctStrays().size())
                .isLessThan(2 * report.strays().size() / 3);
        assertThat(report.distinctStrays().get(0)).matches(s -> s.from().equals("drain") && s.to().equals("ground"));
        assertThat(report.advice().get(0)).contains("wiring of drain");
    }

    /** What is advised, done: the share as told, of the coefficient as told, leaves next to no drift. */
    @Test
    void the_compensation_advised_takes_the_drift_out(@TempDir Path other) throws Exception {
        String coil = "tolerance: 5 %, tempco: 50 ppm/K, from: orail";
        String warmer = "tolerance: 5 %, tempco: 120 ppm/K, from: orail";
        GuardReport falling = Guard.of(
                DemoBuild.in(other.resolve("falling"), coil, warmer), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        assertThat(falling.drift().perTenKelvin().carrier()).isLessThan(-200);
        Matcher advised = Pattern.compile("make (\\d+) pF of Cp N150 and (\\d+) pF of what it is now")
                .matcher(falling.drift().compensation());
        assertThat(advised.matches()).as(falling.drift().compensation()).isTrue();
        double share = Double.parseDouble(advised.group(1)) / 120;
        assertThat(Double.parseDouble(advised.group(1)) + Double.parseDouble(advised.group(2)))
                .isEqualTo(120);
        String mixed = String.format(Locale.ROOT, "%.1f ppm/K", -150 * share);
        GuardReport still = Guard.of(
                DemoBuild.in(
                        other.resolve("still"),
                        coil,
                        warmer,
                        "120 pF, tolerance: 2 %, tempco: NP0",
                        "120 pF, tolerance: 2 %, tempco: " + mixed),
                Overlay.NONE,
                Accuracy.LIVE,
                Progress.SILENT);
        // half a picofarad of rounding is some hertz
        assertThat(still.drift().perTenKelvin().carrier()).isCloseTo(0, within(5.0));
    }

    @Test
    void where_no_share_would_do_the_largest_cause_is_pointed_to(@TempDir Path other) throws Exception {
        GuardReport rising = Guard.of(
                DemoBuild.in(other, "tempco: 50 ppm/K, from: orail", "tempco: 0 ppm/K, from: orail"),
                Overlay.NONE,
                Accuracy.LIVE,
                Progress.SILENT);
        assertThat(rising.drift().perTenKelvin().carrier()).isGreaterThan(200);
        assertThat(rising.drift().compensation()).startsWith("no share of Cp");
    }

    @Test
    void what_does_not_oscillate_is_not_guarded(@TempDir Path other) {
        assertThatExceptionOfType(Running.NotRunning.class)
                .isThrownBy(() -> Guard.of(
                        DemoBuild.in(other, "Rs:  {resistor: 3.3 kΩ", "Rs:  {resistor: 330 kΩ"),
                        Overlay.NONE,
                        Accuracy.LIVE,
                        Progress.SILENT));
    }

    @Test
    void it_stops_when_told_to() {
        Progress impatient = new Progress() {
            @Override
            public void at(double share, String doing) {
                // only asked whether to stop
            }

            @Override
            public boolean cancelled() {
                return true;
            }
        };
        assertThatExceptionOfType(CancellationException.class)
                .isThrownBy(() -> Guard.of(demo, Overlay.NONE, Accuracy.LIVE, impatient));
    }
}
