package galena.build.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import galena.build.source.BadInputException;
import galena.build.source.Problem;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SettingsTest {
    @Test
    void positions_are_laid_over_the_build() throws BadInputException {
        Build build = Builds.read(Builds.EVERYTHING);
        Overlay overlay = Settings.apply(build, Overlay.NONE, "--set", List.of("Ct=43%", " Rp = 10.5 %", "Ct=44 %"));
        assertThat(overlay.adjustments()).containsEntry("Ct", 0.44).containsEntry("Rp", 0.105);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Ct       | --set:1:1  Ct: \"Ct\" has no =                   | Write Ct=40%",
                "Ct=40    | --set:1:4  Ct: \"40\" has no unit                | Nearest: 40 %",
                "Ct=140%  | --set:1:4  Ct: \"140%\" lies outside the travel  | 0 % to 100 %.",
                "Cx=40%   | --set:1:1  Cx: no part is named \"Cx\"           | Nearest: Ct",
                "Rs=40%   | --set:1:1  Rs: a resistor has no position to set | Nearest: Ls",
                "Q99=40%  | --set:1:1  Q99: no part is named \"Q99\"         | Adjustments: Ls, Ct, Rp.",
            })
    void each_slip_has_its_own_message(String text, String head, String remedy) throws BadInputException {
        Build build = Builds.read(Builds.EVERYTHING);
        BadInputException bad = catchThrowableOfType(
                BadInputException.class, () -> Settings.apply(build, Overlay.NONE, "--set", List.of(text)));
        Problem problem = bad.problems().get(0);
        assertThat(problem.toString().lines().toList().get(0)).isEqualTo(head);
        assertThat(problem.toString()).contains(remedy);
    }

    @Test
    void an_overlay_refuses_what_no_adjustment_can_be() {
        assertThatThrownBy(() -> Overlay.NONE.set("Ct", 1.2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Overlay.NONE.set("Ct", Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Overlay.SupplyState(9, -1)).isInstanceOf(IllegalArgumentException.class);
    }
}
