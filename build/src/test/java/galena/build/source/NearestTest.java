package galena.build.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
    private static final List<String> KNOWN =
            List.of("resistor", "resonator", "capacitor", "from", "to", "saturation_current", "q", "set");

    @ParameterizedTest
    @CsvSource({
        "resistors, resistor",
        "Resistor, resistor",
        "reisstor, resistor",
        "capacitator, capacitor",
        "form, from",
        "saturation-current, saturation_current",
        "saturationcurrent, saturation_current",
        "Q, q",
        "sett, set",
        "cap, capacitor",
        "re,",
        "frequency,",
        "zz,",
    })
    void finds_the_word_with_few_slips_and_no_other(String word, String nearest) {
        assertThat(Nearest.to(word, KNOWN).orElse(null)).isEqualTo(nearest);
    }
}
