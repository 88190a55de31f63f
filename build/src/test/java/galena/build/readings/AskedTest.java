package galena.build.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.build.folder.LogEntry.What;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class AskedTest {
    private static final Situation UNTOUCHED = new Situation(
            Optional.empty(), Optional.empty(), Map.of(), OptionalDouble.empty(), OptionalDouble.empty(), 0);
    private static final Asked AMPLITUDE = new Asked(What.AMPLITUDE, UNTOUCHED);

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-4, 2e-3, 0.05, 1, 30})
    void an_amplitude_is_shown_as_it_was_read(double volts) {
        assertThat(AMPLITUDE.shown(AMPLITUDE.modelled(volts))).isCloseTo(volts, within(1e-12 * (1 + volts)));
    }

    /** From a hundred floors the difference is 1/(4·100²) = 2.5e-5: asinh u = ln 2u + 1/(4u²) − … */
    @Test
    void a_large_amplitude_is_its_logarithm() {
        assertThat(AMPLITUDE.modelled(0.2)).isCloseTo(Math.log(0.2), within(2.6e-5));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-3, 0.01, 1})
    void an_error_is_the_difference_that_it_makes(double volts) {
        double step = 1e-6;
        double difference = AMPLITUDE.modelled(volts + step) - AMPLITUDE.modelled(volts);
        assertThat(AMPLITUDE.error(volts, step)).isCloseTo(difference, within(1e-3 * difference));
    }
}
