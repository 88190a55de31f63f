package galena.trade.device;

import static galena.trade.device.DeviceQuantity.COMMON_GATE_OUTPUT_CONDUCTANCE;
import static galena.trade.device.DeviceQuantity.CUTOFF_VOLTAGE;
import static galena.trade.device.DeviceQuantity.DRAIN_GATE_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.FORWARD_TRANSCONDUCTANCE;
import static galena.trade.device.DeviceQuantity.GATE_LEAKAGE_CURRENT;
import static galena.trade.device.DeviceQuantity.INPUT_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.ON_RESISTANCE;
import static galena.trade.device.DeviceQuantity.REVERSE_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.SATURATION_CURRENT;
import static galena.trade.device.DeviceQuantity.SOURCE_GATE_CAPACITANCE;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The typical JFET of a sheet. Square law: gm = 2·√(IDSS·ID)/|VP|, hence |VP| = 2·√(IDSS·ID)/gfs, which is 2·IDSS/gfs
 * for a transconductance printed at VGS = 0. Sheets print gfs at VGS = 0 or at a stated ID: the row's own condition
 * decides, for the two differ by √(ID/IDSS).
 */
final class JfetDerivation {
    /** λ of small JFETs where no output conductance is printed (1/V). */
    static final double DEFAULT_MODULATION = 0.01;

    /** Test voltage of small JFETs where the row states none (V). */
    static final double USUAL_DRAIN_VOLTAGE = 15;

    /** φ (V) and m of a diffused gate: between the abrupt 1/2 and the graded 1/3. */
    static final double POTENTIAL = 0.8;

    static final double GRADING = 0.4;

    /** IS (A) that gives a silicon gate 0.65 V forward at 1 mA. */
    static final double GATE_SATURATION = 1e-14;

    /** Zero-bias C (F) of a small high-frequency JFET where the sheet prints none. */
    static final double DEFAULT_GATE_DRAIN = 2.6e-12;

    /** Cgs over Cgd at zero bias where only the reverse capacitance is printed. */
    static final double SOURCE_OVER_DRAIN = 1.2;

    private final JfetData device;
    private final Working working = new Working();

    JfetDerivation(JfetData device) {
        this.device = device;
    }

    ModelAnswer<JfetModel> typical() {
        Range idss = device.saturationCurrent();
        OptionalDouble current = idss.typicalByRatio();
        if (current.isEmpty()) {
            return new NotDerivable<>(
                    device.type(),
                    idss.isKnown()
                            ? "IDSS is printed with one limit only, so no typical device is known; measure one: gate to "
                                    + "source, supply of 9 to 15 V, read the drain current"
                            : "IDSS is not printed",
                    Set.of(SATURATION_CURRENT));
        }
        OptionalDouble pinchOff = pinchOff(current.getAsDouble(), idss);
        if (pinchOff.isEmpty()) {
            return new NotDerivable<>(
                    device.type(),
                    "neither transconductance nor a typical cutoff voltage is printed, so pinch-off is unknown; "
                            + "measure the cutoff voltage",
                    Set.of(FORWARD_TRANSCONDUCTANCE, CUTOFF_VOLTAGE, ON_RESISTANCE));
        }
        OptionalDouble modulation = modulation(current.getAsDouble());
        if (modulation.isEmpty()) {
            return new NotDerivable<>(
                    device.type(),
                    "the printed output conductance times the drain voltage exceeds the drain current: the row is wrong",
                    Set.of(DeviceQuantity.OUTPUT_CONDUCTANCE));
        }
        return new Derived<>(
                model(current.getAsDouble(), pinchOff.getAsDouble(), modulation.getAsDouble(), idss), working.steps());
    }

