package galena.build.reach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.folder.Builds;
import galena.build.folder.Overlay;
import galena.build.pattern.Pattern;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import galena.build.wiring.CircuitOf;
import galena.engine.circuit.Circuit;
import galena.engine.part.Capacitor;
import galena.engine.part.Resistor;
import galena.engine.steady.Accuracy;
import galena.proof.Kind;
import galena.proof.Published;
import java.nio.file.Files;
import java.nio.file.Path;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.util.FastMath;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** A short wire from the file to its field. */
final class WireReachTest {
    private static final String WIRE = "Wa: {wire: 3 m, diameter: 2 mm, ground_loss: 40 Ω, from: drain, to: ground}";

    @TempDir
    private Path folder;

    private static String build(String carrier, String wire) {
        return """
                galena: 1
                intent: {carrier: %s, rules: us, modulation: 50 %%}
                supply: {voltage: 9 V, resistance: 10 Ω}
                parts:
                  Lt: {coil: 100 µH, q: 80 @ 1 MHz, from: rail, to: drain}
                  Cp: {capacitor: 150 pF, from: drain, to: ground}
                  Cf: {capacitor: 100 pF, from: drain, to: source}
                  Cs: {capacitor: 1 nF, from: source, to: ground}
                  Rs: {resistor: 3.3 kΩ, from: source, to: ground}
                  Q1: {jfet: BF256B, drain: drain, gate: ground, source: source}
                  %s
                """
                .formatted(carrier, wire);
    }

