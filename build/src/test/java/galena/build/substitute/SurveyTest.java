package galena.build.substitute;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.DemoBuild;
import galena.build.folder.Overlay;
import galena.build.predict.Progress;
import galena.build.predict.Running;
import galena.build.spread.Drawn.Quantity;
import galena.engine.steady.Accuracy;
import java.nio.file.Path;
import java.util.Set;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SurveyTest {
    private static Survey found;

    @BeforeAll
    static void ask(@TempDir Path place) throws Exception {
        Running running = Running.of(DemoBuild.in(place).build(), Overlay.NONE, Accuracy.LIVE, Progress.SILENT);
        Set<String> asked = Set.of("Q1", "Q2", "Q3", "Q4", "Cb", "Cp", "Cq", "Ca", "Rn", "Rs");
        found = Survey.of(running, part -> asked.contains(part.name()), Progress.SILENT);
    }

    @Test
    void devices_of_the_same_function_are_tried_and_no_others() {
        assertThat(found.devices().stream()
                        .filter(d -> d.fitted().equals("BF256B"))
                        .map(DeviceChoice::type))
                .contains("BF245B", "2N5486", "J310")
                .doesNotContain("BF256B", "2N3904", "BF961");
        assertThat(found.devices().stream().filter(d -> d.fitted().equals("BC547B")))
                .allSatisfy(d -> assertThat(d.parts()).containsExactly("Q2", "Q3", "Q4"));
    }

    @Test
    void a_type_without_a_typical_specimen_is_refused_with_the_reason() {
        DeviceChoice j113 = found.devices().stream()
                .filter(d -> d.type().equals("J113"))
                .findFirst()
                .orElseThrow();
        assertThat(j113.fits()).isFalse();
        assertThat(j113.failures()).singleElement().asString().contains("J113");
    }

    @Test
    void what_fits_keeps_the_channel_and_what_it_changes_is_told() {
        DeviceChoice j310 = found.devices().stream()
                .filter(d -> d.type().equals("J310"))
                .findFirst()
                .orElseThrow();
        assertThat(j310.fits()).isTrue();
        double trim = j310.typical().orElseThrow().values().get(Quantity.TRIM);
        double own = found.own().values().get(Quantity.TRIM);
        assertThat(trim).as("more gate capacitance wants less of the trimmer").isLessThan(own - 0.1);
    }

    /** Thomson's formula: of some 270 pF that tune Lt, 30 pF more lower the carrier by half their share. */
    @Test
    void a_neighbouring_value_moves_the_carrier_by_thomsons_formula() {
        ValueRange cp = range("Cp");
        ValueRange.Step more = cp.nearest().get(1);
        assertThat(more.value()).isCloseTo(150e-12, Percentage.withPercentage(0.01));
        double was = found.own().values().get(Quantity.AS_SET);
        double tank = 1 / (Math.pow(2 * Math.PI * was, 2) * 100e-6);
        double expected = was / Math.sqrt(1 + 30e-12 / tank);
        assertThat(more.drawn().values().get(Quantity.AS_SET)).isCloseTo(expected, Percentage.withPercentage(1));
        assertThat(more.fits()).isTrue();
    }

    @Test
    void values_that_spoil_the_intent_are_outside_the_range() {
        assertThat(range("Cb").high()).isGreaterThan(300e-9);
        assertThat(range("Rn").low()).isEqualTo(range("Rn").value());
        assertThat(range("Rs").high()).isLessThan(33e3);
        assertThat(range("Ca").low()).as("less would cut the bass").isGreaterThan(0.2e-6);
    }

    /** IEC 60063: 120 pF is in E12 and not in E6. */
    @Test
    void a_value_that_is_no_usual_one_is_made_of_two() {
        ValueRange.Pair pair = range("Cp").pair().orElseThrow();
        assertThat(pair.parallel()).isTrue();
        assertThat(pair.first() + pair.second()).isCloseTo(122e-12, Percentage.withPercentage(0.01));
        assertThat(range("Cq").pair()).isEmpty();
    }

    private static ValueRange range(String part) {
        return found.values().stream()
                .filter(v -> v.part().equals(part))
                .findFirst()
                .orElseThrow();
    }
}