    private JfetModel model(double idss, double pinchOff, double modulation, Range printed) {
        double drain = testVoltage(printed);
        double saturation = working.from(
                printed.rows(),
                "saturation_current",
                idss / (1 + modulation * drain),
                "A",
                "I0 = IDSS/(1 + λ·VDS), VDS = " + drain + " V",
                "IDSS: " + printed.typicalInWords());
        double potential = working.byDefault("built_in_potential", POTENTIAL, "V", "silicon gate junction");
        double grading = working.byDefault("grading", GRADING, "", "between abrupt 1/2 and graded 1/3");
        double gateDrain = gateDrain(potential, grading);
        double gateSource = gateSource(potential, grading, gateDrain);
        double sign = device.family() == Family.N_JFET ? -1 : 1;
        return new JfetModel(
                device.type(),
                device.family() == Family.N_JFET ? JfetModel.Channel.N : JfetModel.Channel.P,
                saturation,
                sign * pinchOff,
                modulation,
                gateSource,
                gateDrain,
                potential,
                grading,
                gateSaturation(),
                1);
    }

    static double testVoltage(Range range) {
        return range.rows().isEmpty()
                ? USUAL_DRAIN_VOLTAGE
                : Math.abs(range.rows().get(0).condition("VDS").orElse(USUAL_DRAIN_VOLTAGE));
    }

    /** |VP|: from transconductance, else on-resistance, else cutoff. */
    private OptionalDouble pinchOff(double idss, Range printedCurrent) {
        Range gfs = device.forwardTransconductance();
        if (gfs.isKnown()) {
            double gm = gfs.typicalOrEstimate().orElseThrow();
            OptionalDouble at = gfs.rows().get(0).condition("ID");
            String formula = at.isPresent() ? "|VP| = 2·√(IDSS·ID)/gfs at the printed ID" : "|VP| = 2·IDSS/gfs";
            return OptionalDouble.of(working.from(
                    both(printedCurrent.rows(), gfs.rows()),
                    "pinch_off",
                    2 * Math.sqrt(idss * at.orElse(idss)) / gm,
                    "V",
                    formula,
                    "gfs: " + gfs.typicalInWords()));
        }
        Range on = device.range(ON_RESISTANCE);
        if (on.typ().isPresent() || (on.min().isPresent() && on.max().isPresent())) {
            double value = 2 * idss * on.typicalByRatio().orElseThrow();
            return OptionalDouble.of(working.from(
                    both(printedCurrent.rows(), on.rows()),
                    "pinch_off",
                    value,
                    "V",
                    "|VP| = 2·IDSS·rDS(on)",
                    "on-resistance: " + on.typicalInWords()));
        }
        Range cutoff = device.cutoffVoltage();
        OptionalDouble typical = cutoff.typicalByRatio();
        if (typical.isPresent()) {
            working.from(
                    cutoff.rows(),
                    "pinch_off",
                    typical.getAsDouble(),
                    "V",
                    "|VP| = |VGS(off)|",
                    "no transconductance printed; cutoff: " + cutoff.typicalInWords());
        }
        return typical;
    }

    /** λ = gos/(ID − gos·VDS), since gos = λ·ID/(1 + λ·VDS); none if the row contradicts itself. */
    private OptionalDouble modulation(double idss) {
        Range gos = device.outputConductance();
        Range commonGate = device.range(COMMON_GATE_OUTPUT_CONDUCTANCE);
        if (gos.typicalByRatio().isEmpty() && commonGate.typicalByRatio().isPresent()) gos = commonGate;
        if (!gos.isKnown()) {
            return OptionalDouble.of(working.byDefault(
                    "channel_length_modulation",
                    DEFAULT_MODULATION,
                    "1/V",
                    "no output conductance printed; small JFETs lie near 0.005 to 0.02 per volt"));
        }
        double g = gos.typicalOrEstimate().orElseThrow();
        double current = gos.rows().get(0).condition("ID").orElse(idss);
        double rest = current - g * testVoltage(gos);
        if (rest <= 0) return OptionalDouble.empty();
        return OptionalDouble.of(working.from(
                gos.rows(),
                "channel_length_modulation",
                g / rest,
                "1/V",
                "λ = gos/(ID − gos·VDS)",
                "output conductance: " + gos.typicalInWords()));
    }

