package galena.engine.startup;

import static org.assertj.core.api.Assertions.assertThat;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Coupling;
import galena.engine.part.CurrentSource;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.List;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Resonance, coupled circuits and filters against their closed forms. */
class LinearResponseTest {
    private static final double EXACT = 1e-10;
    private static final Wave SILENT = new Wave.Sine(0, 1, 1e6, 0);

    private static OperatingPoint.Found point(Circuit circuit) {
        return (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
    }

    /** The complex voltage of a net for one unit of the source named S. */
    private static Complex gain(OperatingPoint.Found point, double frequency, String net) {
        Equations equations = point.equations();
        double[][] x = Linearised.at(equations, point.x()).respond(frequency, equations.unitDeparture("S"));
        int unknown = equations.net(net);
        return new Complex(x[0][unknown], x[1][unknown]);
    }

    private static void same(Published source, String what, Complex expected, Complex found) {
        source.matchesRelative(what + ", magnitude", expected.norm(), found.norm(), EXACT);
        source.matches(what + ", phase, rad", 0, found.divide(expected).getArgument(), EXACT);
    }

    private static double omega(double frequency) {
        return 2 * Math.PI * frequency;
    }

    private static Complex series(double r, double l, double c, double frequency) {
        double w = omega(frequency);
        return new Complex(r, w * l - 1 / (w * c));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2e6, 0.9e6, 1.0065e6, 1.2e6, 5e6})
    void a_series_circuit_rises_to_its_resonance(double frequency) {
        double r = 12, l = 100e-6, c = 250e-12;
        Circuit circuit = Circuit.of(
                new VoltageSource("S", "in", "ground", SILENT),
                new Coil("L", "in", "out", l, r, 0, 0),
                new Capacitor("C", "out", "ground", c));
        Complex expected = new Complex(0, -1 / (omega(frequency) * c)).divide(series(r, l, c, frequency));
        same(
                Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "series resonance, F. E. Terman, Radio Engineers' Handbook (1943), sec. 3"),
                "capacitor voltage at " + frequency + " Hz",
                expected,
                gain(point(circuit), frequency, "out"));
    }

    @Test
    void a_parallel_circuit_has_its_resonance_and_its_q() {
        double r = 50e3, l = 180e-6, c = 140e-12;
        Circuit circuit = Circuit.of(
                new Coil("L", "a", "ground", l, 0, 0, 0),
                new Capacitor("C", "a", "ground", c),
                new Resistor("R", "a", "ground", r));
        OperatingPoint.Found point = point(circuit);
        List<Mode> modes = Linearised.at(point.equations(), point.x()).modes();
        assertThat(modes).hasSize(1);
        double growth = -1 / (2 * r * c), angular = Math.sqrt(1 / (l * c) - growth * growth);
        Published.source("engine", Kind.CLOSED_FORM, "parallel resonance: λ = −1/2RC ± j√(1/LC − 1/4R²C²)")
                .matchesRelative("decay of the mode, 1/s", growth, modes.get(0).growth(), EXACT)
                .matchesRelative(
                        "frequency, Hz", angular / (2 * Math.PI), modes.get(0).frequency(), 1e-12)
                .matchesRelative(
                        "loaded Q", angular / (-2 * growth), modes.get(0).q(), EXACT);
    }

    /** The self-capacitance of a coil stands beside the tuning capacitor. */
    @Test
    void self_capacitance_pulls_a_coil_down() {
        double l = 180e-6, own = 7e-12, c = 120e-12;
        OperatingPoint.Found point =
                point(Circuit.of(new Coil("L", "a", "ground", l, 0.01, own, 0), new Capacitor("C", "a", "ground", c)));
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "resonance f = 1/2π√(L(C + C_self)), W. Thomson, Phil. Mag. 5 (1853) 393")
                .matchesRelative(
                        "frequency, Hz",
                        1 / (2 * Math.PI * Math.sqrt(l * (c + own))),
                        Linearised.at(point.equations(), point.x())
                                .modes()
                                .get(0)
                                .frequency(),
                        1e-10);
    }

    @ParameterizedTest
    @CsvSource({"0.002, 0.98e6", "0.0125, 1.0e6", "0.05, 1.02e6", "0.3, 1.15e6", "-0.05, 1.02e6"})
    void coupled_circuits_follow_the_closed_form(double k, double frequency) {
        double r1 = 8, r2 = 14, l1 = 100e-6, l2 = 150e-6, c1 = 253e-12, c2 = 168e-12, w = omega(frequency);
        Circuit circuit = Circuit.of(
                new VoltageSource("S", "in", "ground", SILENT),
                new Capacitor("C1", "in", "top", c1),
                new Resistor("Rbig", "in", "top", 1e15),
                new Coil("L1", "top", "ground", l1, r1, 0, 0),
                new Coil("L2", "out", "ground", l2, r2, 0, 0),
                new Coupling("K", "L1", "L2", k),
                new Capacitor("C2", "out", "ground", c2));
        double m = k * Math.sqrt(l1 * l2);
        Complex z1 = series(r1, l1, c1, frequency), z2 = series(r2, l2, c2, frequency);
        // secondary current jωM I₁/Z₂, primary V/(Z₁ + ω²M²/Z₂); it charges C2
        Complex primary = Complex.ONE.divide(z1.add(z2.reciprocal().multiply(w * w * m * m)));
        Complex secondary = primary.multiply(new Complex(0, w * m)).divide(z2);
        Complex expected = secondary.multiply(new Complex(0, -1 / (w * c2)));
        same(
                Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "coupled circuits, F. E. Terman, Radio Engineers' Handbook (1943), sec. 3: coupled impedance ω²M²/Z₂"),
                "secondary voltage, k " + k + ", " + frequency + " Hz",
                expected,
                gain(point(circuit), frequency, "out"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.002, 0.02, 0.2, 0.7})
    void equal_coupled_circuits_split_into_two_frequencies(double k) {
        double l = 100e-6, c = 250e-12, f0 = 1 / (2 * Math.PI * Math.sqrt(l * c));
        OperatingPoint.Found point = point(Circuit.of(
                new Coil("L1", "a", "ground", l, 0.001, 0, 0),
                new Capacitor("C1", "a", "ground", c),
                new Coil("L2", "b", "ground", l, 0.001, 0, 0),
                new Capacitor("C2", "b", "ground", c),
                new Coupling("K", "L1", "L2", k)));
        double[] found = Linearised.at(point.equations(), point.x()).modes().stream()
                .mapToDouble(Mode::frequency)
                .sorted()
                .toArray();
        assertThat(found).hasSize(2);
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "two equal coupled circuits: f₀/√(1 ± k), F. E. Terman (1943), sec. 3")
                .matchesRelative("lower frequency, k " + k, f0 / Math.sqrt(1 + k), found[0], 1e-9)
                .matchesRelative("upper frequency, k " + k, f0 / Math.sqrt(1 - k), found[1], 1e-9);
    }

    /** Maximally flat ladder of order three between equal terminations: gₖ = 2 sin((2k − 1)π/6) = 1, 2, 1. */
    @ParameterizedTest
    @ValueSource(doubles = {1e3, 3e3, 4.5e3, 9e3, 45e3})
    void a_maximally_flat_filter_has_its_response(double frequency) {
        double corner = 4500, r = 600, w = omega(corner);
        OperatingPoint.Found point = point(ladder(r, r / w * 2, 1 / (w * r), 1 / (w * r)));
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "S. Butterworth, Wireless Engineer 7 (1930) 536: |H|² = 1/(1 + (f/f_c)⁶)")
                .matchesRelative(
                        "gain at " + frequency + " Hz",
                        0.5 / Math.sqrt(1 + Math.pow(frequency / corner, 6)),
                        gain(point, frequency, "out").norm(),
                        EXACT);
    }

    /** Equal-ripple ladder of order three, 0.5 dB: |H|² = 1/(1 + ε² T₃²(f/f_c)), elements by Orchard's formulae. */
    @ParameterizedTest
    @ValueSource(doubles = {1e3, 2.25e3, 4.5e3, 9e3, 45e3})
    void an_equal_ripple_filter_has_its_response(double frequency) {
        double corner = 4500, r = 600, w = omega(corner), ripple = 0.5;
        double square = Math.pow(10, ripple / 10) - 1;
        double beta = Math.log(1 / Math.tanh(ripple * Math.log(10) / 40)), gamma = Math.sinh(beta / 6);
        double a1 = Math.sin(Math.PI / 6), a2 = 1, b1 = gamma * gamma + Math.pow(Math.sin(Math.PI / 3), 2);
        double g1 = 2 * a1 / gamma, g2 = 4 * a1 * a2 / (b1 * g1);
        OperatingPoint.Found point = point(ladder(r, g2 * r / w, g1 / (w * r), g1 / (w * r)));
        double u = frequency / corner, t3 = u * (4 * u * u - 3);
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "equal-ripple ladder: W. N. Tuttle and H. J. Orchard's element formulae, |H|² = 1/(1 + ε²T₃²)")
                .matchesRelative(
                        "gain at " + frequency + " Hz",
                        0.5 / Math.sqrt(1 + square * t3 * t3),
                        gain(point, frequency, "out").norm(),
                        1e-9);
    }

    private static Circuit ladder(double r, double l, double c1, double c2) {
        return Circuit.of(
                new VoltageSource("S", "in", "ground", SILENT),
                new Resistor("Ra", "in", "a", r),
                new Capacitor("C1", "a", "ground", c1),
                new Coil("L", "a", "out", l, 0, 0, 0),
                new Capacitor("C2", "out", "ground", c2),
                new Resistor("Rb", "out", "ground", r));
    }

    @Test
    void a_resonator_has_its_series_and_its_parallel_frequency() {
        Resonator crystal = Resonator.ofFrequency("X", "a", "ground", 1e6, 40e3, 12e-15, 4.5e-12);
        OperatingPoint.Found shorted = point(Circuit.of(crystal, new Resistor("R", "a", "ground", 1e-3)));
        OperatingPoint.Found open = point(Circuit.of(crystal, new Resistor("R", "a", "ground", 1e12)));
        double ratio = Math.sqrt(1 + 12e-15 / 4.5e-12);
        Published.source("engine", Kind.CLOSED_FORM, "W. G. Cady, Piezoelectricity (1946): f_p/f_s = √(1 + C₁/C₀)")
                .matchesRelative("series frequency, Hz", 1e6, only(shorted).frequency(), 1e-9)
                .matchesRelative(
                        "parallel frequency, Hz", 1e6 * ratio, only(open).frequency(), 1e-9)
                .matchesRelative("Q at series resonance", 40e3, only(shorted).q(), 1e-4);
    }

    private static Mode only(OperatingPoint.Found point) {
        List<Mode> modes = Linearised.at(point.equations(), point.x()).modes();
        assertThat(modes).hasSize(1);
        return modes.get(0);
    }

    /** The rule is symmetrical about f0, which a tank is only to F/f0. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/tank-sidebands.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void a_tank_trims_the_sidebands(double q, double f0, double audio, double ratio) {
        double l = 200e-6, w = omega(f0), c = 1 / (w * w * l);
        OperatingPoint.Found point = point(Circuit.of(
                new CurrentSource("S", "ground", "a", SILENT),
                new Coil("L", "a", "ground", l, 0, 0, 0),
                new Capacitor("C", "a", "ground", c),
                new Resistor("R", "a", "ground", q * w * l)));
        double carrier = gain(point, f0, "a").norm();
        double sides = 0.5
                * (gain(point, f0 + audio, "a").norm()
                        + gain(point, f0 - audio, "a").norm())
                / carrier;
        Published.source(
                        "engine",
                        Kind.CLOSED_FORM,
                        "F. E. Terman, Radio Engineers' Handbook (1943), amplitude modulation: 1/√(1 + (2QF/f₀)²)")
                .matchesRelative("sideband over carrier, Q " + q + ", F " + audio, ratio, sides, audio / f0);
    }

    /** Reciprocity: a passive network's transfer impedance is the same both ways. */
    @Test
    void a_passive_network_is_reciprocal() {
        Circuit base = Circuit.of(
                new Resistor("R1", "a", "ground", 3e3),
                new Coil("L1", "a", "b", 90e-6, 7, 4e-12, 0),
                new Coil("L2", "b", "ground", 30e-6, 3, 0, 0),
                new Coupling("K", "L1", "L2", 0.4),
                new Capacitor("C", "a", "c", 30e-12),
                new Resistor("R2", "c", "ground", 900),
                new Capacitor("C2", "b", "c", 100e-12));
        Complex there = gain(point(base.plus(new CurrentSource("S", "ground", "a", SILENT))), 1.3e6, "c");
        Complex back = gain(point(base.plus(new CurrentSource("S", "ground", "c", SILENT))), 1.3e6, "a");
        assertThat(there.subtract(back).norm()).isLessThan(1e-10 * there.norm());
    }
}
