package galena.trade.device;

import static galena.trade.device.DeviceQuantity.BASE_EMITTER_VOLTAGE;
import static galena.trade.device.DeviceQuantity.COLLECTOR_BASE_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.CURRENT_GAIN;
import static galena.trade.device.DeviceQuantity.EMITTER_BASE_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.FEEDBACK_CAPACITANCE;
import static galena.trade.device.DeviceQuantity.SATURATED_BASE_EMITTER_VOLTAGE;
import static galena.trade.device.DeviceQuantity.TRANSITION_FREQUENCY;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The typical bipolar transistor of a sheet. Model parameters printed by the maker come first; else each follows from a
 * characteristic; else a default stands, marked as common practice.
 */
final class BipolarDerivation {
    /** VBE (V) of a small silicon transistor at 1 mA. */
    static final double DEFAULT_BASE_EMITTER = 0.65;

    /** VBE(sat) rows above this collector current (A) hold too much ohmic drop to tell IS. */
    static final double OHMIC_FROM = 20e-3;

    static final double DEFAULT_EARLY = 70;
    static final double DEFAULT_REVERSE_BETA = 4;
    static final double DEFAULT_TRANSIT = 0.5e-9;
    static final double DEFAULT_REVERSE_TRANSIT = 100e-9;
    static final double POTENTIAL = 0.75;
    static final double GRADING = 0.33;
    static final double DEFAULT_COLLECTOR = 4e-12;

    /** Zero-bias Cje over Cjc where only the collector's is known. */
    static final double EMITTER_OVER_COLLECTOR = 1.25;

    static final double USUAL_COLLECTOR_BASE = 10;
    static final double USUAL_EMITTER_BASE = 0.5;

    /** Forward voltage (V) at which the emitter junction is charged while fT is measured. */
    static final double CONDUCTING = 0.7;

    private final BipolarData device;
    private final Working working = new Working();

    BipolarDerivation(BipolarData device) {
        this.device = device;
    }

    ModelAnswer<BipolarModel> typical(double current) {
        Range gain = device.currentGain(current);
        if (!gain.isKnown()) {
            return new NotDerivable<>(
                    device.type(),
                    "current gain is not printed; measure it at the current of use",
                    Set.of(CURRENT_GAIN));
        }
        double beta = working.from(
                gain.rows(),
                "forward_beta",
                gain.typ().orElseThrow(),
                "",
                "hFE of the row nearest to " + current + " A",
                "gain falls towards small and large currents; the model has one value");
        double saturation = saturationCurrent();
        double early = early();
        double reverseBeta = working.byDefault(
                "reverse_beta", DEFAULT_REVERSE_BETA, "", "small planar transistors lie between 1 and 10");
        Junction collector = collector();
        Junction emitter = emitter(collector);
        OptionalDouble transit = transit(emitter, collector);
        if (transit.isEmpty()) {
            return new NotDerivable<>(
                    device.type(),
                    "the junction capacitances alone make it slower than the printed transition frequency: one of the "
                            + "rows is wrong",
                    Set.of(TRANSITION_FREQUENCY, COLLECTOR_BASE_CAPACITANCE, EMITTER_BASE_CAPACITANCE));
        }
        double reverseTransit = maker(DeviceQuantity.MODEL_REVERSE_TRANSIT_TIME, "reverse_transit_time")
                .orElseGet(() -> working.byDefault(
                        "reverse_transit_time", DEFAULT_REVERSE_TRANSIT, "s", "matters in saturation only"));
        return new Derived<>(
                new BipolarModel(
                        device.type(),
                        device.family() == Family.NPN ? BipolarModel.Polarity.NPN : BipolarModel.Polarity.PNP,
                        saturation,
                        beta,
                        reverseBeta,
                        early,
                        transit.getAsDouble(),
                        reverseTransit,
                        emitter.capacitance,
                        emitter.potential,
                        emitter.grading,
                        collector.capacitance,
                        collector.potential,
                        collector.grading),
                working.steps());
    }

    private record Junction(double capacitance, double potential, double grading) {
        double at(double forward) {
            return Depletion.capacitance(capacitance, potential, grading, forward);
        }
    }