    /** C = 2πε₀h/(ln(h/a) − 1), R = 40π²(h/λ)² of a short monopole (C. A. Balanis, Antenna Theory). */
    @Test
    void it_stands_in_the_circuit_as_capacitance_and_losses_in_series() throws Exception {
        Circuit circuit =
                CircuitOf.build(Builds.read(build("1 MHz", WIRE)), Overlay.NONE).circuit();
        double h = 3, a = 1e-3, lambda = 299.792458;
        double capacitance = 2 * Math.PI * 8.8541878e-12 * h / (Math.log(h / a) - 1);
        double radiation = 40 * Math.pow(Math.PI * h / lambda, 2);
        Published.source(
                        "build",
                        Kind.CLOSED_FORM,
                        "short monopole over perfect ground (C. A. Balanis, Antenna Theory, 4 and 8)")
                .matchesRelative(
                        "capacitance (F)",
                        capacitance,
                        ((Capacitor) circuit.part("Wa").orElseThrow()).capacitance(),
                        2e-3)
                .matchesRelative(
                        "ground loss and radiation (Ω)",
                        40 + radiation,
                        ((Resistor) circuit.part("Wa.resistance").orElseThrow()).resistance(),
                        1e-6);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/short-monopole.csv", numLinesToSkip = 3, encoding = "UTF-8")
    void its_radiation_stands_in_the_circuit(double height, double frequency, double ohms) throws Exception {
        String wire = WIRE.replace("3 m", height + " m").replace("40 Ω", "0 Ω");
        Circuit circuit = CircuitOf.build(Builds.read(build(frequency + " Hz", wire)), Overlay.NONE)
                .circuit();
        Published.source(
                        "build",
                        Kind.CLOSED_FORM,
                        "short vertical wire over perfect ground (C. A. Balanis, Antenna Theory)")
                .matchesRelative(
                        "radiation resistance of " + height + " m at 1 MHz (Ω)",
                        ohms,
                        ((Resistor) circuit.part("Wa.resistance").orElseThrow()).resistance(),
                        1e-6);
    }

    /**
     * Of the pattern's wire, one metre over ground: charge spread evenly along it, mean potential of itself and its image, with the
     * integrals over the source point in closed form and those over the field point by Gauss and Legendre.
     */
    @Test
    void the_patterns_wire_has_the_capacitance_of_evenly_spread_charge() throws Exception {
        Pattern.write("short-wire", folder.resolve("wire"));
        Circuit circuit = CircuitOf.build(
                        BuildFolder.open(folder.resolve("wire")).build(), Overlay.NONE)
                .circuit();
        double h = 2.4, a = 0.75e-3, base = 1;
        UnivariateFunction potential = z ->
                FastMath.asinh(z / a) + FastMath.asinh((h - z) / a) - Math.log((z + h + 2 * base) / (z + 2 * base));
        double mean = new IterativeLegendreGaussIntegrator(32, 1e-10, 1e-12).integrate(100_000, potential, 0, h) / h;
        Published.source(
                        "build",
                        Kind.LIBRARY,
                        "Hipparchus, Gauss-Legendre integral of the potential of evenly spread charge")
                .matchesRelative(
                        "capacitance of the short-wire pattern's wire (F)",
                        4 * Math.PI * 8.8541878128e-12 * h / mean,
                        ((Capacitor) circuit.part("A1").orElseThrow()).capacitance(),
                        1e-6);
    }

    /** Harmonics for which the wire is too long are left out, and it says so. */
    @Test
    void a_harmonic_that_a_wire_is_too_long_for_is_left_out_and_said() throws Exception {
        Pattern.write("short-wire", folder.resolve("high"));
        BuildFolder opened = BuildFolder.open(folder.resolve("high"));
        Prediction prediction = Predict.of(opened, Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        Reach reach = (Reach) Reaching.of(opened.build(), prediction, Surroundings.RESIDENTIAL);
        assertThat(reach.notes()).anyMatch(n -> n.startsWith("Harmonics above 12 MHz are not judged"));
        assertThat(reach.emissions()).isNotEmpty().allSatisfy(e -> assertThat(2.4 * e.frequency())
                .isLessThanOrEqualTo(0.1 * 299792458));
    }

    /** Far under its resonance the current at the foot is ωC times the voltage at the top of the tank. */
    @Test
    void its_current_is_predicted_and_makes_its_field() throws Exception {
        Files.writeString(folder.resolve("build.yaml"), build("1 MHz", WIRE));
        BuildFolder opened = BuildFolder.open(folder);
        Prediction prediction = Predict.of(opened, Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        Prediction.Oscillation running = (Prediction.Oscillation) prediction.running();
        double volts = fundamental(running, "voltage across Lt");
        double amperes = fundamental(running, "current in Wa");
        double capacitance = ((Capacitor) CircuitOf.build(opened.build(), Overlay.NONE)
                        .circuit()
                        .part("Wa")
                        .orElseThrow())
                .capacitance();
        double reactance = 1 / (2 * Math.PI * running.carrier().value() * capacitance);
        assertThat(amperes).isCloseTo(volts / Math.hypot(reactance, 40), within(1e-2 * amperes));
        Reach reach = (Reach) Reaching.of(opened.build(), prediction, Surroundings.RESIDENTIAL);
        assertThat(reach.carrier().current().value()).isCloseTo(amperes / Math.sqrt(2), within(1e-9 * amperes));
        assertThat(reach.moment()).isInstanceOf(Figure.Missing.class);
        assertThat(reach.rules()).isInstanceOf(Rules.Judged.class);
    }

    private static double fundamental(Prediction.Oscillation running, String quantity) {
        return running.spectra().stream()
                .filter(s -> s.quantity().equals(quantity))
                .findFirst()
                .orElseThrow()
                .fundamental()
                .value();
    }

    @Test
    void a_wire_that_is_not_short_or_not_thin_is_refused_at_its_place() throws Exception {
        var longWire = Builds.read(build("12 MHz", WIRE));
        BadInputException bad =
                catchThrowableOfType(BadInputException.class, () -> CircuitOf.build(longWire, Overlay.NONE));
        assertThat(bad.problems().get(0).toString()).contains("parts.Wa.wire: is too long for 12.0 MHz", "2.5 m");
        assertThat(Builds.problems(build("1 MHz", WIRE.replace("3 m", "10 cm").replace("2 mm", "5 cm")))
                        .get(0)
                        .toString())
                .contains("parts.Wa.diameter: is too thick for 100 mm");
    }
}
