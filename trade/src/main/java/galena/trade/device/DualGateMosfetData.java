package galena.trade.device;

import static galena.trade.device.DeviceQuantity.FORWARD_TRANSCONDUCTANCE;
import static galena.trade.device.DeviceQuantity.GATE1_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.GATE1_CUTOFF_VOLTAGE;
import static galena.trade.device.DeviceQuantity.GATE2_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.GATE2_CUTOFF_VOLTAGE;
import static galena.trade.device.DeviceQuantity.OUTPUT_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.REVERSE_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.SATURATION_CURRENT;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/** A dual-gate N-channel MOSFET of the depletion kind. */
public record DualGateMosfetData(Sheet sheet) implements Device {
    static final double DEFAULT_MODULATION = 0.01;

    /** Of the output capacitance, half is the drain's diffusion and half its lead and case (common practice). */
    private static final double DIFFUSION_SHARE = 0.5;

    public DualGateMosfetData {
        if (sheet.family() != Family.DUAL_GATE_N_MOSFET) {
            throw new IllegalArgumentException(sheet.type() + " is no dual-gate MOSFET");
        }
    }

    /** IDSS (A), gate 1 at the source, gate 2 well open. */
    public Range saturationCurrent() {
        return range(SATURATION_CURRENT);
    }

    /**
     * Parameters of the typical device. With gate 2 open the lower channel saturates, so gm = 2·√(K·ID) gives K = gfs²/(4
     * ID) and IDSS = K·VT² the cutoff; where no transconductance is printed K = IDSS/VT².
     */
    public ModelAnswer<DualGateMosfetModel> typical() {
        Working working = new Working();
        OptionalDouble idss = saturationCurrent().typicalByRatio();
        if (idss.isEmpty()) {
            return new NotDerivable<>(type(), "IDSS is not printed with both limits", Set.of(SATURATION_CURRENT));
        }
        OptionalDouble coefficient = coefficient(idss.getAsDouble(), working);
        if (coefficient.isEmpty()) {
            return new NotDerivable<>(
                    type(),
                    "neither transconductance nor a typical cutoff of gate 1 is printed, so the channel is unknown",
                    Set.of(FORWARD_TRANSCONDUCTANCE, GATE1_CUTOFF_VOLTAGE));
        }
        double k = coefficient.getAsDouble();
        double lower = working.from(
                saturationCurrent().rows(),
                "gate1_cutoff",
                -Math.sqrt(idss.getAsDouble() / k),
                "V",
                "VT = −√(IDSS/K)",
                "IDSS: " + saturationCurrent().typicalInWords());
        double upper = upper(lower, working);
        double upperCoefficient =
                working.byDefault("gate2_coefficient", k, "A/V²", "both channels are equally wide; not printed");
        double modulation = working.byDefault(
                "channel_length_modulation", DEFAULT_MODULATION, "1/V", "the upper channel screens the lower one");
        double feedback = capacitance(REVERSE_CAPACITANCE, "feedback_capacitance", 0.025e-12, working);
        double output = capacitance(OUTPUT_CAPACITANCE, "output_capacitance", 1.1e-12, working);
        double gate1 = capacitance(GATE1_CAPACITANCE, "gate1_capacitance", 2.5e-12, working);
        return new Derived<>(
                new DualGateMosfetModel(
                        type(),
                        k,
                        lower,
                        upperCoefficient,
                        upper,
                        modulation,
                        Math.max(0, gate1 - feedback),
                        feedback,
                        capacitance(GATE2_CAPACITANCE, "gate2_capacitance", 1.2e-12, working),
                        output,
                        working.byDefault(
                                "island_capacitance",
                                DIFFUSION_SHARE * output,
                                "F",
                                "the island between the gates is a diffusion as wide as the drain's; not printed")),
                working.steps());
    }

    private OptionalDouble coefficient(double idss, Working working) {
        Range gfs = range(FORWARD_TRANSCONDUCTANCE);
        if (gfs.isKnown()) {
            OptionalDouble at = gfs.rows().get(0).condition("ID");
            double gm = gfs.typicalOrEstimate().orElseThrow();
            return OptionalDouble.of(working.from(
                    gfs.rows(),
                    "gate1_coefficient",
                    gm * gm / (4 * at.orElse(idss)),
                    "A/V²",
                    "K = gfs²/(4·ID)",
                    gfs.typicalInWords()
                            + (at.isPresent() ? "" : "; drain current of the test not printed, IDSS taken")));
        }
        Range cutoff = range(GATE1_CUTOFF_VOLTAGE);
        OptionalDouble typical = cutoff.typicalByRatio();
        if (typical.isEmpty()) return OptionalDouble.empty();
        List<Printed> rows = new ArrayList<>(cutoff.rows());
        rows.addAll(saturationCurrent().rows());
        double vt = typical.getAsDouble();
        return OptionalDouble.of(working.from(
                rows, "gate1_coefficient", idss / (vt * vt), "A/V²", "K = IDSS/VT²", cutoff.typicalInWords()));
    }

    private double upper(double lower, Working working) {
        Range cutoff = range(GATE2_CUTOFF_VOLTAGE);
        OptionalDouble typical = cutoff.typicalByRatio();
        if (typical.isPresent()) {
            return working.from(
                    cutoff.rows(), "gate2_cutoff", typical.getAsDouble(), "V", "VT = VG2S(p)", cutoff.typicalInWords());
        }
        return working.byDefault(
                "gate2_cutoff", lower, "V", "no typical cutoff of gate 2 printed; same oxide and channel as gate 1");
    }

    private double capacitance(DeviceQuantity quantity, String parameter, double otherwise, Working working) {
        Range c = range(quantity);
        if (!c.isKnown()) return working.byDefault(parameter, otherwise, "F", "none printed; as in its class");
        return working.from(
                c.rows(), parameter, c.typicalOrEstimate().orElseThrow(), "F", "as printed", c.typicalInWords());
    }

    /**
     * Weak, typical and strong device: the mask fixes K, so IDSS at its printed limits moves the cutoffs, VT =
     * −√(IDSS/K), both by the same shift, for both channels share one oxide and one implant.
     */
    public ModelAnswer<List<DualGateMosfetModel>> corners() {
        ModelAnswer<DualGateMosfetModel> typical = typical();
        if (typical instanceof NotDerivable<DualGateMosfetModel> missing) {
            return new NotDerivable<>(missing.type(), missing.reason(), missing.wanted());
        }
        Derived<DualGateMosfetModel> derived = (Derived<DualGateMosfetModel>) typical;
        Range idss = saturationCurrent();
        if (idss.min().isEmpty() || idss.max().isEmpty()) {
            return new NotDerivable<>(type(), "IDSS is not printed with both limits", Set.of(SATURATION_CURRENT));
        }
        DualGateMosfetModel model = derived.model();
        return new Derived<>(
                List.of(
                        model.withSaturationCurrent(idss.min().getAsDouble()),
                        model,
                        model.withSaturationCurrent(idss.max().getAsDouble())),
                derived.steps());
    }
}
