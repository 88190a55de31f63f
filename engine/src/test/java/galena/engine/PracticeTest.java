package galena.engine;

import static org.assertj.core.api.Assertions.assertThat;

import galena.engine.circuit.Circuit;
import galena.engine.equations.Equations;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.part.Battery;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Load;
import galena.engine.part.Polarity;
import galena.engine.part.Resistor;
import galena.engine.part.Trimmer;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import galena.engine.startup.Startup;
import galena.engine.steady.Accuracy;
import galena.engine.steady.SteadyOscillation;
import galena.engine.steady.SteadyState;
import galena.engine.steady.Waveforms;
import galena.proof.Kind;
import galena.proof.Published;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Facts that builders go by and nobody prints: wide bands, said as bands. */
class PracticeTest {
    private static final long SEED = 531;
    private static final int DRAWS = 40;

    /** A grounded-gate Colpitts by the rule of thumb, its tank tuned with the trimmer in the middle and no strays. */
    private static Circuit colpitts(double megahertz, Jfet.Model model) {
        double cs = 1000e-12 / megahertz, cf = 100e-12 / Math.sqrt(megahertz), middle = 32.5e-12;
        double omega = 2 * Math.PI * 1e6 * megahertz, l = 1 / (omega * omega * (cs * cf / (cs + cf) + middle));
        return Circuit.of(
                new Battery("B", "rail", "ground", 9, 2),
                new Capacitor("Cd", "rail", "ground", 100e-9),
                Coil.ofQ("Lt", "rail", "drain", l, 80, 1e6 * megahertz),
                // what the next stage takes
                new Resistor("Rload", "rail", "drain", 12 * omega * l),
                new Trimmer("Ct", "drain", "ground", 5e-12, 60e-12, 0.5, 0),
                new Capacitor("Cf", "drain", "source", cf),
                new Capacitor("Cs", "source", "ground", cs),
                new Resistor("Rs", "source", "ground", 1e3),
                new Jfet("Q1", Polarity.N, "drain", "ground", "source", model));
    }

    /**
     * A small n-channel JFET within printed limits: I_DSS 2 to 15 mA, forward transconductance 3 to 6.5 mS, pinch-off −2 I_DSS/g_fs,
     * gate-source voltage at 200 µA within −0.4 and −3.8 V (a European general-purpose family in two grades).
     */
    private static Jfet.Model draw(Random random) {
        while (true) {
            double idss = 2e-3 + 13e-3 * random.nextDouble(), gfs = 3e-3 + 3.5e-3 * random.nextDouble();
            double pinchOff = -2 * idss / gfs, at200 = pinchOff * (1 - Math.sqrt(200e-6 / idss));
            if (at200 < -3.8 || at200 > -0.4) continue;
            Junction gate = Junction.silicon(1e-14, 1, 2.5e-12, 0.8, 0.5, 0);
            return new Jfet.Model(idss, pinchOff, 0.008, gate, gate);
        }
    }

    private static Startup startup(Circuit circuit) {
        return Startup.readiest(point(circuit)).orElseThrow();
    }

    private static OperatingPoint.Found point(Circuit circuit) {
        return (OperatingPoint.Found) OperatingPointLadder.climb(Equations.of(circuit));
    }

    private static Waveforms settle(Circuit circuit) {
        OperatingPoint.Found point = point(circuit);
        SteadyState state = new SteadyOscillation(Accuracy.LIVE)
                .solve(point, Startup.readiest(point).orElseThrow());
        assertThat(state).as("%s", state).isInstanceOf(SteadyState.Found.class);
        return ((SteadyState.Found) state).waveforms();
    }

    /** Harmonics two to ten of a coil's current over its fundamental. */
    private static double distortion(Waveforms waveforms, String coil) {
        double sum = 0;
        for (int h = 2; h <= 10; h++) sum += Math.pow(waveforms.currentAmplitude(coil, h), 2);
        return Math.sqrt(sum) / waveforms.currentAmplitude(coil, 1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.55, 1, 1.6})
    void a_grounded_gate_colpitts_by_the_rule_of_thumb_starts_over_the_spread_and_is_clean(double megahertz) {
        Random random = new Random(SEED);
        double least = Double.POSITIVE_INFINITY, dirtiest = 0;
        for (int k = 0; k < DRAWS; k++) {
            Circuit circuit = colpitts(megahertz, draw(random));
            least = Math.min(least, startup(circuit).margin());
            if (k < DRAWS / 4) dirtiest = Math.max(dirtiest, distortion(settle(circuit), "Lt"));
        }
        double ratio = (1000 / megahertz) / (100 / Math.sqrt(megahertz));
        Published.source(
                        "engine",
                        Kind.COMMON_PRACTICE,
                        "grounded-gate Colpitts: source to ground about 1000/f pF, drain to source about 100/√f pF, f in MHz, roughly ten to one; starts with any small JFET and gives a clean sine (a scope does not show the last 5 to 8 %)")
                .liesWithin("ratio of the capacitors at " + megahertz + " MHz", 7, 14, ratio)
                .liesWithin("least startup margin of " + DRAWS + " draws at " + megahertz + " MHz", 0.1, 10, least)
                .liesWithin("most distortion of the coil current at " + megahertz + " MHz", 0, 0.08, dirtiest);
    }

