package galena.trade.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.source.Basis;
import galena.trade.source.DataTable;
import galena.trade.source.PrintedUnit;
import galena.trade.source.PublishedRows;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class DeviceLibraryTest {
    private static final DeviceLibrary LIBRARY = DeviceLibrary.standard();

    /** Data-sheet limits are exact; 1e-12 relative is for the change of unit. */
    private static final double EXACT = 1e-12;

    @Test
    void holds_every_printed_row_with_its_figures_basis_and_source() {
        List<DataTable.Row> rows = PublishedRows.of("devices.csv");
        assertThat(rows).hasSize(266);
        for (DataTable.Row row : rows) {
            Sheet sheet =
                    ((Lookup.Known) LIBRARY.find(row.text("type"))).device().sheet();
            boolean held = sheet.rows().stream().anyMatch(printed -> same(printed, row));
            Published.source("trade", PublishedRows.kind(row, Kind.TABLE), row.text("source"))
                    .holds(row.text("type") + " " + row.text("parameter") + " as printed", held, "held: " + held);
        }
    }

    private static boolean same(Printed printed, DataTable.Row row) {
        PrintedUnit unit = PrintedUnit.of(row.text("unit").equals("1") ? "" : row.text("unit"));
        double sign = row.text("parameter").startsWith("-") ? -1 : 1;
        return printed.quantity().unit().equals(unit.base())
                && same(printed.min(), row.number("min"), sign, unit)
                && same(printed.typ(), row.number("typ"), sign, unit)
                && same(printed.max(), row.number("max"), sign, unit)
                && printed.provenance().source().equals(row.text("source"))
                && printed.provenance().where().equals(row.text("where"))
                && printed.provenance().basis() == Basis.named(row.text("basis"));
    }

    private static boolean same(OptionalDouble held, OptionalDouble printed, double sign, PrintedUnit unit) {
        if (held.isEmpty() || printed.isEmpty()) return held.isEmpty() && printed.isEmpty();
        double expected = sign * unit.toSi(printed.getAsDouble());
        return Math.abs(held.getAsDouble() - expected) <= EXACT * Math.abs(expected);
    }

    @Test
    void reads_test_conditions_in_si() {
        Printed vgs = LIBRARY.require("BF245A", JfetData.class)
                .all(DeviceQuantity.GATE_SOURCE_VOLTAGE)
                .get(0);
        assertThat(vgs.required("ID")).isCloseTo(200e-6, within(1e-18));
        assertThat(vgs.required("VDS")).isEqualTo(15);
        assertThat(vgs.condition("VCE")).isEmpty();
        for (Device device : LIBRARY.devices()) {
            for (Printed row : device.sheet().rows()) {
                row.at()
                        .forEach((symbol, value) ->
                                assertThat(value).as(device.type() + symbol).isFinite());
            }
        }
    }

    @Test
    void of_sheets_that_disagree_the_first_rules_and_the_other_is_kept() {
        DualGateMosfetData device = LIBRARY.require("BF998", DualGateMosfetData.class);
        assertThat(device.saturationCurrent().max()).hasValue(15e-3);
        assertThat(device.all(DeviceQuantity.SATURATION_CURRENT)).hasSize(2);
    }

    @Test
    void a_typical_value_and_limits_from_two_rows_of_one_sheet_join() {
        Range gfs = LIBRARY.require("2n 3819", JfetData.class).forwardTransconductance();
        assertThat(gfs.min()).hasValue(2e-3);
        assertThat(gfs.typ()).hasValue(5.5e-3);
        assertThat(gfs.rows()).extracting(row -> row.provenance().basis()).containsExactly(Basis.SEEN, Basis.MEMORY);
    }

    @Test
    void an_unknown_type_number_is_answered_with_the_nearest() {
        Lookup answer = LIBRARY.find("BF245D");
        assertThat(answer).isInstanceOfSatisfying(Lookup.Unknown.class, unknown -> {
            assertThat(unknown.nearest()).containsExactly("BF245A", "BF245B", "BF245C");
            assertThat(unknown.message()).contains("BF245D").contains("Nearest");
        });
        assertThat(LIBRARY.find("zzzzzzzzzz"))
                .isInstanceOfSatisfying(Lookup.Unknown.class, unknown -> assertThat(unknown.nearest())
                        .isEmpty());
        assertThatThrownBy(() -> LIBRARY.require("2N3904", JfetData.class))
                .isInstanceOf(DeviceDataException.class)
                .hasMessageContaining("npn");
    }

    @Test
    void every_device_gives_a_model_or_says_what_is_missing() {
        TreeSet<String> missing = new TreeSet<>();
        for (Device device : LIBRARY.devices()) {
            assertThat(device.sheet().availability()).as(device.type()).isNotBlank();
            ModelAnswer<?> answer = model(device);
            if (answer instanceof NotDerivable<?> reason) {
                missing.add(device.type());
                assertThat(reason.reason()).isNotBlank();
                assertThat(reason.wanted()).isNotEmpty();
                assertThatThrownBy(answer::orElseThrow).hasMessageContaining(device.type());
            } else {
                Derived<?> derived = (Derived<?>) answer;
                assertThat(derived.steps()).allSatisfy(step -> {
                    assertThat(step.formula()).isNotBlank();
                    if (step.rows().isEmpty()) assertThat(step.basis()).isEqualTo(Basis.COMMON_PRACTICE);
                });
            }
        }
        assertThat(missing).containsExactly("1N34A", "BF994S", "J113");
    }

    private static ModelAnswer<?> model(Device device) {
        if (device instanceof JfetData jfet) return jfet.typical();
        if (device instanceof BipolarData bipolar) return bipolar.typical();
        if (device instanceof DualGateMosfetData mosfet) return mosfet.typical();
        if (device instanceof DiodeData diode) return diode.typical();
        return ((TuningDiodeData) device).typical();
    }

    /** The two factors by which a lone limit is turned into a typical value are medians of this very library. */
    @Test
    void factors_for_lone_limits_are_the_medians_of_rows_that_print_both() {
        double[] ofMaximum = ratios("F", true);
        double[] ofMinimum = ratios("S", false);
        assertThat(ofMaximum.length).isGreaterThan(10);
        assertThat(Range.TYPICAL_OF_MAXIMUM).isCloseTo(ofMaximum[ofMaximum.length / 2], within(0.1));
        assertThat(Range.TYPICAL_OF_MINIMUM).isCloseTo(ofMinimum[ofMinimum.length / 2], within(0.1));
    }

    private static double[] ratios(String unit, boolean maximum) {
        return LIBRARY.devices().stream()
                .flatMap(device -> device.sheet().rows().stream())
                .filter(row -> row.quantity().unit().equals(unit))
                .filter(row -> row.typ().isPresent() && (maximum ? row.max() : row.min()).isPresent())
                .mapToDouble(row -> row.typ().orElseThrow() / (maximum ? row.max() : row.min()).orElseThrow())
                .sorted()
                .toArray();
    }

    @Test
    void the_library_grows_by_a_builders_devices() {
        JfetData mine = JfetData.measured("BF245A", 4e-3, 2, 9, "bench");
        DeviceLibrary larger = LIBRARY.with(List.of(mine));
        assertThat(larger.require("BF245A", JfetData.class)).isSameAs(mine);
        assertThat(larger.types()).hasSize(LIBRARY.types().size());
        assertThat(LIBRARY.require("BF245A", JfetData.class)).isNotSameAs(mine);
        assertThat(Arrays.asList(mine.sheet().basis())).containsExactly(Basis.BUILDER);
    }
}
