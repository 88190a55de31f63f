package galena.signal.drift;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class DriftTest {
    private static final int LOGS = 200;

    @Test
    void warm_up_intervals_hold_the_truth_as_often_as_they_say() {
        Random random = new Random(6);
        int constant = 0, excess = 0, settled = 0, rate = 0, found = 0;
        for (int log = 0; log < LOGS; log++) {
            double tau = 300 + 600 * random.nextDouble(),
                    a = 200 + 400 * random.nextDouble(),
                    b = -0.01 + 0.02 * random.nextDouble();
            double[] t = new double[180], f = new double[180];
            for (int k = 0; k < t.length; k++) {
                t[k] = 20 * k;
                f[k] = 999_000 + a * Math.exp(-t[k] / tau) + b * t[k] + 2 * random.nextGaussian();
            }
            WarmUp w = WarmUp.fit(t, f).orElseThrow();
            found++;
            if (w.constant().covers(tau)) constant++;
            if (w.excess().covers(a)) excess++;
            if (w.settled().covers(999_000 + b * t[179])) settled++;
            if (w.rate().covers(b)) rate++;
        }
        System.out.println("warm-up: constant " + constant + ", excess " + excess + ", settled " + settled + ", rate "
                + rate + " of " + found);
        for (int hits : new int[] {constant, excess, settled, rate})
            assertThat(hits).isBetween(182, 198);
    }

    @Test
    void pushing_is_a_slope_with_an_interval_and_a_straight_log_has_no_warm_up() {
        Random random = new Random(8);
        int hits = 0, falseAlarms = 0;
        for (int log = 0; log < LOGS; log++) {
            double[] v = new double[25], t = new double[25], f = new double[25];
            for (int k = 0; k < v.length; k++) {
                t[k] = 10 * k;
                v[k] = 9 - 0.1 * k;
                f[k] = 999_000 + 150 * v[k] + 5 * random.nextGaussian();
            }
            if (StraightLine.through(v, f).orElseThrow().slope().covers(150)) hits++;
            if (WarmUp.fit(t, f).isPresent()) falseAlarms++;
        }
        assertThat(hits).isBetween(182, 198);
        assertThat(falseAlarms).isLessThan(10);
    }
}
