package galena.build.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EngineeringTest {
    @ParameterizedTest
    @CsvSource({
        "4700, OHM, 3, 4.70 kΩ",
        "999960, HERTZ, 4, 1.000 MHz",
        "47e-9, FARAD, 2, 47 nF",
        "4.7e-3, FARAD, 2, 4700 µF",
        "1e-13, FARAD, 1, 100 fF",
        "0.012, AMPERE, 2, 12 mA",
        "1e-4, HENRY, 3, 100 µH",
        "72000, SECOND, 2, 20 h",
        "5400, SECOND, 2, 90 min",
        "0.85, FRACTION, 2, 85 %",
        "298.15, KELVIN, 2, 25 °C",
        "0, VOLT, 3, 0 V",
        "-2.1, VOLT, 2, -2.1 V",
        "10, RATIO, 2, 10x",
        "85, NUMBER, 3, 85.0",
    })
    void prints_in_steps_of_a_thousand(double value, Unit unit, int figures, String printed) {
        assertThat(Engineering.print(value, unit, figures)).isEqualTo(printed);
    }

    @ParameterizedTest
    @CsvSource({
        "998765, 987000, 1011000, HERTZ, 999 kHz",
        "998765, 998764, 998766, HERTZ, 998.7650 kHz",
        "998765, 598765, 1398765, HERTZ, 1.0 MHz",
        "4.7e-10, 3.7e-10, 5.7e-10, FARAD, 470 pF",
        "4.7e-10, 1.7e-10, 7.7e-10, FARAD, 500 pF",
        "3, -47, 53, HERTZ, 0 Hz",
        "7150, 6000, 8300, SECOND, 119 min",
        "0.85, 0.82, 0.88, FRACTION, 85 %",
        "298.15, 297.15, 299.15, KELVIN, 25.0 °C",
        "4700, 4700, 4700, OHM, 4.7 kΩ",
    })
    void prints_no_finer_than_the_interval(double value, double low, double high, Unit unit, String printed) {
        assertThat(Engineering.within(value, low, high, unit)).isEqualTo(printed);
    }
}
