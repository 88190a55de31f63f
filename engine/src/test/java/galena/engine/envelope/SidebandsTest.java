package galena.engine.envelope;

import static org.assertj.core.api.Assertions.assertThat;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Polarity;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.steady.Accuracy;
import galena.engine.steady.DrivenSteadyState;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Watch;
import galena.proof.Kind;
import galena.proof.Published;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A square law multiplies carrier and slow source into a bare tank: its sidebands in closed form. */
class SidebandsTest {
    private static final double F = 1e6;
    private static final double W = 2 * Math.PI * F;
    private static final double L = 100e-6;
    private static final double Q = 80;
    private static final double IDSS = 4e-3;
    private static final double PINCH = -3;
    private static final double BIAS = -1.5;

    /** Error of the live mesh in an amplitude. */
    private static final double MESH = 1e-5;

    private static VoltageSource source(String name, String plus, String minus, Wave wave) {
        return new VoltageSource(name, plus, minus, wave);
    }

    /** The JFET is saturated all along and holds no charge. */
    private static SteadyState.Found carrier() {
        Junction none = Junction.silicon(1e-30, 1, 0, 0.8, 0.5, 0).withLeakage(0);
        Circuit circuit = Circuit.of(
                source("B", "rail", "ground", new Wave.Direct(40)),
                new Coil("L", "rail", "drain", L, W * L / Q, 0, 0),
                new Capacitor("C", "rail", "drain", 1 / (W * W * L)),
                source("A", "slow", "ground", new Wave.Direct(0)),
                source("V", "bias", "slow", new Wave.Direct(BIAS)),
                source("S", "gate", "bias", new Wave.Sine(0, 0.1, F, 0)),
                new Jfet("Q", Polarity.N, "drain", "gate", "ground", new Jfet.Model(IDSS, PINCH, 0, none, none)));
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
        SteadyState state = new DrivenSteadyState(Accuracy.LIVE).solve(point, F);
        assertThat(state).as("%s", state).isInstanceOf(SteadyState.Found.class);
        return (SteadyState.Found) state;
    }

    /** The coil's current for one ampere drawn from the tank at a frequency. */
    private static Complex gain(double frequency) {
        double w = 2 * Math.PI * frequency, r = W * L / Q, c = 1 / (W * W * L);
        return new Complex(1 - w * w * L * c, w * r * c).reciprocal();
    }

    /** The drain's carrier current is β·2(u − Vp)·s with u the gate's slow voltage: 1/(BIAS − PINCH) of it for each volt. */
    private static Complex[] lines(double slow) {
        double m = 1 / (BIAS - PINCH);
        Complex carrier = gain(F);
        Complex up = gain(F + slow).multiply(m / 2).divide(carrier);
        Complex low = gain(F - slow).multiply(m / 2).divide(carrier);
        return new Complex[] {up, low};
    }

    @ParameterizedTest
    @CsvSource({"10", "1000", "6250", "15000", "50000"})
    void sidebands_pass_the_tank_by_its_impedance(double slow) {
        Published source = Published.source(
                "engine",
                Kind.CLOSED_FORM,
                "Sidebands of a product through a tank: each by the gain at its own frequency");
        SteadyState.Found carrier = carrier();
        int coil = carrier.waveforms().equations().current("L").orElseThrow();
        Response.Modulation found = new Sidebands(carrier, "A").at(slow).modulation(coil, 0, 1);
        Complex[] lines = lines(slow);
        Complex depth = lines[0].add(lines[1].conjugate());
        Complex swing = lines[0].subtract(lines[1].conjugate()).multiply(slow);
        source.matches(
                "real part of the depth per volt at " + slow + " Hz", depth.getReal(), found.amplitude()[0], MESH);
        source.matches(
                "imaginary part of the depth per volt at " + slow + " Hz",
                depth.getImaginary(),
                found.amplitude()[1],
                MESH);
        source.matches("swing per volt at " + slow + " Hz, Hz", swing.norm(), found.swing(), MESH * slow);
    }

    /** The symmetrical form is the limit of a narrow tank: what is left out is of the order of slow over carrier. */
    @ParameterizedTest
    @CsvSource({"1000", "3000", "6250", "10000"})
    void a_symmetrical_tank_lowers_depth_by_its_selectivity(double slow) {
        Published source = Published.source(
                "engine", Kind.CLOSED_FORM, "Sidebands of a symmetrical tank are down by 1/√(1 + (2 Q fa/fc)²)");
        SteadyState.Found carrier = carrier();
        int coil = carrier.waveforms().equations().current("L").orElseThrow();
        Sidebands sidebands = new Sidebands(carrier, "A");
        double still = sidebands.at(1e-3).modulation(coil, 0, 1).depth();
        double there = sidebands.at(slow).modulation(coil, 0, 1).depth();
        double turn = 2 * Q * slow / F;
        source.matches(
                "depth at " + slow + " Hz against a slow one",
                1 / Math.sqrt(1 + turn * turn),
                there / still,
                2 * slow / F);
    }

    @Test
    void a_small_level_gives_the_envelope_of_the_sidebands() {
        SteadyState.Found carrier = carrier();
        int coil = carrier.waveforms().equations().current("L").orElseThrow();
        Response.Modulation small = new Sidebands(carrier, "A").at(5000).modulation(coil, 0, 1);
        double level = 0.01;
        Envelope envelope =
                (Envelope) new DynamicEnvelope(1e-5, Watch.NONE).solve(carrier, new SlowSource("A", level, 5000));
        double[][] z = envelope.current("L", 1);
        double re = 0, im = 0, mean = 0;
        for (int k = 0; k < z[0].length; k++) {
            double angle = 2 * Math.PI * k / z[0].length, size = Math.hypot(z[0][k], z[1][k]);
            mean += size / z[0].length;
            re += 2 * size * Math.sin(angle) / z[0].length;
            im += 2 * size * Math.cos(angle) / z[0].length;
        }
        // level sin ωτ = Re(−j level e^(jωτ)): the in-phase part is the real one
        assertThat(re / mean / level).isCloseTo(small.amplitude()[0], org.assertj.core.api.Assertions.within(1e-4));
        assertThat(im / mean / level).isCloseTo(small.amplitude()[1], org.assertj.core.api.Assertions.within(1e-4));
    }
}
