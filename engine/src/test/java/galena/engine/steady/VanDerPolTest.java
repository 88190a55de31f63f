package galena.engine.steady;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.engine.equations.Equations;
import galena.engine.equations.VanDerPol;
import galena.engine.operating.OperatingPoint;
import galena.engine.operating.OperatingPointLadder;
import galena.engine.startup.Startup;
import galena.proof.Kind;
import galena.proof.Published;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The oldest oscillator with printed periods. Up to μ = 1 it grows from rest by itself; above μ = 2 its rest is a node and not
 * a focus, and the orbit is followed there from smaller μ.
 */
class VanDerPolTest {
    private static final double GENTLE = 1;
    private static final double STRIDE = 1.3;

    /** Above μ = 2 a disturbance runs off without turning round; the orbit is found from rest all the same. */
    @ParameterizedTest
    @ValueSource(doubles = {2, 5})
    void an_overdriven_oscillator_is_found_from_cold(double mu) {
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(VanDerPol.of(mu));
        Startup startup = Startup.readiest(point).orElseThrow();
        assertThat(startup.grows()).isTrue();
        SteadyState cold = new SteadyOscillation(Accuracy.CERTIFIED).solve(point, startup);
        assertThat(cold).as("%s", cold).isInstanceOf(SteadyState.Found.class);
        assertThat(new AllOrbits(Accuracy.LIVE, Watch.NONE).of(point).verdict()).isEqualTo(AllOrbits.Verdict.STARTS);
        double followed = solve(mu).waveforms().frequency();
        assertThat(((SteadyState.Found) cold).waveforms().frequency()).isCloseTo(followed, within(2e-7 * followed));
    }

    private static SteadyState.Found solve(double mu) {
        double gentle = Math.min(mu, GENTLE);
        Equations equations = VanDerPol.of(gentle);
        var point = (OperatingPoint.Found) OperatingPointLadder.climb(equations);
        SteadyOscillation solver = new SteadyOscillation(Accuracy.CERTIFIED);
        SteadyState state = solver.solve(point, Startup.readiest(point).orElseThrow());
        assertThat(state).isInstanceOf(SteadyState.Found.class);
        double at = gentle;
        while (at < mu) {
            at = Math.min(mu, at * STRIDE);
            state = solver.solveNear(VanDerPol.of(at), (SteadyState.Found) state);
            assertThat(state).as("followed to μ %s: %s", at, state).isInstanceOf(SteadyState.Found.class);
        }
        return (SteadyState.Found) state;
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/van-der-pol.csv", numLinesToSkip = 1, encoding = "UTF-8")
    void van_der_pols_periods_and_amplitudes_come_out(double mu, double period, double amplitude) {
        SteadyState.Found found = solve(mu);
        Waveforms waveforms = found.waveforms();
        double seen = VanDerPol.angular() / waveforms.frequency();
        double top = crest(waveforms) / VanDerPol.UNIT;
        Published.source(
                        "engine",
                        Kind.TABLE,
                        "B. van der Pol, Phil. Mag. 2 (1926) 978; C. M. Andersen and J. F. Geer, SIAM J. Appl. Math. 42 (1982) 678")
                .matchesRelative("period, μ " + mu, period, seen, Accuracy.CERTIFIED.frequency())
                .matchesRelative("largest x, μ " + mu, amplitude, top, 1e-6);
        abelsFormula(mu, found, period);
    }

    /** The multipliers' product is exp ∮ μ(1 − x²) dt, whatever the orbit; one of the two is 1. */
    private static void abelsFormula(double mu, SteadyState.Found found, double period) {
        double meanSquare = 0;
        for (int h = -40; h <= 40; h++) {
            double[] c = found.waveforms().coefficient(1, Math.abs(h));
            meanSquare += (c[0] * c[0] + c[1] * c[1]) / (VanDerPol.UNIT * VanDerPol.UNIT);
        }
        double product = Math.exp(mu * (1 - meanSquare) * period);
        Floquet floquet = found.floquet();
        assertThat(floquet.stability()).isEqualTo(Floquet.Stability.STABLE);
        Published source = Published.source(
                "engine",
                Kind.CLOSED_FORM,
                "G. Floquet, Ann. Sci. ENS 12 (1883) 47; N. H. Abel: product of multipliers exp ∮ tr A dt");
        source.matches("trivial multiplier, μ " + mu, 1, floquet.trivial(), 1e-6);
        source.matches("other multiplier, μ " + mu, product, floquet.largest(), 1e-6);
        for (Floquet.Mode mode : floquet.modes()) {
            double exponent = Math.log(product) * found.waveforms().frequency();
            // the matrix is that of the last iterate but one, which the bound does not know: a settled step's worth
            double allowed = mode.bound()
                    + Accuracy.CERTIFIED.settled() * found.waveforms().frequency();
            assertThat(mode.exponent()).as("within its own bound").isCloseTo(exponent, within(allowed));
        }
    }

    private static double crest(Waveforms waveforms) {
        double best = 0, at = 0;
        for (int k = 0; k < 4096; k++) {
            double v = waveforms.at(1, k / 4096.0);
            if (v > best) {
                best = v;
                at = k / 4096.0;
            }
        }
        double low = at - 1 / 4096.0, high = at + 1 / 4096.0;
        for (int k = 0; k < 60; k++) {
            double a = low + (high - low) / 3, b = high - (high - low) / 3;
            if (waveforms.at(1, a) < waveforms.at(1, b)) low = a;
            else high = b;
        }
        return waveforms.at(1, (low + high) / 2);
    }
}
