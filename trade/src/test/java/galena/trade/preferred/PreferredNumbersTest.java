package galena.trade.preferred;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.source.DataTable;
import galena.trade.source.PublishedRows;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class PreferredNumbersTest {
    /** Codes and series are exact; this is for doubles that differ in the last place. */
    private static final double EXACT = 1e-12;

    @Test
    void agrees_with_every_published_row_of_series_codes_and_colours() {
        List<DataTable.Row> rows = PublishedRows.of("preferred-numbers.csv");
        assertThat(rows).hasSize(486);
        for (DataTable.Row row : rows) check(row);
    }

    private static void check(DataTable.Row row) {
        String code = row.text("series_or_code");
        Published source = Published.source("trade", PublishedRows.kind(row, Kind.STANDARD), row.text("source"));
        switch (row.text("kind")) {
            case "e_series" ->
                source.matches(
                        code + ", value " + row.text("index"),
                        row.required("value"),
                        Series.valueOf(code).decade().get((int) row.required("index")),
                        EXACT);
            case "e_series_fact" -> notContained(row, code, source);
            case "e_series_tolerance" -> tolerance(row, code, source);
            case "rkm_resistance" -> bothWays(row, LetterCode.RESISTANCE, code, source);
            case "rkm_capacitance" -> bothWays(row, LetterCode.CAPACITANCE, code, source);
            case "rkm_style_inductance" -> bothWays(row, LetterCode.INDUCTANCE, code, source);
            case "three_digit_capacitance" -> {
                double found = DigitCode.CAPACITANCE.read(code);
                source.matchesRelative(code, row.required("value"), found, EXACT);
                source.holds(
                        code + " written", DigitCode.CAPACITANCE.write(found, 2).equals(code), code);
            }
            case "rkm_ambiguity" -> {
                source.matchesRelative("4m7", 4.7e-3, LetterCode.CAPACITANCE.read("4m7"), EXACT);
                source.matchesRelative("4M7", 4.7e6, LetterCode.RESISTANCE.read("4M7"), EXACT);
                assertThatThrownBy(() -> LetterCode.RESISTANCE.read("4m7")).hasMessageContaining("case matters");
            }
            case "tolerance_letter_symmetric" -> {
                Tolerance found = Tolerance.ofLetter(code);
                source.matches("letter " + code + " (%)", row.required("value"), found.above() * 100, EXACT);
                source.holds(
                        "letter of ±" + row.text("value") + " %",
                        found.letter().orElse("none").equals(code),
                        code);
            }
            case "tolerance_letter_asymmetric" -> {
                Tolerance found = Tolerance.ofLetter(code);
                String[] sides = row.text("value").split("/");
                source.matches(
                        "letter " + code + ", below (%)", Double.parseDouble(sides[0]), -found.below() * 100, EXACT);
                source.matches(
                        "letter " + code + ", above (%)", Double.parseDouble(sides[1]), found.above() * 100, EXACT);
                assertThat(found.letter()).hasValue(code);
            }
            case "tolerance_letter_below_10pF" -> {
                Tolerance found = Tolerance.ofLetter(code, 4.7e-12);
                source.matches(
                        "letter " + code + " under 10 pF (pF)", row.required("value"), found.above() * 1e12, EXACT);
                assertThat(found.letter()).hasValue(code);
            }
            case "colour_digit" ->
                source.matches(
                        code + " as first digit",
                        10 * row.required("value"),
                        ColourCode.read(List.of(code, "black", "black", "gold")).ohms(),
                        EXACT);
            case "colour_multiplier" ->
                source.matches(
                        code + " as multiplier",
                        10 * row.required("value"),
                        ColourCode.read(List.of("brown", "black", code, "gold")).ohms(),
                        EXACT);
            case "colour_tolerance" -> {
                List<String> bands = code.equals("none")
                        ? List.of("red", "violet", "orange")
                        : List.of("red", "violet", "orange", code);
                double found = ColourCode.read(bands).tolerance();
                source.matches(code + " as tolerance (%)", row.required("value"), found * 100, EXACT);
            }
            default -> throw row.fault("kind", "no check for this kind of row");
        }
    }

    private static void bothWays(DataTable.Row row, LetterCode code, String marking, Published source) {
        double value = code.read(marking);
        source.matchesRelative(marking + " (" + code.unit() + ")", row.required("value"), value, EXACT);
        source.matchesRelative(
                marking + " written and read again", row.required("value"), code.read(code.write(value)), EXACT);
    }

    private static void notContained(DataTable.Row row, String code, Published source) {
        Series series = Series.valueOf(code.substring(code.indexOf("not_in_") + 7));
        List<Double> missing = Series.E24.decade().stream()
                .filter(value -> !series.contains(value))
                .toList();
        List<Double> printed = Arrays.stream(row.text("value").split(" "))
                .map(Double::parseDouble)
                .toList();
        source.holds(code + ": " + row.text("value"), missing.equals(printed), missing.toString());
    }

    private static void tolerance(DataTable.Row row, String code, Published source) {
        double held = Series.valueOf(code).customaryTolerance() * 100;
        String text = row.text("value");
        double figure = Double.parseDouble(text.replaceAll("[^0-9.]", ""));
        source.holds(
                code + " for parts of " + text,
                text.startsWith(">") ? held > figure : Math.abs(held - figure) < EXACT,
                held + " %");
    }

    @Test
    void the_nearest_value_is_nearest_by_ratio_in_every_decade() {
        assertThat(Series.E12.nearest(5000)).isEqualTo(4700);
        assertThat(Series.E12.nearest(1.49e-10)).isEqualTo(1.5e-10);
        assertThat(Series.E24.nearest(9.7e3)).isEqualTo(1e4);
        assertThat(Series.E6.atMost(6.7)).isEqualTo(4.7);
        assertThat(Series.E6.atLeast(6.9)).isEqualTo(10);
        assertThat(Series.E96.atLeast(1000)).isEqualTo(1000);
        assertThat(Series.E96.atMost(999.9999999999999)).isEqualTo(1000);
        assertThat(Series.E12.between(47, 120)).containsExactly(47.0, 56.0, 68.0, 82.0, 100.0, 120.0);
        for (Series series : Series.values()) {
            for (double value : series.decade()) {
                for (int decade = -13; decade < 8; decade++) {
                    double scaled = Double.parseDouble(value + "e" + decade);
                    assertThat(series.nearest(scaled)).isEqualTo(scaled);
                    assertThat(series.contains(scaled)).isTrue();
                }
            }
        }
        assertThatThrownBy(() -> Series.E12.nearest(0)).hasMessageContaining("positive");
    }

    @Test
    void codes_are_written_shortest() {
        assertThat(LetterCode.RESISTANCE.write(4700)).isEqualTo("4K7");
        assertThat(LetterCode.RESISTANCE.write(470)).isEqualTo("470R");
        assertThat(LetterCode.RESISTANCE.write(0.22)).isEqualTo("R22");
        assertThat(LetterCode.RESISTANCE.write(1e6)).isEqualTo("1M");
        assertThat(LetterCode.CAPACITANCE.write(365e-12)).isEqualTo("365p");
        assertThat(LetterCode.CAPACITANCE.write(0.1e-6)).isEqualTo("100n");
        assertThat(LetterCode.INDUCTANCE.write(180e-6)).isEqualTo("180µ");
        assertThat(LetterCode.INDUCTANCE.read("4R7")).isEqualTo(4.7e-6);
        assertThat(DigitCode.RESISTANCE.read("4992")).isEqualTo(49_900);
        assertThat(DigitCode.RESISTANCE.write(49_900, 3)).isEqualTo("4992");
        assertThat(DigitCode.CAPACITANCE.write(4.7e-12, 2)).isEqualTo("479");
        assertThat(ColourCode.write(4700, 0.05)).containsExactly("yellow", "violet", "red", "gold");
        assertThat(ColourCode.write(49_900, 0.01)).containsExactly("yellow", "white", "white", "red", "brown");
        assertThat(ColourCode.write(0.47, 0.1)).containsExactly("yellow", "violet", "silver", "silver");
    }

    @Test
    void every_preferred_value_survives_its_codes() {
        for (double value : Series.E192.decade()) {
            for (int decade = 0; decade < 7; decade++) {
                double ohms = Double.parseDouble(value + "e" + decade);
                assertThat(LetterCode.RESISTANCE.read(LetterCode.RESISTANCE.write(ohms)))
                        .isEqualTo(ohms);
                if (decade > 1)
                    assertThat(DigitCode.RESISTANCE.read(DigitCode.RESISTANCE.write(ohms, 3)))
                            .isEqualTo(ohms);
                assertThat(ColourCode.read(ColourCode.write(ohms, 0.01)).ohms()).isCloseTo(ohms, within(1e-9 * ohms));
            }
        }
    }

    @Test
    void what_is_no_code_is_refused_with_the_remedy() {
        for (String bad : List.of("", "K", "4.7k", "47", "4X7", "K4K", "0R0", "470")) {
            assertThatThrownBy(() -> LetterCode.RESISTANCE.read(bad)).isInstanceOf(MarkingException.class);
        }
        assertThatThrownBy(() -> LetterCode.RESISTANCE.read("4n7")).hasMessageContaining("R K M");
        assertThatThrownBy(() -> LetterCode.RESISTANCE.write(4711.5)).isInstanceOf(MarkingException.class);
        assertThatThrownBy(() -> LetterCode.CAPACITANCE.write(1e-16)).isInstanceOf(MarkingException.class);
        assertThatThrownBy(() -> DigitCode.CAPACITANCE.read("4n7")).isInstanceOf(MarkingException.class);
        assertThatThrownBy(() -> DigitCode.CAPACITANCE.write(4.75e-9, 2)).isInstanceOf(MarkingException.class);
        assertThatThrownBy(() -> ColourCode.read(List.of("gold", "red", "red"))).hasMessageContaining("Turn");
        assertThatThrownBy(() -> ColourCode.read(List.of("red", "pink", "red"))).hasMessageContaining("pink");
        assertThatThrownBy(() -> Tolerance.ofLetter("A")).isInstanceOf(MarkingException.class);
        assertThatThrownBy(() -> Tolerance.ofLetter("J", 1e-12)).isInstanceOf(MarkingException.class);
    }

    @Test
    void two_parts_come_nearest_first_with_their_error_and_tolerance() {
        List<TwoParts.Stock> drawer = List.of(
                new TwoParts.Stock(100e-12, 0.05, 1),
                new TwoParts.Stock(220e-12, 0.05, 2),
                new TwoParts.Stock(330e-12, 0.02, 1));
        List<TwoParts.Combination> found = TwoParts.nearest(110e-12, TwoParts.Kind.CAPACITANCE, drawer, 3);
        TwoParts.Combination best = found.get(0);
        assertThat(best.joined()).isEqualTo(TwoParts.Joined.SERIES);
        assertThat(best.value()).isCloseTo(110e-12, within(1e-22));
        assertThat(best.tolerance()).isCloseTo(0.05, within(EXACT));
        assertThat(TwoParts.nearest(430e-12, TwoParts.Kind.CAPACITANCE, drawer, 1)
                        .get(0)
                        .joined())
                .isEqualTo(TwoParts.Joined.PARALLEL);
        // 660 pF would take two of 330 pF, and there is one: nothing comes nearer than 220 with 330.
        assertThat(TwoParts.nearest(660e-12, TwoParts.Kind.CAPACITANCE, drawer, 1)
                        .get(0)
                        .value())
                .isCloseTo(550e-12, within(1e-22));
        List<TwoParts.Stock> resistors = List.of(new TwoParts.Stock(1000, 0.01, 1), new TwoParts.Stock(470, 0.05, 1));
        TwoParts.Combination sum =
                TwoParts.nearest(1470, TwoParts.Kind.RESISTANCE, resistors, 1).get(0);
        assertThat(sum.joined()).isEqualTo(TwoParts.Joined.SERIES);
        assertThat(sum.error()).isZero();
        assertThat(sum.tolerance()).isCloseTo((10 + 23.5) / 1470, within(EXACT));
        assertThat(TwoParts.nearest(1, TwoParts.Kind.RESISTANCE, List.of(), 5)).isEmpty();
    }
}
