package galena.trade.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import galena.proof.Kind;
import galena.proof.Published;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class JfetDataTest {
    private static final double ROUNDING = 1e-12;

    /** Printed limits may be met to rounding only. */
    private static final double LIMIT_SLACK = 1e-9;

    private static JfetData jfet(String type) {
        return DeviceLibrary.standard().require(type, JfetData.class);
    }

    static List<String> jfetsWithSpread() {
        return DeviceLibrary.standard().devices().stream()
                .filter(device -> device instanceof JfetData data && data.spread() instanceof Derived<?>)
                .map(Device::type)
                .toList();
    }

    @Test
    void the_typical_device_has_the_printed_current_and_transconductance_at_the_printed_drain_voltage() {
        JfetModel model = jfet("BF245A").typical().orElseThrow();
        Published square = Published.source(
                "trade", Kind.CLOSED_FORM, "square law of the JFET: gm = 2·IDSS/|VP| at VGS = 0, λ·ID/(1+λ·VDS) = gos");
        square.matchesRelative("BF245A IDSS at 15 V", Math.sqrt(2e-3 * 6.5e-3), model.currentAtZeroGate(15), ROUNDING);
        square.matchesRelative(
                "BF245A gfs at 15 V", Math.sqrt(3e-3 * 6.5e-3), model.forwardTransconductance(15), ROUNDING);
        double gos = model.saturationCurrent() * model.channelLengthModulation();
        square.matchesRelative("BF245A gos", 0.04e-3, gos, ROUNDING);
        assertThat(model.pinchOff()).isCloseTo(-1.633, within(1e-3));
    }

    @Test
    void a_transconductance_printed_at_a_drain_current_is_taken_at_that_current() {
        JfetModel model = jfet("J310").typical().orElseThrow();
        double idss = model.currentAtZeroGate(10);
        double gmAtTen = 2 * Math.sqrt(idss * 10e-3) / Math.abs(model.pinchOff());
        Published.source("trade", Kind.CLOSED_FORM, "square law of the JFET: gm = 2·√(IDSS·ID)/|VP|")
                .matchesRelative("J310 gfs at 10 mA", Math.sqrt(8e-3 * 18e-3), gmAtTen, ROUNDING);
    }

    /** A cutoff voltage is printed beside IDSS and gfs and not used for the derivation: an independent row. */
    @ParameterizedTest
    @ValueSource(strings = {"2N5484", "2N5485", "2N5486", "J309", "J310", "2N5458", "2N5459"})
    void derived_pinch_off_lies_within_the_printed_cutoff(String type) {
        Range cutoff = jfet(type).cutoffVoltage();
        double pinchOff = Math.abs(jfet(type).typical().orElseThrow().pinchOff());
        String source = cutoff.rows().get(0).provenance().source();
        Published.source("trade", Kind.TABLE, source)
                .liesWithin(
                        type + " pinch-off",
                        cutoff.min().orElseThrow(),
                        cutoff.max().orElseThrow(),
                        pinchOff);
    }

    @Test
    void junction_capacitances_give_back_the_printed_ones_at_the_printed_bias() {
        JfetModel bf245 = jfet("BF245B").typical().orElseThrow();
        double gateDrain =
                Depletion.capacitance(bf245.gateDrainCapacitance(), bf245.builtInPotential(), bf245.grading(), -21);
        double gateSource =
                Depletion.capacitance(bf245.gateSourceCapacitance(), bf245.builtInPotential(), bf245.grading(), -1);
        assertThat(gateDrain).isCloseTo(0.7e-12, within(1e-20));
        assertThat(gateSource + gateDrain).isCloseTo(3.0e-12, within(1e-20));
        JfetModel j309 = jfet("J309").typical().orElseThrow();
        assertThat(Depletion.capacitance(j309.gateDrainCapacitance(), 0.8, j309.grading(), -10))
                .isCloseTo(2.0e-12, within(1e-20));
        assertThat(Depletion.capacitance(j309.gateSourceCapacitance(), 0.8, j309.grading(), -10))
                .isCloseTo(4.1e-12, within(1e-20));
    }

    @ParameterizedTest
    @MethodSource("jfetsWithSpread")
    void every_draw_and_corner_meets_every_printed_limit(String type) {
        JfetData device = jfet(type);
        JfetSpread spread = device.spread().orElseThrow();
        Random random = new Random(19);
        List<JfetModel> devices = new ArrayList<>(spread.corners());
        for (int i = 0; i < 500; i++) devices.add(spread.draw(random));
        for (JfetModel model : devices) {
            double vds = device.saturationCurrent().rows().get(0).required("VDS");
            holds(device.saturationCurrent(), model.currentAtZeroGate(vds), type + " IDSS");
            double at = device.forwardTransconductance()
                    .rows()
                    .get(0)
                    .condition("ID")
                    .orElse(model.currentAtZeroGate(vds));
            double gm = 2 * Math.sqrt(model.currentAtZeroGate(vds) * at) / Math.abs(model.pinchOff());
            holds(device.forwardTransconductance(), gm, type + " gfs");
            for (Range gate : List.of(device.gateSourceVoltage(), device.cutoffVoltage())) {
                if (!gate.isKnown()) continue;
                double current = gate.rows().get(0).condition("ID").orElse(0);
                holds(gate, model.gateVoltageAt(current, vds), type + " gate voltage");
            }
        }
    }

    private static void holds(Range range, double value, String what) {
        range.min().ifPresent(min -> assertThat(value).as(what).isGreaterThanOrEqualTo(min * (1 - LIMIT_SLACK)));
        range.max().ifPresent(max -> assertThat(value).as(what).isLessThanOrEqualTo(max * (1 + LIMIT_SLACK)));
    }

    /** The printed gate voltage of this group really cuts: full current with the highest transconductance is no device. */
    @Test
    void combinations_that_no_device_has_are_refused() {
        JfetSpread spread = jfet("BF245B").spread().orElseThrow();
        assertThat(spread.admits(15e-3, 6.5e-3)).isFalse();
        assertThat(spread.admits(9.5e-3, 4.7e-3)).isTrue();
        assertThat(spread.strong().currentAtZeroGate(15)).isLessThan(15e-3).isGreaterThan(13e-3);
    }

    @Test
    void weak_typical_and_strong_are_in_order() {
        for (String type : jfetsWithSpread()) {
            List<JfetModel> corners = jfet(type).spread().orElseThrow().corners();
            assertThat(corners)
                    .extracting(JfetModel::saturationCurrent)
                    .as(type)
                    .isSorted();
            assertThat(corners)
                    .extracting(m -> m.forwardTransconductance(0))
                    .as(type)
                    .isSorted();
        }
    }

    /** Same seed, same law: plain rejection sampling, as the sheet's rectangle with bad draws thrown away. */
    @Test
    void draws_are_spread_as_by_rejection() {
        JfetSpread spread = jfet("BF245B").spread().orElseThrow();
        Random random = new Random(7);
        int wanted = 20_000;
        double drawn = 0, rejected = 0, drawnGm = 0, rejectedGm = 0;
        for (int i = 0; i < wanted; ) {
            double idss = 6e-3 * Math.pow(15.0 / 6, random.nextDouble());
            double gfs = 3e-3 * Math.pow(6.5 / 3, random.nextDouble());
            if (!spread.admits(idss, gfs)) continue;
            rejected += Math.log(idss);
            rejectedGm += Math.log(gfs);
            JfetModel model = spread.draw(random);
            drawn += Math.log(model.currentAtZeroGate(15));
            drawnGm += Math.log(model.forwardTransconductance(15));
            i++;
        }
        double fourStandardErrors = 4 * 0.3 / Math.sqrt(wanted);
        assertThat(drawn / wanted).isCloseTo(rejected / wanted, within(fourStandardErrors));
        assertThat(drawnGm / wanted).isCloseTo(rejectedGm / wanted, within(fourStandardErrors));
    }

    @Test
    void a_point_of_the_unit_square_always_makes_the_same_device() {
        JfetSpread spread = jfet("BF256A").spread().orElseThrow();
        assertThat(spread.at(0.3, 0.8)).isEqualTo(spread.at(0.3, 0.8));
        assertThat(spread.at(0, 0).saturationCurrent())
                .isLessThan(spread.at(1, 1).saturationCurrent());
    }

    @Test
    void two_readings_make_a_device() {
        JfetModel model =
                JfetData.measured("mine", 5e-3, 2.5, 9, "bench").typical().orElseThrow();
        assertThat(model.currentAtZeroGate(9)).isCloseTo(5e-3, within(1e-12));
        assertThat(model.pinchOff()).isEqualTo(-2.5);
        assertThat(JfetData.measured("mine", 5e-3, 2.5, 9, "bench").spread()).isInstanceOf(NotDerivable.class);
    }
}