    /** A parameter that the maker prints as such. */
    private Optional<Double> maker(DeviceQuantity quantity, String parameter) {
        Range range = device.range(quantity);
        if (range.typ().isEmpty()) return Optional.empty();
        return Optional.of(working.from(
                range.rows(),
                parameter,
                range.typ().getAsDouble(),
                quantity.unit(),
                "as printed by the maker",
                "typical device"));
    }

    private double saturationCurrent() {
        var printed = maker(DeviceQuantity.MODEL_SATURATION_CURRENT, "saturation_current");
        if (printed.isPresent()) return printed.get();
        for (DeviceQuantity quantity : List.of(BASE_EMITTER_VOLTAGE, SATURATED_BASE_EMITTER_VOLTAGE)) {
            Range vbe = device.range(quantity).magnitude();
            OptionalDouble typical = vbe.typicalByDifference();
            if (typical.isEmpty()) continue;
            OptionalDouble ic = vbe.rows().get(0).condition("IC");
            if (ic.isEmpty() || ic.getAsDouble() > OHMIC_FROM) continue;
            return working.from(
                    vbe.rows(),
                    "saturation_current",
                    ic.getAsDouble() * Math.exp(-typical.getAsDouble() / Thermal.VOLTAGE),
                    "A",
                    "IS = IC·exp(−VBE/VT), VT at 25 °C",
                    vbe.typicalInWords() + "; ohmic drop and Early effect left out");
        }
        return working.byDefault(
                "saturation_current",
                1e-3 * Math.exp(-DEFAULT_BASE_EMITTER / Thermal.VOLTAGE),
                "A",
                "no usable base-emitter voltage printed; " + DEFAULT_BASE_EMITTER + " V at 1 mA");
    }

    private double early() {
        var printed = maker(DeviceQuantity.MODEL_EARLY_VOLTAGE, "early_voltage");
        if (printed.isPresent()) return printed.get();
        Range hoe = device.range(DeviceQuantity.OUTPUT_CONDUCTANCE);
        OptionalDouble typical = hoe.typicalByRatio();
        if (typical.isPresent()) {
            Printed row = hoe.rows().get(0);
            OptionalDouble ic = row.condition("IC");
            OptionalDouble vce = row.condition("VCE");
            if (ic.isPresent() && vce.isPresent()) {
                double value = earlyVoltage(typical.getAsDouble(), ic.getAsDouble(), vce.getAsDouble());
                if (value > 0) {
                    return working.from(
                            hoe.rows(), "early_voltage", value, "V", "VA = IC/hoe − VCE", hoe.typicalInWords());
                }
            }
        }
        return working.byDefault("early_voltage", DEFAULT_EARLY, "V", "small silicon transistors lie from 50 to 100 V");
    }

    /** VA (V) = IC/hoe − VCE. */
    static double earlyVoltage(double hoe, double ic, double vce) {
        return ic / hoe - vce;
    }

    private Junction collector() {
        var printed = maker(DeviceQuantity.MODEL_COLLECTOR_CAPACITANCE, "collector_capacitance");
        double potential = maker(DeviceQuantity.MODEL_COLLECTOR_POTENTIAL, "collector_potential")
                .orElseGet(() -> working.byDefault("collector_potential", POTENTIAL, "V", "silicon junction"));
        double grading = maker(DeviceQuantity.MODEL_COLLECTOR_GRADING, "collector_grading")
                .orElseGet(() -> working.byDefault("collector_grading", GRADING, "", "diffused, graded junction"));
        if (printed.isPresent()) return new Junction(printed.get(), potential, grading);
        Range c = device.range(COLLECTOR_BASE_CAPACITANCE);
        String assumption = c.typicalInWords();
        if (!c.isKnown()) {
            c = device.range(FEEDBACK_CAPACITANCE);
            assumption = "feedback capacitance taken for the whole collector junction; " + c.typicalInWords();
        }
        if (!c.isKnown()) {
            double value = working.byDefault(
                    "collector_capacitance", DEFAULT_COLLECTOR, "F", "none printed; a small transistor");
            return new Junction(value, potential, grading);
        }
        Printed row = c.rows().get(0);
        double vce = row.condition("VCE").orElse(USUAL_COLLECTOR_BASE + CONDUCTING);
        double reverse = row.condition("VCB").orElse(Math.max(0, vce - CONDUCTING));
        double zero = working.from(
                c.rows(),
                "collector_capacitance",
                Depletion.zeroBias(c.typicalOrEstimate().orElseThrow(), potential, grading, reverse),
                "F",
                "C0 = C·(1 + V/φ)^m, V = " + reverse + " V",
                assumption);
        return new Junction(zero, potential, grading);
    }

