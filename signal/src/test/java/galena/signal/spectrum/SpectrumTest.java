package galena.signal.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import java.util.Random;
import org.hipparchus.complex.Complex;
import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpectrumTest {
    private static final double HALF_OF_SECOND_DECIMAL = 0.005;

    @Test
    void transforms_agree_with_a_general_library() {
        Random random = new Random(1);
        double[] x = random.doubles(1024).toArray();
        double[] ours = Fourier.ofReal(x, 1024);
        Complex[] theirs = new FastFourierTransformer(DftNormalization.STANDARD).transform(x, TransformType.FORWARD);
        double worst = 0;
        for (int k = 0; k <= 512; k++) {
            worst = Math.max(
                    worst, Math.hypot(ours[2 * k] - theirs[k].getReal(), ours[2 * k + 1] - theirs[k].getImaginary()));
        }
        Published.source("signal", Kind.LIBRARY, "Hipparchus, FastFourierTransformer, 1024 random samples")
                .matches("largest difference of a bin", 0, worst, 1e-10);
    }

    @Test
    void windows_have_the_gains_of_the_literature() {
        Published.source(
                        "signal",
                        Kind.TABLE,
                        "Window tables of a scope maker's manual (seen): Hann, noise bandwidth and gain")
                .matches("Hann, noise bandwidth, bins", 1.5, Window.HANN.noiseBandwidth(), HALF_OF_SECOND_DECIMAL)
                .matches(
                        "Hann, coherent gain, dB",
                        -6.02,
                        20 * Math.log10(Window.HANN.coherentGain()),
                        HALF_OF_SECOND_DECIMAL)
                .matches("Hann, scalloping, dB", 1.42, scalloping(Window.HANN), HALF_OF_SECOND_DECIMAL);
        Published.source(
                        "signal",
                        Kind.MEMORY,
                        "F. J. Harris, Proc. IEEE 66 (1978) 51, table I, minimum 4-term Blackman-Harris")
                .matches("noise bandwidth, bins", 2.00, Window.BLACKMAN_HARRIS.noiseBandwidth(), HALF_OF_SECOND_DECIMAL)
                .matches("coherent gain", 0.36, Window.BLACKMAN_HARRIS.coherentGain(), HALF_OF_SECOND_DECIMAL)
                .matches("scalloping, dB", 0.83, scalloping(Window.BLACKMAN_HARRIS), HALF_OF_SECOND_DECIMAL)
                .liesWithin("highest side lobe, dB", -93, -91.5, highestSideLobe());
    }

    private static double scalloping(Window window) {
        return 20 * Math.log10(gain(window, 0) / gain(window, 0.5));
    }

    private static double highestSideLobe() {
        double most = 0;
        for (double bins = 4.01; bins < 40; bins += 0.02) most = Math.max(most, gain(Window.BLACKMAN_HARRIS, bins));
        return 20 * Math.log10(most / gain(Window.BLACKMAN_HARRIS, 0));
    }

    private static double gain(Window window, double bins) {
        int n = 512;
        double re = 0, im = 0;
        for (int k = 0; k < n; k++) {
            re += window.at(k, n) * Math.cos(2 * Math.PI * bins * k / n);
            im += window.at(k, n) * Math.sin(2 * Math.PI * bins * k / n);
        }
        return Math.hypot(re, im);
    }

    /** A square wave's harmonics fall as 1/n; sampled on N points they follow the sampled form, which tends to it. */
    @Test
    void harmonics_of_known_waves() {
        int n = 4096;
        double[] square = new double[n], halfSine = new double[n];
        for (int k = 0; k < n; k++) {
            square[k] = k < n / 2 ? 1 : -1;
            halfSine[k] = Math.max(0, Math.sin(2 * Math.PI * k / n));
        }
        PeriodicWaveform s = PeriodicWaveform.of(square), h = PeriodicWaveform.of(halfSine);
        Published.source("signal", Kind.CLOSED_FORM, "Fourier series of the square wave, 4/(π n) for odd n")
                .matches("third harmonic, dBc", 20 * Math.log10(1 / 3.0), 20 * Math.log10(s.ratio(3)), 1e-4)
                .matches("fifth harmonic, dBc", 20 * Math.log10(1 / 5.0), 20 * Math.log10(s.ratio(5)), 1e-4)
                .matches(
                        "total distortion to harmonic 9",
                        Math.sqrt(1 / 9.0 + 1 / 25.0 + 1 / 49.0 + 1 / 81.0),
                        s.totalDistortion(9),
                        1e-5);
        Published.source("signal", Kind.CLOSED_FORM, "Fourier series of the half-wave rectified sine: 1/π, 1/2, 2/(3π)")
                .matches("mean", 1 / Math.PI, h.mean(), 1e-6)
                .matches("fundamental", 0.5, h.amplitude(1), 1e-6)
                .matches("second harmonic", 2 / (3 * Math.PI), h.amplitude(2), 1e-6);
        assertThatThrownBy(() -> s.amplitude(2048)).hasMessageContaining("outside 1..2047");
    }

    @Test
    void phases_are_those_of_cosines() {
        double[] x = new double[64];
        for (int k = 0; k < 64; k++) x[k] = 2 + 3 * Math.cos(2 * Math.PI * 2 * k / 64 + 0.7);
        PeriodicWaveform p = PeriodicWaveform.of(x);
        assertThat(p.mean()).isCloseTo(2, within(1e-12));
        assertThat(p.phase(2)).isCloseTo(0.7, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 8, 9, 30, 31, 64})
    void the_transform_of_real_samples_is_the_sum_that_defines_it(int length) {
        double[] x = new Random(length).doubles(Math.max(1, length - 2)).toArray();
        double[] bins = Fourier.ofReal(x, length);
        assertThat(bins).hasSize(2 * (length / 2 + 1));
        for (int k = 0; k <= length / 2; k++) {
            double re = 0, im = 0;
            for (int n = 0; n < x.length; n++) {
                re += x[n] * Math.cos(2 * Math.PI * k * n / length);
                im -= x[n] * Math.sin(2 * Math.PI * k * n / length);
            }
            assertThat(bins[2 * k]).isCloseTo(re, within(1e-12 * length));
            assertThat(bins[2 * k + 1]).isCloseTo(im, within(1e-12 * length));
        }
    }
}
