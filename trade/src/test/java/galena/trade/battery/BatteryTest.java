package galena.trade.battery;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import galena.trade.source.Basis;
import galena.trade.source.DataTable;
import galena.trade.source.PublishedRows;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class BatteryTest {
    private static final double MAH = 3.6;

    /** Data are exact; what is left is rounding. */
    private static final double ROUNDING = 1e-9;

    private static final Map<String, String> NAMES = Map.of(
            "6LR61 (9 V)", "6LR61",
            "6F22 (9 V)", "6F22",
            "6HR61 (8.4 V)", "6HR61",
            "LR6 (AA)", "LR6",
            "HR6 (AA)", "HR6",
            "HR15/43 (4/5 AA)", "4/5AA-NiMH",
            "HR11/45 (AAA)", "HR03",
            "18650", "18650");

    private static Battery battery(String name) {
        return ((BatteryLookup.Known) Battery.named(name)).battery();
    }

    @Test
    void agrees_with_every_published_curve_point_resistance_and_capacity() {
        int compared = 0;
        for (DataTable.Row row : PublishedRows.of("batteries.csv")) {
            Battery battery = battery(NAMES.get(row.text("battery")));
            Published source = Published.source("trade", PublishedRows.kind(row, Kind.TABLE), row.text("source"));
            String what = row.text("battery") + " " + row.text("parameter");
            String parameter = row.text("parameter");
            if (parameter.startsWith("voltage against")) {
                double used = row.required("x") / 100;
                double found = battery.terminalVoltage(1 - used, battery.cell().curveCurrent());
                source.matches(what + " at " + row.text("x") + " %", row.required("value"), found, ROUNDING);
            } else if (parameter.startsWith("internal")) {
                if (parameter.contains("upper bound")) {
                    source.liesWithin(what + " (Ω)", 0, row.required("value"), battery.resistance(1));
                } else {
                    source.matches(what + " (Ω)", row.required("value"), battery.resistance(1), ROUNDING);
                }
            } else if (parameter.startsWith("initial AC")) {
                source.liesWithin(what + " (Ω)", 0, row.required("value"), battery.resistance(1));
            } else if (parameter.equals("nominal voltage")) {
                source.matches(what, row.required("value"), battery.nominalVoltage(), ROUNDING);
            } else if (parameter.equals("discharge cut-off")) {
                source.matches(what, row.required("value"), battery.endVoltage(), ROUNDING);
            } else {
                charge(row, battery, source, what);
            }
            compared++;
        }
        assertThat(compared).isEqualTo(58);
    }

    /** Rows about charge: a figure at a current, a range, or the hours of a standard test. */
    private static void charge(DataTable.Row row, Battery battery, Published source, String what) {
        String unit = row.text("unit");
        if (unit.equals("h")) {
            double resistor = row.text("conditions").startsWith("620") ? 620 : 270;
            double mean = 7.2 / resistor;
            Endurance.Lasts lasts = (Endurance.Lasts) battery.runtime(mean, 5.4);
            // One capacity for both tests: the heavier one may come out longer by what heavier current costs.
            source.liesWithin(what + " (h)", row.required("value") * 0.95, row.required("value") * 1.25, lasts.hours());
            return;
        }
        double current = row.text("conditions").startsWith("100 mA")
                ? 0.1
                : row.text("conditions").startsWith("25 mA") ? 0.025 : 0.012;
        Cell.Capacity capacity = battery.capacity(current);
        String value = row.text("value");
        if (value.contains("-")) {
            double low = Double.parseDouble(value.split("-")[0]);
            double high = Double.parseDouble(value.split("-")[1]);
            source.liesWithin(what + ", high (mAh)", low, high, capacity.high() / MAH);
        } else if (row.text("battery").startsWith("6LR61") && row.text("basis").equals("seen")) {
            source.liesWithin(what + " (mAh)", capacity.low() / MAH, capacity.high() / MAH, row.required("value"));
        } else {
            source.matches(what + " (mAh)", row.required("value"), capacity.typical() / MAH, 0.5);
        }
    }

    @Test
    void a_pack_multiplies_voltage_and_resistance_and_keeps_capacity() {
        Battery pack = battery("6xAA-NiMH");
        Battery one = battery("AA-NiMH");
        assertThat(pack.name()).isEqualTo("6xAA-NiMH");
        assertThat(pack.nominalVoltage()).isCloseTo(7.2, within(ROUNDING));
        assertThat(pack.emf(0.4)).isCloseTo(6 * one.emf(0.4), within(ROUNDING));
        assertThat(pack.resistance(0.4)).isCloseTo(6 * one.resistance(0.4), within(ROUNDING));
        assertThat(pack.capacity(0.01)).isEqualTo(one.capacity(0.01));
        assertThat(battery("6 × AA NiMH")).isEqualTo(pack);
    }

    @Test
    void terminals_fall_as_charge_goes_for_every_cell_held() {
        for (String name : BatteryNames.held()) {
            Battery battery = battery(name);
            double before = Double.POSITIVE_INFINITY;
            for (int i = 0; i <= 40; i++) {
                double voltage = battery.terminalVoltage(1 - i / 40.0, 0.01);
                assertThat(voltage).as(name).isLessThan(before);
                before = voltage;
            }
            assertThat(battery.terminalVoltage(1, 0.01))
                    .as(name)
                    .isBetween(battery.nominalVoltage() * 0.95, battery.nominalVoltage() * 1.25);
        }
    }

    @Test
    void hours_are_charge_over_current_and_stop_at_the_end_voltage() {
        Battery block = battery("9V-alkaline");
        Endurance.Lasts all = (Endurance.Lasts) block.runtime(0.012, 5.0);
        assertThat(all.spent()).isTrue();
        assertThat(all.hours()).isCloseTo(383.0 / 12, within(1e-6));
        assertThat(all.highHours()).isCloseTo(600.0 / 12, within(1e-6));
        assertThat(all.basis()).isEqualTo(Basis.MEMORY);
        Endurance.Lasts half = (Endurance.Lasts) block.runtime(0.012, 7.5);
        assertThat(half.usedCharge()).isCloseTo(0.5, within(1e-9));
        assertThat(block.runtime(0.5, 9)).isInstanceOf(Endurance.TooLow.class);
    }

    @Test
    void heavier_currents_get_less_out_of_an_alkaline_cell() {
        Battery cell = battery("AA-alkaline");
        List<Double> delivered = List.of(0.005, 0.025, 0.05, 0.1, 0.3, 0.5, 2.0).stream()
                .map(current -> cell.capacity(current).typical() / MAH)
                .toList();
        assertThat(delivered).isSortedAccordingTo((a, b) -> Double.compare(b, a));
        assertThat(delivered.get(0)).isCloseTo(2900, within(0.01));
        assertThat(delivered.get(2)).isCloseTo(Math.sqrt(2900 * 2200), within(0.01));
        assertThat(delivered.get(6)).isCloseTo(1400, within(0.01));
    }

    @Test
    void an_unknown_name_is_answered_with_what_is_held() {
        assertThat(Battery.named("6xAA-unobtainium")).isInstanceOfSatisfying(BatteryLookup.Unknown.class, unknown -> {
            assertThat(unknown.held().get(0)).startsWith("AA-");
            assertThat(unknown.message()).contains("unobtainium").contains("9V-alkaline");
        });
        assertThat(Battery.named("")).isInstanceOf(BatteryLookup.Unknown.class);
        assertThat(Battery.named("0xAA-NiMH")).isInstanceOf(BatteryLookup.Unknown.class);
        assertThatThrownBy(() -> battery("AA-NiMH").emf(1.2)).hasMessageContaining("1.2");
        assertThatThrownBy(() -> battery("AA-NiMH").runtime(0, 1)).hasMessageContaining("positive");
    }
}
