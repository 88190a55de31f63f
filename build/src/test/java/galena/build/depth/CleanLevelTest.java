package galena.build.depth;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CleanLevelTest {
    private static final double LIMIT = 0.4;

    private final AtomicInteger asked = new AtomicInteger();

    private DoubleFunction<OptionalDouble> counting(DoubleUnaryOperator used) {
        return level -> {
            asked.incrementAndGet();
            return OptionalDouble.of(used.applyAsDouble(level));
        };
    }

    /** What is used grows as a power of the level, from a bend downwards to the fifth power. */
    @ParameterizedTest
    @ValueSource(doubles = {0.8, 1, 2, 5})
    void the_level_at_which_a_power_meets_its_limit_is_found_in_few_questions(double power) {
        DoubleFunction<OptionalDouble> used = counting(v -> Math.pow(v / LIMIT, power));
        for (double first : new double[] {0.1, 0.35, 0.45, 2}) {
            asked.set(0);
            double found = CleanLevel.find(first, used).orElseThrow();
            assertThat(found).isBetween(0.975 * LIMIT, LIMIT);
            assertThat(asked.get()).isLessThanOrEqualTo(7);
        }
    }

    /** Trough and distortion together: the first holds, then the other climbs past it. */
    @Test
    void a_second_cause_that_takes_over_is_met_in_time() {
        double found = CleanLevel.find(0.3, counting(v -> Math.max(v, Math.pow(v / LIMIT, 6))))
                .orElseThrow();
        assertThat(found).isBetween(0.985 * LIMIT, LIMIT);
    }

    @Test
    void where_it_quits_before_the_limit_the_last_level_that_answers_is_taken() {
        double found = CleanLevel.find(
                        0.5, v -> v > LIMIT ? OptionalDouble.empty() : OptionalDouble.of(0.9 * v / LIMIT))
                .orElseThrow();
        assertThat(found).isBetween(0.95 * LIMIT, LIMIT);
    }

    @Test
    void nothing_is_found_where_every_level_is_too_much() {
        assertThat(CleanLevel.find(1, v -> OptionalDouble.of(7))).isEmpty();
    }
}