    private Junction emitter(Junction collector) {
        var printed = maker(DeviceQuantity.MODEL_EMITTER_CAPACITANCE, "emitter_capacitance");
        double potential = maker(DeviceQuantity.MODEL_EMITTER_POTENTIAL, "emitter_potential")
                .orElseGet(() -> working.byDefault("emitter_potential", POTENTIAL, "V", "silicon junction"));
        double grading = maker(DeviceQuantity.MODEL_EMITTER_GRADING, "emitter_grading")
                .orElseGet(() -> working.byDefault("emitter_grading", GRADING, "", "diffused, graded junction"));
        if (printed.isPresent()) return new Junction(printed.get(), potential, grading);
        Range c = device.range(EMITTER_BASE_CAPACITANCE);
        if (!c.isKnown()) {
            double value = working.byDefault(
                    "emitter_capacitance",
                    EMITTER_OVER_COLLECTOR * collector.capacitance,
                    "F",
                    "none printed; " + EMITTER_OVER_COLLECTOR + " of the collector's");
            return new Junction(value, potential, grading);
        }
        double reverse = c.rows().get(0).condition("VEB").orElse(USUAL_EMITTER_BASE);
        double zero = working.from(
                c.rows(),
                "emitter_capacitance",
                Depletion.zeroBias(c.typicalOrEstimate().orElseThrow(), potential, grading, reverse),
                "F",
                "C0 = C·(1 + V/φ)^m, V = " + reverse + " V",
                c.typicalInWords());
        return new Junction(zero, potential, grading);
    }

    /** TF from 1/(2π·fT) = TF + (Cje + Cjc)·VT/IC; none if the capacitances explain more than the whole. */
    private OptionalDouble transit(Junction emitter, Junction collector) {
        var printed = maker(DeviceQuantity.MODEL_FORWARD_TRANSIT_TIME, "forward_transit_time");
        if (printed.isPresent()) return OptionalDouble.of(printed.get());
        Range ft = device.range(TRANSITION_FREQUENCY);
        OptionalDouble frequency = ft.typicalByRatio();
        String assumption = ft.typicalInWords();
        if (frequency.isEmpty() && ft.min().isPresent()) {
            frequency = ft.min();
            assumption = "only a minimum is printed and used as it stands: the transit time is on the long side";
        }
        OptionalDouble ic =
                ft.rows().isEmpty() ? OptionalDouble.empty() : ft.rows().get(0).condition("IC");
        if (frequency.isEmpty() || ic.isEmpty()) {
            return OptionalDouble.of(working.byDefault(
                    "forward_transit_time",
                    DEFAULT_TRANSIT,
                    "s",
                    "no transition frequency printed at a current; a small transistor of 300 MHz"));
        }
        double vcb = Math.max(0, ft.rows().get(0).condition("VCE").orElse(USUAL_COLLECTOR_BASE) - CONDUCTING);
        double depletion = (emitter.at(CONDUCTING) + collector.at(-vcb)) * Thermal.VOLTAGE / ic.getAsDouble();
        double transit = 1 / (2 * Math.PI * frequency.getAsDouble()) - depletion;
        if (!(transit > 0)) return OptionalDouble.empty();
        return OptionalDouble.of(working.from(
                ft.rows(), "forward_transit_time", transit, "s", "TF = 1/(2π·fT) − (Cje + Cjc)·VT/IC", assumption));
    }
}
