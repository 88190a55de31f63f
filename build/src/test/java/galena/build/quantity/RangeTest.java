package galena.build.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RangeTest {
    @ParameterizedTest
    @CsvSource({
        "5..60 pF, FARAD, 5e-12, 60e-12",
        "5 pF .. 60 pF, FARAD, 5e-12, 60e-12",
        "5p..60p, FARAD, 5e-12, 60e-12",
        "4..47n, FARAD, 4e-9, 47e-9",
        "1..4k7, OHM, 1000, 4700",
        "1k..4k7, OHM, 1000, 4700",
        "60 Hz..4.5 kHz, HERTZ, 60, 4500",
        "-10..+50 °C, KELVIN, 263.15, 323.15",
        "10..90 %, FRACTION, 0.1, 0.9",
        "0..1, NUMBER, 0, 1",
        "7 V..7 V, VOLT, 7, 7",
    })
    void reads_both_ends(String text, Unit unit, double low, double high) throws BadQuantity {
        Range range = Range.read(text, unit);
        assertThat(range.low().value()).isEqualTo(low);
        assertThat(range.high().value()).isEqualTo(high);
        assertThat(range.contains(range.at(0.5))).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "5..60         | FARAD  | \"5..60\" has no unit                                          | 5..60 pF",
                "5-60 pF       | FARAD  | \"5-60 pF\" is not written with two dots between its ends      | 5..60 pF",
                "5 to 60 pF    | FARAD  | \"5 to 60 pF\" is not written with two dots between its ends   | 5..60 pF",
                "5–60 pF       | FARAD  | \"5–60 pF\" is not written with two dots between its ends      | 5..60 pF",
                "60..5 pF      | FARAD  | \"60..5 pF\" runs downwards                                    | 5 pF..60 pF",
                "60 pF..5 pF   | FARAD  | \"60 pF..5 pF\" runs downwards                                 | 5 pF..60 pF",
                "60 pF         | FARAD  | \"60 pF\" is no range                                          | ",
                "..60 pF       | FARAD  | \"..60 pF\" lacks one end                                      | ",
                "5..60 pff     | FARAD  | \"60 pff\" has an unknown unit, \"pff\", in \"5..60 pff\"      | 5..60 pF",
                "5..60 khz     | HERTZ  | \"60 khz\" has an unknown unit, \"khz\", in \"5..60 khz\"      | 5..60 kHz",
            })
    void refuses_the_rest_and_names_the_nearest(String text, Unit unit, String found, String nearest) {
        BadQuantity bad = catchThrowableOfType(BadQuantity.class, () -> Range.read(text, unit));
        assertThat(bad.found()).isEqualTo(found);
        assertThat(bad.nearest().orElse(null)).isEqualTo(nearest);
    }

    @Test
    void a_q_holds_at_a_frequency() throws BadQuantity {
        AtFrequency q = AtFrequency.read("85 @ 1 MHz", Unit.NUMBER);
        assertThat(q.value().value()).isEqualTo(85);
        assertThat(q.frequency().value()).isEqualTo(1e6);
        assertThat(AtFrequency.read("85@1MHz", Unit.NUMBER).frequency().value()).isEqualTo(1e6);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "85            | \"85\" names no frequency           | 85 @ 1 MHz",
                "85 at 1 MHz   | \"85 at 1 MHz\" names no frequency  | 85 @ 1 MHz",
                "85 (1 MHz)    | \"85 (1 MHz)\" names no frequency   | 85 @ 1 MHz",
                "85 @ 1        | \"1\" has no unit                   | 85 @ 1 kHz",
                "85 @ 0 Hz     | \"0 Hz\" after the @ is not above zero | ",
            })
    void refuses_a_q_without_its_frequency(String text, String found, String nearest) {
        BadQuantity bad = catchThrowableOfType(BadQuantity.class, () -> AtFrequency.read(text, Unit.NUMBER));
        assertThat(bad.found()).isEqualTo(found);
        assertThat(bad.nearest().orElse(null)).isEqualTo(nearest);
    }
}
