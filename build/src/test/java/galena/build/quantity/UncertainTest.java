package galena.build.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Readings as people note them. */
class UncertainTest {
    @ParameterizedTest
    @CsvSource({
        "987.2 kHz ± 50 Hz, HERTZ, 987200, 50",
        "987.2kHz+-0.1kHz, HERTZ, 987200, 100",
        "1.05 MHz +/- 1 %, HERTZ, 1050000, 10500",
        "100 pF ± 2 %, FARAD, 1e-10, 2e-12",
        "82 % ± 2 %, FRACTION, 0.82, 0.02",
        "-31 dB ± 1 dB, DECIBEL, -31, 1",
        "-31 dB, DECIBEL, -31, 0.5",
        "987.2 kHz, HERTZ, 987200, 50",
        "1.05 MHz, HERTZ, 1050000, 5000",
        "4k7, OHM, 4700, 50",
        "100 pF, FARAD, 1e-10, 5e-13",
        "0.00 V, VOLT, 0, 0.005",
        "2.31 V, VOLT, 2.31, 0.005",
    })
    void a_reading_has_the_uncertainty_written_or_half_of_its_last_digit(
            String text, Unit unit, double value, double half) throws BadQuantity {
        Uncertain read = Uncertain.read(text, unit);
        assertThat(read.value().value()).isCloseTo(value, within(1e-9 * Math.abs(value)));
        assertThat(read.half()).isCloseTo(half, within(1e-9 * half));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "±", "987 ± 1 kHz", "987 kHz ±", "987 kHz ± x", "987 kHz ± -3 Hz", "987 kHz 3"})
    void what_cannot_be_read_is_refused(String text) {
        assertThatThrownBy(() -> Uncertain.read(text, Unit.HERTZ)).isInstanceOf(BadQuantity.class);
    }

    @Test
    void a_negative_value_keeps_its_sign() throws BadQuantity {
        assertThat(Uncertain.read("−2.1 V", Unit.VOLT).half()).isCloseTo(0.05, within(1e-12));
    }
}
