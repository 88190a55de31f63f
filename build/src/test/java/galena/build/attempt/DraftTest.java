package galena.build.attempt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import galena.build.folder.Build;
import galena.build.pattern.Pattern;
import galena.build.source.BadInputException;
import java.util.Map;
import org.junit.jupiter.api.Test;

class DraftTest {
    @Test
    void several_values_are_exchanged_at_once_and_nothing_else() throws Exception {
        Build build = Draft.read(Pattern.named("clapp").text());
        Build changed = Draft.with(
                build,
                Map.of(
                        "parts.Rs.resistor", "3.3 kΩ",
                        "parts.Ct.set", "20 %",
                        "parts.Lt", "{coil: 300 µH, resistance: 30 Ω, from: gate, to: low}",
                        "parts.Rg.note", "a key that was not there"));
        assertThat(changed.part("Rs").orElseThrow().value().orElseThrow().value())
                .isEqualTo(3300);
        assertThat(changed.part("Ct").orElseThrow().position().orElseThrow()).isEqualTo(0.2);
        assertThat(changed.part("Lt").orElseThrow().values().has("q")).isFalse();
        assertThat(changed.file().text()).contains("note: a key that was not there");
        Build back = Draft.with(
                changed,
                Map.of("parts.Rs.resistor", build.part("Rs").orElseThrow().label()));
        assertThat(back.part("Rs").orElseThrow().label())
                .isEqualTo(build.part("Rs").orElseThrow().label());
        assertThat(changed.file().text().lines().filter(l -> l.startsWith("  #")))
                .containsExactlyElementsOf(build.file()
                        .text()
                        .lines()
                        .filter(l -> l.startsWith("  #"))
                        .toList());
    }

    @Test
    void a_value_beyond_what_its_kind_allows_is_bad_input() throws Exception {
        Build build = Draft.read(Pattern.named("clapp").text());
        assertThatThrownBy(() -> Draft.with(build, Map.of("parts.Ct.set", "140 %")))
                .isInstanceOf(BadInputException.class);
    }
}