    /** A few picofarads of wiring and a probe; the trimmer is then turned back by halving its range. */
    @Test
    void strays_bring_the_frequency_down_and_a_trimmer_brings_it_back() {
        Jfet.Model model = draw(new Random(SEED));
        Circuit bare = colpitts(1, model);
        Circuit wired = bare.plus(
                new Capacitor("wiring", "drain", "ground", 4e-12),
                new Capacitor("socket", "drain", "source", 1.5e-12),
                new Load("probe", "drain", "ground", 10e6, 3e-12));
        Coil coil = (Coil) bare.part("Lt").orElseThrow();
        wired = wired.with(
                new Coil("Lt", coil.from(), coil.to(), coil.inductance(), coil.seriesResistance(), 4e-12, 0));
        double formula = 1e6, low = settle(wired).frequency();
        double closed = 0, open = 1;
        for (int k = 0; k < 20; k++) {
            double middle = (closed + open) / 2;
            Trimmer turned = ((Trimmer) wired.part("Ct").orElseThrow()).at(middle);
            if (settle(wired.with(turned)).frequency() > formula) closed = middle;
            else open = middle;
        }
        Waveforms back = settle(wired.with(((Trimmer) wired.part("Ct").orElseThrow()).at(closed)));
        Published.source(
                        "engine",
                        Kind.COMMON_PRACTICE,
                        "strays of wiring, coil and device bring an oscillator some per cent below the bare formula, and the trimmer must have the range to bring it back")
                .liesWithin("frequency below the formula, %", 2, 12, 100 * (1 - low / formula))
                .liesWithin("trimmer position that restores it, %", 3, 47, 100 * closed)
                .liesWithin("frequency restored, error in Hz", 0, 5, Math.abs(back.frequency() - formula));
    }

    @Test
    void a_complete_small_transmitter_draws_milliamperes_and_its_tuned_output_is_clean() {
        Waveforms waveforms = settle(tuned(Circuits.transmitter()));
        double supply = -1e3 * waveforms.meanCurrent("B");
        double first = waveforms.voltageAmplitude("out", "rail", 1);
        double second = -20 * Math.log10(waveforms.voltageAmplitude("out", "rail", 2) / first);
        double third = -20 * Math.log10(waveforms.voltageAmplitude("out", "rail", 3) / first);
        Published.source(
                        "engine",
                        Kind.COMMON_PRACTICE,
                        "a small discrete transmitter takes some milliamperes to a dozen from 9 V; harmonics at its tuned output lie about 40 dB down")
                .liesWithin("supply current, mA", 1.5, 20, supply)
                .liesWithin("second harmonic of the output voltage, dB down", 30, 65, second)
                .liesWithin("third harmonic of the output voltage, dB down", 30, 65, third);
    }

    /** The output trimmer at the position of the largest carrier, by golden section. */
    private static Circuit tuned(Circuit circuit) {
        double low = 0, high = 1;
        for (int k = 0; k < 14; k++) {
            double a = low + 0.382 * (high - low), b = low + 0.618 * (high - low);
            if (carrier(circuit, a) > carrier(circuit, b)) high = b;
            else low = a;
        }
        return turned(circuit, (low + high) / 2);
    }

    private static Circuit turned(Circuit circuit, double position) {
        return circuit.with(((Trimmer) circuit.part("Co").orElseThrow()).at(position));
    }

    private static double carrier(Circuit circuit, double position) {
        return settle(turned(circuit, position)).currentAmplitude("Lo", 1);
    }

    /** The pair's tail current carries the modulation: carrier against the voltage that sets it, read where audio would swing it. */
    @Test
    void eighty_five_per_cent_is_reached_before_the_modulation_bends() {
        Circuit base = tuned(Circuits.transmitter());
        double rest = point(base).voltage("mod"), cutoff = 0.62;
        double top = 0.85 * (rest - cutoff);
        double[] carriers = new double[9];
        for (int k = 0; k < carriers.length; k++) {
            double swing = Math.cos(Math.PI * k / (carriers.length - 1));
            Circuit held = base.plus(new VoltageSource("hold", "mod", "ground", new Wave.Direct(rest + top * swing)));
            carriers[k] = settle(held).currentAmplitude("Lo", 1);
        }
        double[] c = cosines(carriers);
        double bent = Math.sqrt(c[2] * c[2] + c[3] * c[3] + c[4] * c[4]) / c[1];
        double up = carriers[0] / carriers[4] - 1, down = 1 - carriers[8] / carriers[4];
        Published.source(
                        "engine",
                        Kind.COMMON_PRACTICE,
                        "modulation by the tail of a long-tailed pair reaches 80 to 90 % before distortion shows")
                .liesWithin("positive peak, %", 75, 95, 100 * up)
                .liesWithin("negative peak, %", 75, 95, 100 * down)
                .liesWithin("harmonics of the slow envelope, %", 0, 5, 100 * bent);
    }

    /** Cosine coefficients of a function of cos θ read at θ = kπ/8 (trapezoidal rule, exact to order 7). */
    private static double[] cosines(double[] values) {
        int n = values.length - 1;
        double[] c = new double[5];
        for (int h = 0; h < c.length; h++) {
            for (int k = 0; k <= n; k++) {
                double weight = (k == 0 || k == n ? 1.0 : 2.0) / n;
                c[h] += weight * values[k] * Math.cos(Math.PI * h * k / n);
            }
        }
        return c;
    }
}
