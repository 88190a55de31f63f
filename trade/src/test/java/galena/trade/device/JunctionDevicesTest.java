package galena.trade.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class JunctionDevicesTest {
    private static final DeviceLibrary LIBRARY = DeviceLibrary.standard();

    private static BipolarData bipolar(String type) {
        return LIBRARY.require(type, BipolarData.class);
    }

    @Test
    void model_parameters_printed_by_the_maker_come_first() {
        BipolarModel model = bipolar("2N3904").typical().orElseThrow();
        assertThat(model.saturationCurrent()).isEqualTo(6.734e-15);
        assertThat(model.earlyVoltage()).isEqualTo(74.03);
        assertThat(model.forwardTransitTime()).isEqualTo(3.012e-10);
        assertThat(model.emitterCapacitance()).isEqualTo(4.493e-12);
        assertThat(model.collectorGrading()).isEqualTo(0.3085);
    }

    /** One sheet prints the characteristics and the model: deriving from the first must come near the second. */
    @Test
    void characteristics_of_a_sheet_lead_near_the_model_that_its_maker_prints() {
        Sheet printed = bipolar("2N3904").sheet();
        List<Printed> characteristics = printed.rows().stream()
                .filter(row -> !row.quantity().word().startsWith("model_"))
                .toList();
        BipolarModel derived = new BipolarData(new Sheet("2N3904", Family.NPN, characteristics, ""))
                .typical()
                .orElseThrow();
        Published sheet = Published.source("trade", Kind.TABLE, "Fairchild 2N3904 data sheet, model parameters");
        double decade = Thermal.VOLTAGE * Math.log(derived.saturationCurrent() / 6.734e-15);
        sheet.liesWithin("base-emitter voltage from VBE(sat), error (V)", -0.06, 0.06, decade);
        sheet.liesWithin(
                "collector junction, zero bias (pF)", 3.638 / 1.5, 3.638 * 1.5, derived.collectorCapacitance() * 1e12);
        sheet.liesWithin(
                "emitter junction, zero bias (pF)", 4.493 / 1.5, 4.493 * 1.5, derived.emitterCapacitance() * 1e12);
        sheet.liesWithin("transit time from least fT, over printed", 1, 2, derived.forwardTransitTime() / 3.012e-10);
    }

    @Test
    void gain_comes_from_the_row_nearest_in_current_and_its_missing_limit_from_the_row_that_prints_both() {
        Range gain = bipolar("2N3904").currentGain(1.2e-3);
        assertThat(gain.min()).hasValue(70);
        assertThat(gain.max()).hasValue(210);
        assertThat(gain.typ().orElseThrow()).isCloseTo(70 * Math.sqrt(3), within(1e-9));
        assertThat(gain.rows()).hasSize(2);
        Range bf199 = bipolar("BF199").currentGain(7e-3);
        assertThat(bf199.max().orElseThrow()).isCloseTo(88.0 * 88 / 38, within(1e-9));
        assertThat(bipolar("BC547B").corners(2e-3).orElseThrow())
                .extracting(BipolarModel::forwardBeta)
                .containsExactly(200.0, 300.0, 450.0);
    }

    @Test
    void early_voltage_from_output_conductance() {
        Published.source("trade", Kind.CLOSED_FORM, "VA = IC/hoe − VCE")
                .matches(
                        "2N2222A at hoe 20 µS, 1 mA, 10 V",
                        40.0,
                        BipolarDerivation.earlyVoltage(20e-6, 1e-3, 10),
                        1e-9);
        Range computed = bipolar("2N2222A").range(DeviceQuantity.EARLY_VOLTAGE);
        assertThat(computed.typ()).hasValue(40);
        double fromLimits = bipolar("2N2222A").typical().orElseThrow().earlyVoltage();
        assertThat(fromLimits).isCloseTo(1e-3 / Math.sqrt(5e-6 * 35e-6) - 10, within(1e-9));
    }

    @Test
    void transit_time_gives_back_the_printed_transition_frequency() {
        BipolarModel model = bipolar("BC547B").typical().orElseThrow();
        double emitter = Depletion.capacitance(
                model.emitterCapacitance(), model.emitterPotential(), model.emitterGrading(), 0.7);
        double collector = Depletion.capacitance(
                model.collectorCapacitance(), model.collectorPotential(), model.collectorGrading(), -4.3);
        double delay = model.forwardTransitTime() + (emitter + collector) * Thermal.VOLTAGE / 10e-3;
        Published.source("trade", Kind.TABLE, "Fairchild/ON BC546-BC550 data sheet")
                .matchesRelative("BC547B fT at 10 mA", 300e6, 1 / (2 * Math.PI * delay), 1e-9);
    }

    /** IDSS and transconductance make the cutoff; the sheet prints it too. */
    @Test
    void dual_gate_cutoff_from_current_and_transconductance_agrees_with_the_printed_one() {
        DualGateMosfetModel bf998 =
                LIBRARY.require("BF998", DualGateMosfetData.class).typical().orElseThrow();
        Published.source("trade", Kind.TABLE, "Infineon BF998 data sheet, Feb-13-2004")
                .matches("BF998 cutoff of gate 1 (V), typical", -0.8, bf998.lowerCutoff(), 0.05);
        DualGateMosfetModel old =
                LIBRARY.require("40673", DualGateMosfetData.class).typical().orElseThrow();
        Published.source("trade", Kind.MEMORY, "RCA 40673 data sheet")
                .matches("40673 cutoff of gate 1 (V), typical", -2, old.lowerCutoff(), 0.1);
        double atTen = 2 * Math.sqrt(bf998.lowerCoefficient() * 10e-3);
        assertThat(atTen).isCloseTo(24e-3, within(1e-12));
        assertThat(bf998.gate1Capacitance() + bf998.feedbackCapacitance()).isCloseTo(2.1e-12, within(1e-20));
    }

    @Test
    void diodes_pass_through_the_printed_forward_voltages() {
        DiodeModel silicon =
                LIBRARY.require("1N4148", DiodeData.class).typical().orElseThrow();
        assertThat(silicon.forwardVoltage(5e-3)).isCloseTo(0.67, within(1e-6));
        assertThat(silicon.forwardVoltage(10e-3)).isLessThan(1.0);
        assertThat(silicon.saturationCurrent()).isBetween(1e-9, 1e-8);
        DiodeModel schottky =
                LIBRARY.require("BAT43", DiodeData.class).typical().orElseThrow();
        assertThat(schottky.forwardVoltage(2e-3)).isCloseTo(0.295, within(1e-5));
        assertThat(schottky.forwardVoltage(15e-3)).isLessThan(0.45);
        DiodeModel worst = LIBRARY.require("1N5711", DiodeData.class).typical().orElseThrow();
        assertThat(worst.forwardVoltage(1e-3)).isCloseTo(0.41, within(1e-5));
        assertThat(worst.forwardVoltage(15e-3)).isCloseTo(1.0, within(1e-5));
        assertThat(worst.transitTime()).isZero();
    }

    @Test
    void three_forward_voltages_fix_all_of_a_diode() {
        DiodeModel truth = new DiodeModel("made up", 3e-9, 1.7, 0.8, 2e-12, 0.7, 0.33, 0);
        List<Map<String, Object>> points = List.of(point(truth, 1e-4), point(truth, 3e-3), point(truth, 5e-2));
        DiodeData data = (DiodeData)
                DeviceData.from(Map.of("type", "made up", "kind", "silicon-diode", "forward_voltage", points));
        DiodeModel found = data.typical().orElseThrow();
        assertThat(found.emission()).isCloseTo(1.7, within(1e-4));
        assertThat(found.seriesResistance()).isCloseTo(0.8, within(1e-3));
        assertThat(found.saturationCurrent()).isCloseTo(3e-9, within(3e-12));
    }

    private static Map<String, Object> point(DiodeModel diode, double current) {
        return Map.of("typ", diode.forwardVoltage(current), "at", Map.of("IF", current));
    }

    @Test
    void tuning_diodes_stay_within_the_printed_capacitances_and_ratio() {
        for (String type : List.of("BB112", "BB212", "1SV149")) {
            TuningDiodeData data = LIBRARY.require(type, TuningDiodeData.class);
            TuningDiodeModel model = data.typical().orElseThrow();
            for (Printed row : data.capacitances()) {
                if (row.min().isEmpty()) continue;
                Published.source(
                                "trade",
                                row.provenance().basis().isVerified() ? Kind.TABLE : Kind.MEMORY,
                                row.provenance().source())
                        .liesWithin(
                                type + " capacitance (pF) at " + row.required("VR") + " V",
                                row.min().orElseThrow() * 1e12,
                                row.max().orElseThrow() * 1e12,
                                model.capacitanceAt(row.required("VR")) * 1e12);
            }
            assertThatThrownBy(() -> model.capacitanceAt(20)).hasMessageContaining(type);
        }
        TuningDiodeModel bb212 =
                LIBRARY.require("BB212", TuningDiodeData.class).typical().orElseThrow();
        double beyond = Depletion.capacitance(bb212.capacitance(), bb212.potential(), bb212.grading(), -8);
        assertThat(beyond).isLessThan(22e-12);
    }

    @Test
    void a_builders_device_needs_few_numbers_and_every_mistake_in_it_is_named() {
        Device mine = DeviceData.from(
                Map.of("type", "X1", "kind", "npn", "current_gain", Map.of("typ", 180, "at", Map.of("IC", 1e-3))));
        assertThat(((BipolarData) mine).typical().orElseThrow().forwardBeta()).isEqualTo(180);
        assertThatThrownBy(() -> DeviceData.from(
                        Map.of("kind", "valve", "current_gain", "many", "gain", 3, "capacitance", Map.of("typ", -1))))
                .isInstanceOfSatisfying(DeviceDataException.class, e -> assertThat(e.problems())
                        .hasSize(5)
                        .anyMatch(problem -> problem.startsWith("kind: \"valve\""))
                        .anyMatch(problem -> problem.startsWith("type: missing")));
        assertThatThrownBy(() -> DeviceData.from(
                        Map.of("type", "X2", "kind", "n-jfet", "saturation_current", Map.of("min", 5e-3, "max", 2e-3))))
                .hasMessageContaining("out of order");
    }

    /** Two of the three printed points alone must find the third: a check of what is assumed about steep junctions. */
    @Test
    void a_steep_tuning_diode_known_at_two_voltages_is_right_between_them() {
        TuningDiodeData whole = LIBRARY.require("BB212", TuningDiodeData.class);
        List<Printed> ends = whole.capacitances().stream()
                .filter(row -> row.required("VR") == 0.5 || row.required("VR") == 5.5)
                .toList();
        TuningDiodeModel model = new TuningDiodeData(new Sheet("BB212", Family.TUNING_DIODE, ends, ""))
                .typical()
                .orElseThrow();
        Published.source("trade", Kind.TABLE, "Philips BB212 data sheet, 1996-05-03")
                .liesWithin(
                        "capacitance (pF) at 3 V from the rows at 0.5 and 5.5 V",
                        140,
                        280,
                        model.capacitanceAt(3) * 1e12);
        assertThat(whole.corners().orElseThrow())
                .extracting(corner -> Math.round(corner.capacitanceAt(0.5) / model.capacitanceAt(0.5) * 100))
                .isSorted();
    }

    @Test
    void corners_of_a_dual_gate_type_keep_its_mask_and_stay_within_the_printed_cutoff() {
        for (String type : List.of("BF998", "BF961", "BF981", "40673", "3N201")) {
            DualGateMosfetData data = LIBRARY.require(type, DualGateMosfetData.class);
            List<DualGateMosfetModel> corners = data.corners().orElseThrow();
            assertThat(corners)
                    .extracting(DualGateMosfetModel::saturationCurrent)
                    .isSorted();
            assertThat(corners.get(0).saturationCurrent())
                    .isCloseTo(data.saturationCurrent().min().orElseThrow(), within(1e-12));
            double deepest =
                    data.range(DeviceQuantity.GATE1_CUTOFF_VOLTAGE).max().orElseThrow();
            assertThat(corners.get(2).lowerCutoff()).as(type).isGreaterThanOrEqualTo(deepest);
        }
        assertThat(LIBRARY.require("BF994S", DualGateMosfetData.class).corners())
                .isInstanceOf(NotDerivable.class);
    }

    @Test
    void rows_that_contradict_each_other_and_impossible_conditions_are_refused() {
        assertThatThrownBy(() -> DeviceData.from(Map.of(
                        "type", "X3", "kind", "npn", "current_gain", List.of(Map.of("min", 300), Map.of("max", 100)))))
                .isInstanceOf(DeviceDataException.class)
                .hasMessageContaining("current_gain");
        assertThatThrownBy(() -> DeviceData.from(
                        Map.of("type", "X4", "kind", "npn", "current_gain", Map.of("typ", 100, "at", Map.of("IC", 0)))))
                .hasMessageContaining("IC");
        assertThatThrownBy(() ->
                        DeviceData.from(Map.of("type", "X5", "kind", "npn", "current_gain", Map.of("typ", Double.NaN))))
                .hasMessageContaining("no possible value");
    }
}
