package galena.desk.writing;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.figure.Figure;
import galena.build.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class WordsTest {
    private static Figure.Known figure(double value, double low, double high, Unit unit) {
        return new Figure.Known(value, unit, low, high, "test", "test", "");
    }

    /**
     * Kilohertz on both sides of a megahertz; the last figure is the first that the interval moves, or the second of an interval
     * that begins with 1; one prefix for all three numbers; never finer than four figures and a millivolt.
     */
    @ParameterizedTest
    @CsvSource({
        "1000160, 971200, 1029400, HERTZ, 1000 kHz (970 to 1030 kHz)",
        "999012, 998600, 999400, HERTZ, 999.0 kHz (998.6 to 999.4 kHz)",
        "14.2e6, 14.08e6, 14.32e6, HERTZ, 14.20 MHz (14.08 to 14.32 MHz)",
        "11.9e-3, 10.7e-3, 13.3e-3, AMPERE, 11.9 mA (10.7 to 13.3 mA)",
        "1.5e-3, 1.2e-3, 1.9e-3, AMPERE, 1.5 mA (1.2 to 1.9 mA)",
        "0.98, 0.91, 1.04, VOLT, 0.98 V (0.91 to 1.04 V)",
        "8.45976, 8.45972, 8.45980, VOLT, 8.460 V",
        "3e-11, -7e-11, 7e-11, VOLT, 0 V",
        "2.0161717, 2.0161717, 2.0161717, FRACTION, 202 %",
        "-63.2, -66.8, -58.4, DECIBEL, −63 dB (−67 to −58 dB)",
        "4.68e6, 2.9e6, 6.9e6, SECOND, 1300 h (800 to 1900 h)",
        "110e-6, 52e-6, 220e-6, SECOND, 110 µs (50 to 220 µs)",
    })
    void a_figure_shares_unit_and_last_place_with_its_interval(
            double value, double low, double high, Unit unit, String expected) {
        assertThat(Words.withInterval(figure(value, low, high, unit))).isEqualTo(expected);
    }

    @Test
    void a_figure_that_cannot_be_had_says_why() {
        Figure none = new Figure.Missing("battery life", "the supply is not a battery");
        assertThat(Words.withInterval(none)).isEqualTo("not known: the supply is not a battery");
        assertThat(Words.alone(none)).isEqualTo("not known: the supply is not a battery");
    }

    @ParameterizedTest
    @CsvSource({"0.4, 40 %", "0.61, 61 %", "0.605, 60.5 %", "0.045, 4.5 %", "1, 100 %", "0, 0 %"})
    void shares_are_percent(double share, String expected) {
        assertThat(Words.percent(share)).isEqualTo(expected);
    }
}
