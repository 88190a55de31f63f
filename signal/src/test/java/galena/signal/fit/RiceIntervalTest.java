package galena.signal.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RiceIntervalTest {
    @Test
    void noise_alone_follows_rayleigh_and_a_strong_line_the_normal_law() {
        Published rayleigh = Published.source("signal", Kind.CLOSED_FORM, "Rayleigh law, P(R ≤ r) = 1 − exp(−r²/2)");
        for (double r : new double[] {0.5, 1, 2, 3}) {
            rayleigh.matches("at " + r + " σ", 1 - Math.exp(-r * r / 2), RiceInterval.probabilityBelow(r, 0), 1e-12);
        }
        assertThat(RiceInterval.probabilityBelow(8, 8)).isCloseTo(0.475, within(0.005));
    }

    @Test
    void the_interval_holds_the_truth_from_nothing_to_strong() {
        Random random = new Random(9);
        for (double a : new double[] {0, 0.5, 1.5, 3, 6, 12}) {
            int hits = 0;
            for (int k = 0; k < 4000; k++) {
                double r = Math.hypot(a + random.nextGaussian(), random.nextGaussian());
                if (RiceInterval.of(r, 1).covers(a)) hits++;
            }
            assertThat(hits / 4000.0).as("true amplitude %s σ", a).isBetween(0.94, 0.985);
        }
    }

    @Test
    void student_points_are_those_of_the_tables() {
        Published.source("signal", Kind.MEMORY, "Student's t, two-sided 95 %, as in every statistics handbook")
                .matches("3 degrees of freedom", 3.182, StudentT.at95(3), 0.01)
                .matches("10 degrees of freedom", 2.228, StudentT.at95(10), 0.0005)
                .matches("30 degrees of freedom", 2.042, StudentT.at95(30), 0.0005);
    }
}
