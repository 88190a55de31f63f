package galena.build.listen;

import static org.assertj.core.api.Assertions.assertThat;

import galena.proof.Kind;
import galena.proof.Published;
import org.junit.jupiter.api.Test;

/** Fitted sums of one-pole filters against networks whose response is known. */
class FilterBankTest {
    private static final double RATE = 96_000;
    /** Of the largest response, what listening asks of a fit: 0.04 dB. */
    private static final double FITTED = 5e-3;

    private static double[] grid() {
        double[] f = new double[50];
        for (int k = 0; k < f.length; k++) f[k] = 0.3 * Math.pow(20e3 / 0.3, k / (f.length - 1.0));
        return f;
    }

    private static double[] ones(int n) {
        double[] ones = new double[n];
        java.util.Arrays.fill(ones, 1);
        return ones;
    }

    private interface Network {
        /** {real, imaginary} */
        double[] at(double frequency);
    }

    private static void fits(String what, Network network) {
        double[] f = grid();
        double[][] wanted = new double[f.length][];
        for (int k = 0; k < f.length; k++) wanted[k] = network.at(f[k]);
        FilterBank bank = new FilterBank(0.3, 0.4 * RATE, 1.6, RATE);
        double[] weights = bank.fit(f, wanted, ones(f.length));
        Published.source("build", Kind.CLOSED_FORM, "Responses of networks of resistors and capacitors")
                .matches(
                        what + ", largest departure from 0.3 Hz to 20 kHz",
                        0,
                        bank.error(weights, f, wanted, ones(f.length)),
                        FITTED);
    }

    @Test
    void a_coupling_a_pre_emphasis_and_a_bypass_are_met() {
        fits("coupling at 10 Hz", f -> ratio(0, f / 10, 1, f / 10));
        fits("50 µs of pre-emphasis, stopped at 20 kHz", f -> ratio(1, f / 3183, 1, f / 20e3));
        fits("bypass at 7 kHz", f -> ratio(1, 0, 1, f / 7000));
        fits("coupling at 60 Hz into a bypass at 4 kHz", f -> {
            double[] a = ratio(0, f / 60, 1, f / 60), b = ratio(1, 0, 1, f / 4000);
            return new double[] {a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]};
        });
    }

    /** (a + jb)/(c + jd) */
    private static double[] ratio(double a, double b, double c, double d) {
        double square = c * c + d * d;
        return new double[] {(a * c + b * d) / square, (b * c - a * d) / square};
    }

    @Test
    void what_runs_is_what_was_fitted() {
        double[] f = grid();
        double[][] wanted = new double[f.length][];
        for (int k = 0; k < f.length; k++) wanted[k] = ratio(0, f[k] / 30, 1, f[k] / 30);
        FilterBank bank = new FilterBank(0.3, 0.4 * RATE, 1.6, RATE);
        double[] weights = bank.fit(f, wanted, ones(f.length)), poles = bank.poles(), state = new double[poles.length];
        double tone = 480, last = 0, re = 0, im = 0;
        int n = 96_000, tail = 9600;
        for (int k = 0; k < n; k++) {
            double x = Math.cos(2 * Math.PI * tone * k / RATE), y = weights[0] * x + weights[1] * last;
            last = x;
            for (int p = 0; p < poles.length; p++) {
                state[p] = x + poles[p] * (state[p] - x);
                y += weights[p + 2] * state[p];
            }
            if (k < n - tail) continue;
            re += 2 * y * Math.cos(2 * Math.PI * tone * k / RATE) / tail;
            im -= 2 * y * Math.sin(2 * Math.PI * tone * k / RATE) / tail;
        }
        double[] expected = bank.response(weights, tone);
        assertThat(Math.hypot(re - expected[0], im - expected[1])).isLessThan(1e-6);
    }
}
