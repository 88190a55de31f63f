package galena.packet.reach;

import static org.assertj.core.api.Assertions.assertThat;

import galena.build.figure.Figure;
import galena.build.folder.Build;
import galena.build.folder.BuildFolder;
import galena.build.predict.Prediction;
import galena.build.quantity.Unit;
import galena.build.reach.Reach;
import galena.build.reach.Reaching;
import galena.build.reach.Surroundings;
import galena.engine.steady.Floquet;
import galena.packet.chart.Chart;
import galena.packet.chart.ChartSvg;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The charts show what the reach holds, limits where they are read, and nothing else. */
final class ReachChartsTest {
    @TempDir
    private Path folder;

    private Reach reach(String rules, double peak) throws Exception {
        Files.writeString(
                folder.resolve("build.yaml"),
                """
                galena: 1
                name: Tried
                intent: {carrier: 1 MHz, rules: %s, distance: 4 m, modulation: 80 %%}
                parts:
                  La: {loop: 200 µH, resistance: 4 Ω, turns: 10, diameter: 20 cm, from: out, to: ground}
                  Ra: {resistor: 1k, from: out, to: ground}
                """
                        .formatted(rules));
        Build build = BuildFolder.open(folder).build();
        return (Reach) Reaching.of(build, predicted(peak), Surroundings.RESIDENTIAL);
    }

    private static Prediction predicted(double peak) {
        Figure none = new Figure.Missing("it", "made up");
        Prediction.Spectrum current =
                new Prediction.Spectrum("La", "current in La", known(peak, Unit.AMPERE), List.of(none));
        Prediction.Oscillation running = new Prediction.Oscillation(
                known(1e6, Unit.HERTZ),
                1e-9,
                0.01,
                Floquet.Stability.STABLE,
                0.5,
                List.of(current),
                none,
                none,
                Map.of(),
                none,
                List.of(),
                List.of(),
                List.of(),
                List.of());
        return new Prediction(
                "Tried",
                "digest",
                new Prediction.Setting(25, Optional.empty(), Map.of(), "live"),
                new Prediction.Rest("plain", List.of()),
                Optional.empty(),
                running,
                new Prediction.NoCurve("none"),
                List.of(),
                List.of());
    }

    private static Figure.Known known(double value, Unit unit) {
        return new Figure.Known(value, unit, 0.9 * value, 1.1 * value, "made up", "made up", "");
    }

    @Test
    void a_limit_on_h_is_drawn_in_h_where_it_is_read() throws Exception {
        Chart chart = FieldChart.of(reach("cept", 1e-3));
        assertThat(chart.y().unit()).isEqualTo("µA/m");
        assertThat(chart.series()).extracting(Chart.Series::name).containsExactly("H on the axis", "H broadside");
        assertThat(chart.marks()).singleElement().satisfies(mark -> {
            assertThat(mark.x()).isEqualTo(10);
            assertThat(mark.y()).isBetween(0.1778e-6, 0.1779e-6); // −15 dBµA/m
            assertThat(mark.name()).contains("unverified");
        });
    }

    @Test
    void a_limit_on_e_is_drawn_in_e_with_what_a_loop_shows_beside_it() throws Exception {
        Chart chart = FieldChart.of(reach("us", 1e-3));
        assertThat(chart.y().unit()).isEqualTo("µV/m");
        assertThat(chart.series()).extracting(Chart.Series::name).containsExactly("377 Ω × H", "E broadside");
        assertThat(chart.marks()).anySatisfy(mark -> {
            assertThat(mark.x()).isEqualTo(30);
            assertThat(mark.y()).isBetween(23.9e-6, 24.1e-6);
        });
    }

    @Test
    void without_a_limit_the_field_is_drawn_all_the_same() throws Exception {
        Chart chart = FieldChart.of(reach("uk", 1e-3));
        assertThat(chart.marks()).isEmpty();
        assertThat(ChartSvg.draw(chart)).contains("Field of Tried");
    }

    @Test
    void only_sets_that_play_have_a_line() throws Exception {
        Chart loud = ListeningChart.of(reach("cept", 0.1));
        assertThat(loud.series()).extracting(Chart.Series::name).contains("rod set", "wire-fed table set");
        assertThat(loud.windows()).extracting(Chart.Window::name).contains("pleasant", "wanted");
        assertThat(ListeningChart.hasLines(reach("cept", 1e-9))).isFalse();
    }
}
