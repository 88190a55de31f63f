package galena.build.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import galena.proof.Kind;
import galena.proof.Published;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTest {
    private static final double EXACT = 0;

    @ParameterizedTest
    @CsvFileSource(resources = "/published/letter-codes.csv", numLinesToSkip = 2, encoding = "UTF-8")
    void reads_the_letter_codes_of_iec_60062(String code, double value, String unit) throws BadQuantity {
        Unit kind = unit.equals("ohm") ? Unit.OHM : Unit.FARAD;
        Published.source("build", Kind.MEMORY, "IEC 60062:2016, letter and digit code")
                .matches(code + " in " + unit, value, Quantity.read(code, kind).value(), EXACT);
    }

    @ParameterizedTest
    @CsvSource({
        "4.7k, OHM, 4700",
        "4K7, OHM, 4700",
        "4k7Ω, OHM, 4700",
        "4.7 kΩ, OHM, 4700",
        "4.7 k\u2126, OHM, 4700",
        "470 ohm, OHM, 470",
        "1 Mohm, OHM, 1e6",
        "1M, OHM, 1e6",
        "1m, OHM, 1e-3",
        "1 Ω, OHM, 1",
        "47n, FARAD, 47e-9",
        "47 nF, FARAD, 47e-9",
        ".1µF, FARAD, 1e-7",
        "4n7F, FARAD, 4.7e-9",
        "100 µH, HENRY, 1e-4",
        "100 \u03BCH, HENRY, 1e-4",
        "100uH, HENRY, 1e-4",
        "4u7, HENRY, 4.7e-6",
        "1m, HENRY, 1e-3",
        "300 mV, VOLT, 0.3",
        "-2.1 V, VOLT, -2.1",
        "\u22122.1 V, VOLT, -2.1",
        "8 mA, AMPERE, 8e-3",
        "10 fA, AMPERE, 1e-14",
        "999 kHz, HERTZ, 999e3",
        "999\u00A0KHz, HERTZ, 999e3",
        "1 MHz, HERTZ, 1e6",
        "20 h, SECOND, 72000",
        "90 min, SECOND, 5400",
        "5 µs, SECOND, 5e-6",
        "4 m, METRE, 4",
        "12 cm, METRE, 0.12",
        "0.3 mm, METRE, 3e-4",
        "5 mA/V, SIEMENS, 5e-3",
        "2 mA/V^2, AMPERE_PER_SQUARE_VOLT, 2e-3",
        "0.02 /V, PER_VOLT, 0.02",
        "-750 ppm/°C, PPM_PER_KELVIN, -750e-6",
        "2 %, FRACTION, 0.02",
        "85%, FRACTION, 0.85",
        "0.002, NUMBER, 0.002",
        "1e-3, NUMBER, 0.001",
        "10x, RATIO, 10",
        "-40 dBc, DECIBEL, -40",
        "2000 mAh, COULOMB, 7200",
        "25 °C, KELVIN, 298.15",
        "-10 C, KELVIN, 263.15",
        "300 K, KELVIN, 300",
        "100 mW, WATT, 0.1",
    })
    void reads_what_people_write(String text, Unit unit, double value) throws BadQuantity {
        Quantity read = Quantity.read(text, unit);
        assertThat(read.value()).isEqualTo(value);
        assertThat(read.text()).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "4,7k       | OHM      | \"4,7k\" has a comma                             | 4.7k",
                "1,000 kHz  | HERTZ    | \"1,000 kHz\" has a comma                        | 1000 kHz or 1.000 kHz",
                "470        | OHM      | \"470\" has no unit                              | 470 Ω",
                "104        | FARAD    | \"104\" has no unit                              | 104 pF or 100 nF",
                "5          | FRACTION | \"5\" has no unit                                | 5 %",
                "0.4        | FRACTION | \"0.4\" has no unit                              | 40 %",
                "4k7J       | OHM      | \"4k7J\" ends with a tolerance letter            | 4k7",
                "4R7        | HENRY    | \"4R7\" has R for the point       | 4.7 µH",
                "999 khz    | HERTZ    | \"999 khz\" has an unknown unit, \"khz\"         | 999 kHz",
                "1 mhz      | HERTZ    | \"1 mhz\" has an unknown unit, \"mhz\"           | 1 MHz or 1 mHz",
                "47 nff     | FARAD    | \"47 nff\" has an unknown unit, \"nff\"          | 47 nF",
                "100 µH     | FARAD    | \"100 µH\" is an inductance, not a capacitance   | 100 µF",
                "9          | VOLT     | \"9\" has no unit                                | 9 V",
                "2 V        | NUMBER   | \"2 V\" has \"V\" behind the number              | ",
                "lots       | OHM      | \"lots\" is no number with a unit                | ",
                "''         | OHM      | nothing is written                               | ",
                "20 hours   | SECOND   | \"20 hours\" has an unknown unit, \"hours\"      | ",
            })
    void refuses_the_rest_and_names_the_nearest(String text, Unit unit, String found, String nearest) {
        BadQuantity bad = catchThrowableOfType(BadQuantity.class, () -> Quantity.read(text, unit));
        assertThat(bad.found()).isEqualTo(found);
        assertThat(bad.nearest().orElse(null)).isEqualTo(nearest);
        assertThat(bad.rule()).contains(unit.noun()).endsWith(".");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e999", "NaN", "Infinity", "--5", "5 5 k", "0x10", "1_000", "1e5000000000", "٤k"})
    void refuses_what_is_no_finite_number(String text) {
        assertThatThrownBy(() -> Quantity.read(text, Unit.OHM)).isInstanceOf(BadQuantity.class);
        assertThatThrownBy(() -> Quantity.read(text, Unit.NUMBER)).isInstanceOf(BadQuantity.class);
    }

    @Test
    @Timeout(5)
    void a_text_without_end_is_refused_at_once() {
        String text = "1 ,".repeat(200_000);
        assertThatThrownBy(() -> Quantity.read(text, Unit.OHM)).hasMessageContaining("is too long");
        assertThatThrownBy(() -> Range.read(text, Unit.OHM)).hasMessageContaining("is too long");
        assertThatThrownBy(() -> Range.read(text + ".." + text, Unit.OHM)).hasMessageContaining("is too long");
        assertThatThrownBy(() -> AtFrequency.read(text, Unit.OHM)).hasMessageContaining("is too long");
        assertThatThrownBy(() -> AtFrequency.read(text + "@" + text, Unit.OHM)).isInstanceOf(BadQuantity.class);
    }

    @Test
    void m_is_milli_and_capital_m_is_mega_in_every_unit() throws BadQuantity {
        for (Unit unit : Unit.values()) {
            if (unit == Unit.COULOMB
                    || !unit.prefixes().contains("m")
                    || !unit.prefixes().contains("M")) continue;
            double milli = Quantity.read("1 m" + unit.symbol(), unit).value();
            double mega = Quantity.read("1 M" + unit.symbol(), unit).value();
            assertThat(milli).as("%s", unit).isEqualTo(1e-3);
            assertThat(mega).as("%s", unit).isEqualTo(1e6);
        }
    }

    /** The pattern that editors get and the reading agree on texts made of what quantities are made of; seeded. */
    @ParameterizedTest
    @EnumSource(Unit.class)
    void the_pattern_for_editors_agrees_with_the_reading(Unit unit) {
        Pattern pattern = Pattern.compile(unit.pattern());
        String[] pieces = {
            "4", "7", ".", "-", "+", "e", "k", "K", "M", "m", "u", "µ", "n", "p", "R", " ", "Ω", "F", "H", "V", "A",
            "V/m", "A/m", "A·m²", "m²", "Hz", "%", "/V", "°C", "x", "dB", "h", "s", "min", "cm", "S", "W", "Ah",
            "ppm/K", "A/V²", "V/s", "V/µs", "G", "T", "f", ","
        };
        Random random = new Random(9);
        int good = 0;
        for (int i = 0; i < 30_000; i++) {
            StringBuilder text = new StringBuilder(pieces[random.nextInt(2)]);
            for (int j = random.nextInt(5); j > 0; j--) text.append(pieces[random.nextInt(pieces.length)]);
            String trimmed = Spelling.trim(text.toString());
            boolean read = Spelling.strictly(trimmed, unit).isPresent();
            assertThat(pattern.matcher(trimmed).matches())
                    .as("%s of \"%s\", seed 9", unit, trimmed)
                    .isEqualTo(read);
            if (read) good++;
        }
        assertThat(good).as("texts that are quantities").isGreaterThan(100);
    }

    /** Any value prints to a text that reads back to it; seeded. */
    @ParameterizedTest
    @EnumSource(Unit.class)
    void what_is_printed_exactly_reads_back(Unit unit) throws BadQuantity {
        Random random = new Random(8);
        for (int i = 0; i < 2000; i++) {
            double value = (unit == Unit.KELVIN ? 200 + 200 * random.nextDouble() : wild(random));
            Quantity made = Quantity.of(value, unit);
            double slack = unit == Unit.COULOMB || unit == Unit.SECOND ? 1e-15 * Math.abs(value) : EXACT;
            assertThat(Quantity.read(made.text(), unit).value())
                    .as("%s %s, seed 8", unit, made.text())
                    .isCloseTo(value, org.assertj.core.api.Assertions.within(slack));
        }
    }

    private static double wild(Random random) {
        return random.nextGaussian() * Math.pow(10, random.nextInt(24) - 12);
    }
}
