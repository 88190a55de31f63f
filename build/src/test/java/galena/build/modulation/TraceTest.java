package galena.build.modulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Envelopes in closed form, read. */
class TraceTest {
    private static final int POINTS = 33;
    private static final double TONE = 1000;

    private interface Complex {
        double[] at(double angle);
    }

    private static Trace trace(Complex z) {
        double[][] points = new double[2][POINTS];
        for (int k = 0; k < POINTS; k++) {
            double[] here = z.at(2 * Math.PI * k / POINTS);
            points[0][k] = here[0];
            points[1][k] = here[1];
        }
        return new Trace(points, 1, TONE);
    }

    private static double[] polar(double size, double angle) {
        return new double[] {size * Math.cos(angle), size * Math.sin(angle)};
    }

    @Test
    void a_pure_tone_has_its_depth_and_nothing_else() {
        Trace trace = trace(t -> polar(1 + 0.8 * Math.sin(t), 0.7));
        assertThat(trace.period().positivePeak()).isCloseTo(0.8, within(1e-4));
        assertThat(trace.period().negativePeak()).isCloseTo(0.8, within(1e-4));
        assertThat(trace.period().distortion()).isLessThan(1e-9);
        assertThat(trace.swing()).isLessThan(1e-6);
        assertThat(trace.troubles(false)).isEqualTo(List.of());
    }

    @Test
    void past_a_hundred_percent_the_in_phase_envelope_goes_below_zero() {
        Trace trace = trace(t -> polar(1 + 1.3 * Math.sin(t), -1.1));
        assertThat(trace.period().negativePeak()).isCloseTo(1.3, within(1e-3));
        assertThat(trace.period().distortion()).isLessThan(1e-6);
        assertThat(trace.swing()).isLessThan(1e-3);
        assertThat(trace.troubles(false)).containsExactly(Trouble.OVERMODULATED);
    }

    /** The phase β sin ωτ swings by β times the tone. */
    @Test
    void a_phase_in_step_with_the_tone_swings_by_its_index_times_the_tone() {
        Trace trace = trace(t -> polar(1 + 0.5 * Math.sin(t), 0.05 * Math.sin(t + 0.4)));
        assertThat(trace.swing()).isCloseTo(0.05 * TONE, within(0.01));
        assertThat(trace.period().negativePeak()).isCloseTo(0.5, within(1e-3));
    }

    @Test
    void a_flattened_crest_and_trough_are_told() {
        Trace trace = trace(t -> polar(1 + 0.5 * Math.tanh(6 * Math.sin(t)), 0));
        assertThat(trace.troubles(false)).contains(Trouble.CREST_CLIPS, Trouble.TROUGH_CLIPS);
    }
}
