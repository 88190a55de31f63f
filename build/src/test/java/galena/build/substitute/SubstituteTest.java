package galena.build.substitute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.build.DemoBuild;
import galena.build.attempt.Aim;
import galena.build.attempt.Depth;
import galena.build.attempt.Draft;
import galena.build.attempt.Looking;
import galena.build.attempt.Tried;
import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.predict.Progress;
import galena.build.reach.Surroundings;
import galena.build.source.BadInputException;
import galena.build.spread.Conditions;
import galena.build.substitute.SubstituteReport.Devices;
import galena.build.substitute.SubstituteReport.Fit;
import galena.build.substitute.SubstituteReport.Values;
import galena.engine.part.Bipolar;
import galena.engine.part.Jfet;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
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
        // half a trimmer's travel either way holds the next values of E12
        ValueRange range = report.range().orElseThrow();
        assertThat(range.low()).isLessThan(100e-12);
        assertThat(range.high()).isGreaterThan(100e-12);
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
    void every_jfet_is_judged_in_the_oscillator_and_the_window_holds_just_those_that_work() throws Exception {
        Devices report = (Devices) Substitute.of(demo, "Q1", false, 1, Progress.SILENT);
        assertThat(report.rows()).hasSizeGreaterThan(12);
        assertThat(report.rows()).extracting(SubstituteReport.Row::fit).contains(Fit.AS_IT_IS);
        DeviceWindow window = report.window().orElseThrow();
        assertThat(window.axes()).hasSize(2);
        assertThat(window.test().readings()).hasSize(2).allSatisfy(r -> {
            assertThat(r.low()).isPositive();
            assertThat(r.high()).isLessThan(9);
        });
        Jfet.Model typical = ((Jfet) here().running().circuit().part("Q1").orElseThrow()).model();
        atEveryEdge("Q1", new JfetLaw(typical), window);
    }

    @Tag("long")
    @Test
    void a_drawers_transistors_are_judged_in_the_modulator() throws Exception {
        Devices report = (Devices) Substitute.of(demo, "Q4", true, 1, Progress.SILENT);
        assertThat(report.rows()).extracting(SubstituteReport.Row::type).containsExactly("2N5551");
        DeviceWindow window = report.window().orElseThrow();
        assertThat(window.axes()).hasSize(1);
        Bipolar.Model typical = ((Bipolar) here().running().circuit().part("Q4").orElseThrow()).model();
        atEveryEdge("Q4", new BipolarLaw(typical, true), window);
    }

    /** Just inside an edge works and just outside does not: solved from cold, with all copies, by the same lines as any build. */
    private void atEveryEdge(String part, Law law, DeviceWindow window) throws Exception {
        Tried here = here();
        for (int k = 0; k < window.axes().size(); k++) {
            DeviceWindow.Axis axis = window.axes().get(k);
            for (Figure edge : List.of(axis.low(), axis.high())) {
                if (!(edge instanceof Figure.Known known)) continue;
                double inside = Math.abs(known.value());
                double outside = Math.abs(known.value() == known.low() ? known.high() : known.low());
                assertThat(meeting(part, here, law, k, inside))
                        .as(axis.parameter())
                        .isGreaterThan(0.94);
                assertThat(meeting(part, here, law, k, outside))
                        .as(axis.parameter())
                        .isLessThan(0.94);
            }
        }
    }

    private Tried here() throws Exception {
        Build up = Depth.up(demo.build());
        return looking(up).look(up).orElseThrow();
    }

    private static Looking looking(Build build) {
        return new Looking(
                new Aim(build.intent(), Surroundings.RESIDENTIAL, "rod-set"), Conditions.FULL, 1, Progress.SILENT);
    }

    private static double meeting(String part, Tried here, Law law, int number, double value) throws Exception {
        double[] numbers =
                law.parameters().stream().mapToDouble(Law.Parameter::typical).toArray();
        numbers[number] = value;
        Build with = Draft.with(
                here.build(), Map.of(Candidates.key(here.build().part(part).orElseThrow()), law.text(numbers)));
        Looking looking = looking(with);
        return looking.look(with)
                .map(t -> looking.draw(t, Substitute.COPIES).standing().yield())
                .orElse(0.0);
    }
}
