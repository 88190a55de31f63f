package galena.desk.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Two recordings of one programme, made with a known delay, sign and level. */
final class SideBySideTest {
    private static final double RATE = 16_000;
    private static final int COUNT = 80_000;
    private static final int DELAY = 137;

    private static float[] noise(double level) {
        Random random = new Random(74);
        float[] x = new float[COUNT];
        double slow = 0;
        for (int k = 0; k < COUNT; k++) {
            slow += 0.2 * (random.nextGaussian() - slow);
            x[k] = (float) (level * slow * (k % 16_000 < 12_000 ? 1 : 0));
        }
        return x;
    }

    @Test
    void stand_at_one_instant_with_one_sign_and_one_level_below_the_limit() {
        float[] sent = noise(0.9), heard = new float[COUNT];
        for (int k = DELAY; k < COUNT; k++) heard[k] = -0.13f * sent[k - DELAY];
        SideBySide both = SideBySide.of(sent, heard, COUNT, RATE);
        assertThat(both.delay()).isEqualTo(DELAY);
        double peak = 0, a = 0, b = 0, ab = 0;
        for (int k = (int) RATE; k < COUNT - RATE; k++) {
            peak = Math.max(peak, Math.max(Math.abs(sent[k]), Math.abs(heard[k])));
            a += (double) sent[k] * sent[k];
            b += (double) heard[k] * heard[k];
            ab += (double) sent[k] * heard[k];
        }
        assertThat(peak).isLessThanOrEqualTo(SideBySide.MOST + 1e-6).isGreaterThan(0.3);
        assertThat(10 * Math.log10(a / b)).as("level, dB").isCloseTo(0, within(0.2));
        assertThat(ab / Math.sqrt(a * b)).as("correlation at one instant").isGreaterThan(0.999);
    }

    @Test
    void silence_stays_silence() {
        float[] sent = new float[COUNT], heard = new float[COUNT];
        SideBySide.of(sent, heard, COUNT, RATE);
        for (int k = 0; k < COUNT; k++)
            assertThat(sent[k] == 0 && heard[k] == 0).isTrue();
    }
}