    private double gateDrain(double potential, double grading) {
        Range c = device.range(DRAIN_GATE_CAPACITANCE);
        if (!c.isKnown()) c = reverseCapacitance();
        if (!c.isKnown()) {
            return working.byDefault(
                    "gate_drain_capacitance", DEFAULT_GATE_DRAIN, "F", "none printed; a small high-frequency JFET");
        }
        double reverse = drainSource(c) + gate(c);
        return working.from(
                c.rows(),
                "gate_drain_capacitance",
                Depletion.zeroBias(c.typicalOrEstimate().orElseThrow(), potential, grading, reverse),
                "F",
                "C0 = C·(1 + V/φ)^m, V = VDS + |VGS| = " + reverse + " V",
                c.typicalInWords());
    }

    private double gateSource(double potential, double grading, double gateDrain) {
        Range direct = device.range(SOURCE_GATE_CAPACITANCE);
        if (direct.isKnown()) {
            return working.from(
                    direct.rows(),
                    "gate_source_capacitance",
                    Depletion.zeroBias(direct.typicalOrEstimate().orElseThrow(), potential, grading, gate(direct)),
                    "F",
                    "C0 = C·(1 + |VGS|/φ)^m",
                    direct.typicalInWords());
        }
        Range input = device.range(INPUT_CAPACITANCE);
        Range reverse = reverseCapacitance();
        if (input.isKnown() && reverse.isKnown()) {
            double c = input.typicalOrEstimate().orElseThrow()
                    - reverse.typicalOrEstimate().orElseThrow();
            if (c > 0) {
                return working.from(
                        both(input.rows(), reverse.rows()),
                        "gate_source_capacitance",
                        Depletion.zeroBias(c, potential, grading, gate(input)),
                        "F",
                        "C0 = (Ciss − Crss)·(1 + |VGS|/φ)^m",
                        "input: " + input.typicalInWords() + "; reverse: " + reverse.typicalInWords());
            }
        }
        return working.byDefault(
                "gate_source_capacitance",
                SOURCE_OVER_DRAIN * gateDrain,
                "F",
                "no usable input capacitance printed; " + SOURCE_OVER_DRAIN + " of the gate-drain capacitance");
    }

    /** Crss, by preference from the sheet that prints Ciss: makers' values differ and the difference is wanted. */
    private Range reverseCapacitance() {
        List<Printed> input = device.all(INPUT_CAPACITANCE);
        if (!input.isEmpty()) {
            String source = input.get(0).provenance().source();
            for (Printed row : device.all(REVERSE_CAPACITANCE)) {
                if (row.provenance().source().equals(source)) return row.range();
            }
        }
        return device.range(REVERSE_CAPACITANCE);
    }

    /**
     * IS of a gate junction. A printed leakage (IGSS) is surface and generation current, thousands of times the IS that
     * the forward voltage asks for, so it bounds IS from above and no more.
     */
    private double gateSaturation() {
        Range leakage = device.range(GATE_LEAKAGE_CURRENT).magnitude();
        if (leakage.max().isPresent() && leakage.max().getAsDouble() < GATE_SATURATION) {
            return working.from(
                    leakage.rows(),
                    "gate_saturation_current",
                    leakage.max().getAsDouble(),
                    "A",
                    "IS = IGSS",
                    "the printed leakage is below the default of " + GATE_SATURATION + " A");
        }
        return working.byDefault(
                "gate_saturation_current",
                GATE_SATURATION,
                "A",
                "0.65 V forward at 1 mA; a printed IGSS is mostly leakage and only an upper bound");
    }

    private static double drainSource(Range c) {
        return Math.abs(c.rows().get(0).condition("VDS").orElse(USUAL_DRAIN_VOLTAGE));
    }

    private static double gate(Range c) {
        return Math.abs(c.rows().get(0).condition("VGS").orElse(0));
    }

    private static List<Printed> both(List<Printed> first, List<Printed> second) {
        List<Printed> all = new ArrayList<>(first);
        all.addAll(second);
        return all;
    }
}
