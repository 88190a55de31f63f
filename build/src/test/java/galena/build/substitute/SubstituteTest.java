package galena.build.substitute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.build.DemoBuild;
import galena.build.figure.Figure;
import galena.build.folder.BuildFolder;
import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import galena.build.substitute.SubstituteReport.Devices;
import galena.build.substitute.SubstituteReport.Fit;
import galena.build.substitute.SubstituteReport.Values;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SubstituteTest {
    @TempDir
    private Path folder;

    private BuildFolder demo;

    @BeforeEach
    void layTheDemo() throws Exception {
        // a livelier programme than the demo's, so that every copy of it is driven
        DemoBuild.in(folder, "level: 300 mV", "level: 600 mV");
        Files.writeString(
                folder.resolve("drawer.yaml"),
                "galena: 1\ncapacitors: [47 pF, 68 pF, 180 pF, 220 pF]\ndevices: [J310, 2N5551]\n");
        demo = BuildFolder.open(folder);
    }

    @Test
    void two_capacitors_of_the_drawer_stand_in_for_one_and_say_what_they_do() throws Exception {
        Values report = (Values) Substitute.of(demo, "Cf", true, 1, Progress.SILENT);
        SubstituteReport.Combination first = report.combinations().get(0);
        // 220·180/400
        assertThat(first.words()).isEqualTo("220 pF and 180 pF in series");
        assertThat(((Figure.Known) first.value()).value()).isCloseTo(99e-12, within(1e-15));
        assertThat(first.effects()).contains("carrier +", "until the trimmer goes to");
        assertThat(report.combinations())
                .anySatisfy(c -> assertThat(c.effects()).contains("trimmer"))
                .allSatisfy(c -> assertThat(c.yield()).isBetween(0.0, 1.0));
    }

    @Test
    void what_has_no_substitute_and_what_is_not_there_is_refused() {
        assertThatThrownBy(() -> Substitute.of(demo, "Ct", false, 1, Progress.SILENT))
                .isInstanceOf(BadInputException.class)
                .hasMessageContaining("no substitute is reckoned for a trimmer");
        assertThatThrownBy(() -> Substitute.of(demo, "Q11", false, 1, Progress.SILENT))
                .hasMessageContaining("Nearest: Q1");
        assertThatThrownBy(() -> Substitute.of(demo, "D1", false, 1, Progress.SILENT))
                .hasMessageContaining("no part is named");
    }

    @Tag("long")
    @Test
    void every_jfet_is_judged_in_the_oscillator_and_the_window_holds_the_one_that_works() throws Exception {
        Devices report = (Devices) Substitute.of(demo, "Q1", false, 1, Progress.SILENT);
        assertThat(report.rows()).hasSizeGreaterThan(12);
        assertThat(report.rows()).extracting(SubstituteReport.Row::fit).contains(Fit.AS_IT_IS);
        DeviceWindow window = report.window().orElseThrow();
        for (DeviceWindow.Axis axis : window.axes()) {
            double typical = Math.abs(((Figure.Known) axis.typical()).value());
            if (axis.low() instanceof Figure.Known low)
                assertThat(Math.abs(low.value())).isLessThan(typical);
            if (axis.high() instanceof Figure.Known high)
                assertThat(Math.abs(high.value())).isGreaterThan(typical);
        }
        assertThat(window.test().readings()).hasSize(2).allSatisfy(r -> {
            assertThat(r.low()).isPositive();
            assertThat(r.high()).isLessThan(9);
        });
    }

    @Tag("long")
    @Test
    void a_drawers_transistors_are_judged_in_the_modulator() throws Exception {
        Devices report = (Devices) Substitute.of(demo, "Q4", true, 1, Progress.SILENT);
        assertThat(report.rows()).extracting(SubstituteReport.Row::type).containsExactly("2N5551");
        assertThat(report.window().orElseThrow().axes()).hasSize(1);
    }
}
