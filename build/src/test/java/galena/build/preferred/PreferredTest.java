package galena.build.preferred;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import galena.build.folder.Drawer;
import galena.build.quantity.Quantity;
import galena.build.quantity.Unit;
import galena.build.source.BadInputException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class PreferredTest {
    private static ValueSheet sheet(String value) throws BadInputException {
        return ValueSheet.of(Component.read(value, Optional.empty()), Optional.empty(), 8);
    }

    @ParameterizedTest
    @CsvSource({
        "4.83k, RESISTOR, 4830",
        "470R, RESISTOR, 470",
        "117p, CAPACITOR, 117e-12",
        "100n, CAPACITOR, 100e-9",
        "10 µF, CAPACITOR, 10e-6",
        "470 nH, COIL, 470e-9",
        "180uH, COIL, 180e-6"
    })
    void the_unit_or_its_absence_tells_the_kind(String text, Component component, double value) throws Exception {
        Component.Asked asked = Component.read(text, Optional.empty());
        assertThat(asked.component()).isEqualTo(component);
        assertThat(asked.value().value()).isCloseTo(value, within(1e-9 * value));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "10µ | could be a capacitor or coil | Write 10µF or 10µH",
                "abc | is no number | Write the unit.",
                "47 | has no unit | Nearest: 47 Ω",
                "0 Ω | no value that parts are made with | Check the prefix",
                "-5 kΩ | no value that parts are made with | Check the prefix"
            })
    void what_is_no_value_of_a_part_is_refused(String text, String found, String remedy) {
        BadInputException bad =
                catchThrowableOfType(BadInputException.class, () -> Component.read(text, Optional.empty()));
        assertThat(bad.problems().get(0).found()).contains(found);
        assertThat(bad.problems().get(0).remedy().orElse("")).contains(remedy);
    }

    @Test
    void the_nearest_of_each_series_stands_with_its_marks() throws Exception {
        ValueSheet.Row e24 = sheet("4.83k").rows().get(2);
        assertThat(e24.series()).isEqualTo("E24");
        assertThat(e24.value()).isEqualTo(4700);
        assertThat(e24.above()).isEqualTo(5100);
        assertThat(e24.error()).isCloseTo(4700.0 / 4830 - 1, within(1e-12));
        assertThat(e24.codes())
                .containsExactly(
                        new ValueSheet.Code("letters", "4K7"),
                        new ValueSheet.Code("digits", "472"),
                        new ValueSheet.Code("bands", "yellow violet red gold"));
        assertThat(sheet("180 µH").rows().get(1).codes()).containsExactly(new ValueSheet.Code("letters", "180µ"));
    }

    @Test
    void two_parts_of_the_drawer_come_near() throws Exception {
        Drawer drawer = new Drawer(
                List.of(ohms(4700), ohms(100), ohms(10_000)),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        Component.Asked asked = Component.read("4.8k", Optional.empty());
        ValueSheet sheet = ValueSheet.of(asked, Optional.of(drawer), 8);
        assertThat(sheet.made().get(0).value()).isEqualTo(4800);
        assertThat(sheet.made().get(0).error()).isCloseTo(0, within(1e-12));
        assertThat(sheet.made()).allMatch(c -> Math.abs(c.error()) <= 0.1);
        Component.Asked far = Component.read("1 MΩ", Optional.empty());
        assertThat(ValueSheet.of(far, Optional.of(drawer), 8).made()).hasSize(1);
        Component.Asked none = Component.read("47 pF", Optional.empty());
        assertThat(ValueSheet.of(none, Optional.of(drawer), 8).made()).isEmpty();
    }

    private static Quantity ohms(double value) {
        return Quantity.of(value, Unit.OHM);
    }

    @Test
    void a_marking_gives_every_way_to_read_it() throws Exception {
        Marking mark = Marking.read("104K", Optional.empty());
        assertThat(mark.readings())
                .anySatisfy(r -> {
                    assertThat(r.component()).isEqualTo(Component.CAPACITOR);
                    assertThat(r.value()).isCloseTo(100e-9, within(1e-18));
                    assertThat(r.low().orElseThrow()).isCloseTo(90e-9, within(1e-18));
                })
                .anySatisfy(r -> assertThat(r.value()).isEqualTo(104e3))
                .hasSize(3);
        assertThat(Marking.read("4K7J", Optional.of(Component.RESISTOR)).readings())
                .singleElement()
                .satisfies(r -> assertThat(r.high().orElseThrow()).isCloseTo(4935, within(1e-6)));
        assertThat(Marking.bands("yellow violet red gold").readings().get(0).value())
                .isEqualTo(4700);
    }

    @ParameterizedTest
    @CsvSource({"47x, the letter x", "'', is no letter code", "99999, is no letter code", "J, is no letter code"})
    void what_is_no_marking_is_refused(String mark, String found) {
        BadInputException bad =
                catchThrowableOfType(BadInputException.class, () -> Marking.read(mark, Optional.empty()));
        assertThat(bad.problems().get(0).found()).contains(found);
        BadInputException bands = catchThrowableOfType(BadInputException.class, () -> Marking.bands("gold red"));
        assertThat(bands.problems().get(0).toString()).contains("--bands");
    }
}
