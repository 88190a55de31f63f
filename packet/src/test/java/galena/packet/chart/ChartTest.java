package galena.packet.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Mark;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.DoubleStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

final class ChartTest {
    @Test
    void ticks_fall_on_round_numbers_of_the_axis_unit() {
        Ruling ruling = Ruling.of(Axis.linear("carrier", "kHz", 1e3), DoubleStream.of(894e3, 1097e3), 6);
        assertThat(ruling.labels()).containsExactly("850", "900", "950", "1000", "1050", "1100");
        assertThat(ruling.place(850e3)).isZero();
        assertThat(ruling.place(1100e3)).isEqualTo(1);
    }

    @Test
    void ticks_below_zero_carry_a_true_minus() {
        Ruling ruling = Ruling.of(Axis.linear("gain", "dB", 1), DoubleStream.of(-0.31, 0.22), 5);
        assertThat(ruling.labels()).containsExactly("−0.4", "−0.2", "0.0", "0.2", "0.4");
    }

    @ParameterizedTest
    @CsvSource({"300e3, 3000e3, '200,500,1000,2000,5000'", "50, 4500, '0.05,0.1,0.2,0.5,1,2,5'"})
    void decades_are_ruled_with_two_and_five_between(double low, double high, String labels) {
        Ruling ruling = Ruling.of(Axis.logarithmic("frequency", "kHz", 1e3), DoubleStream.of(low, high), 6);
        assertThat(String.join(",", ruling.labels())).isEqualTo(labels);
    }

    @Test
    void a_flat_line_still_has_an_axis() {
        Ruling ruling = Ruling.of(Axis.linear("supply", "mA", 1e-3), DoubleStream.of(12e-3, 12e-3), 4);
        assertThat(ruling.low()).isLessThan(12e-3);
        assertThat(ruling.high()).isGreaterThan(12e-3);
    }

    @Test
    void impossible_charts_are_refused() {
        Axis axis = Axis.linear("x", "", 1);
        assertThatThrownBy(() -> new Chart("empty", axis, axis, List.of(), List.of(), List.of()))
                .hasMessageContaining("nothing to show");
        assertThatThrownBy(() -> Point.at(Double.NaN, 1)).hasMessageContaining("finite");
        assertThatThrownBy(() -> new Point(0, 5, 6, 7)).hasMessageContaining("outside its interval");
        Axis log = Axis.logarithmic("f", "Hz", 1);
        assertThatThrownBy(() -> new Chart("log", log, axis, List.of(), List.of(), List.of(new Mark(0, 1, "zero"))))
                .hasMessageContaining("above zero");
    }

    @Test
    void svg_is_well_formed_and_stands_alone() throws Exception {
        for (Chart chart : List.of(Charts.coverage(), Charts.responses())) {
            String svg = ChartSvg.draw(chart);
            Document document = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(svg)));
            assertThat(document.getElementsByTagName("title").item(0).getTextContent())
                    .isEqualTo(chart.title());
            assertThat(svg).doesNotContain("href", "<script", "@import", "url(", "NaN", "Infinity");
        }
    }

    @Test
    void a_missing_value_breaks_the_line_and_every_line_has_its_own_marker() throws Exception {
        Document document = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(ChartSvg.draw(Charts.responses()))));
        var groups = document.getElementsByTagName("g");
        assertThat(groups.getLength()).isEqualTo(4);
        assertThat(inks((Element) groups.item(0))).isEqualTo(1);
        assertThat(inks((Element) groups.item(3))).isEqualTo(2);
    }

    private static int inks(Element group) {
        int inks = 0;
        var paths = group.getElementsByTagName("path");
        for (int k = 0; k < paths.getLength(); k++)
            if (((Element) paths.item(k)).getAttribute("class").equals("ink")) inks++;
        return inks;
    }

    @Test
    void a_point_is_drawn_where_the_axis_says() {
        Chart chart = new Chart(
                "One point",
                Axis.linear("x", "", 1),
                Axis.linear("y", "", 1),
                List.of(Series.of("a", List.of(Point.at(0, 0), Point.at(10, 10)))),
                List.of(),
                List.of(new Mark(5, 5, "middle")));
        // The field runs from 64 to 700 across and from 70 to 368 down.
        assertThat(ChartSvg.draw(chart)).contains("M64.0 368.0L700.0 70.0", "M382.0 216.0l-4.5 -9h9Z");
    }

    @Test
    void a_window_at_the_right_edge_has_its_word_on_the_left() {
        Chart chart = new Chart(
                "One point",
                Axis.linear("x", "", 1),
                Axis.linear("y", "", 1),
                List.of(Series.of("a", List.of(Point.at(0, 0), Point.at(10, 10)))),
                List.of(new Window(Along.X, 10, 10, "clean below this"), new Window(Along.X, 5, 5, "half")),
                List.of());
        assertThat(ChartSvg.draw(chart))
                .contains("x=\"695.0\" y=\"83.0\" text-anchor=\"end\">clean below this")
                .contains("x=\"387.0\" y=\"83.0\" text-anchor=\"start\">half");
    }

    @Test
    void the_terminal_draws_the_same_line_in_ascii() {
        Chart chart = new Chart(
                "Slope",
                Axis.linear("x", "V", 1),
                Axis.linear("y", "mA", 1e-3),
                List.of(Series.of("a", List.of(Point.at(0, 0), Point.at(4, 4e-3)))),
                List.of(),
                List.of(new Mark(4, 4e-3, "end")));
        assertThat(ChartText.draw(chart, 25, 5, false))
                .isEqualTo(
                        """
                        y, mA
                         4+                  **A
                          |             *****
                         2+        *****
                          |   *****
                         0+***
                          ++----+----+----+----+
                           0    1    2    3    4
                                            x, V
                          A end
                        """);
    }

    /** Pinned: reviewed by eye. Delete the stored copy and run again to accept a change. */
    @Test
    void charts_look_as_reviewed() throws IOException {
        stored("coverage.svg", ChartSvg.draw(Charts.coverage()));
        stored("responses.svg", ChartSvg.draw(Charts.responses()));
        stored("coverage.txt", ChartText.draw(Charts.coverage(), 78, 15, true));
        stored("responses-ascii.txt", ChartText.draw(Charts.responses(), 78, 15, false));
    }

    private static void stored(String name, String drawn) throws IOException {
        Path copy = Path.of("src/test/resources/charts", name);
        if (Files.notExists(copy)) {
            Files.createDirectories(copy.getParent());
            Files.writeString(copy, drawn, StandardCharsets.UTF_8);
            throw new UncheckedIOException(new IOException("look at " + copy + ", then run again"));
        }
        assertThat(drawn).isEqualTo(Files.readString(copy, StandardCharsets.UTF_8));
    }
}
