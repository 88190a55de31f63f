package galena.build.folder;

import static galena.build.form.Field.needed;
import static galena.build.form.Field.optional;

import galena.build.form.Field;
import galena.build.form.Form;
import galena.build.form.Group;
import galena.build.form.Quantities;
import galena.build.form.Type;
import galena.build.quantity.Unit;

/** The parameters of a device, in words, for devices that no library knows. Limits are those of the engine's laws. */
final class DeviceForms {
    private static final Type SATURATION = Quantities.one(Unit.AMPERE, 1e-30, 1);
    private static final Type CAPACITANCE = Quantities.one(Unit.FARAD, 0, 1e-6);
    private static final Type BUILT_IN = Quantities.one(Unit.VOLT, 0.1, 5);
    private static final Type GRADING = Quantities.one(Unit.NUMBER, 0, 2);
    private static final Type EMISSION = Quantities.one(Unit.NUMBER, 0.5, 4);
    private static final Type TIME = Quantities.one(Unit.SECOND, 0, 1e-3);
    private static final Type SLOPE = Quantities.one(Unit.PER_VOLT, 0, 0.5);
    private static final Type LEAKAGE = Quantities.one(Unit.SIEMENS, 0, 1e-3);

    static final Form DIODE = Form.of(
            "a diode's parameters",
            needed("saturation_current", SATURATION, "The saturation current is that of Shockley's law at 25 °C."),
            optional("emission", EMISSION, "The emission coefficient lies between 1 and 2 for silicon; 1 if left out."),
            optional(
                    "capacitance",
                    CAPACITANCE,
                    "The capacitance is that of the junction at zero bias; none if left out."),
            optional("built_in", BUILT_IN, "The built-in potential of the junction is 0.7 V if left out."),
            optional("grading", GRADING, "The grading exponent of the junction is 0.5 if left out."),
            optional("transit_time", TIME, "The transit time sets the stored charge; none if left out."),
            optional(
                    "series_resistance",
                    Quantities.one(Unit.OHM, 0, 1e4),
                    "The series resistance is zero if left out."),
            optional("leakage", LEAKAGE, "The leakage conductance across the junction is 1 pS if left out."));

    static final Form TUNING_DIODE = Form.of(
            "a tuning diode's parameters",
            needed("capacitance", Quantities.one(Unit.FARAD, 1e-15, 1e-6), "The capacitance is that at zero bias."),
            needed("built_in", BUILT_IN, "The built-in potential belongs to the capacitance law."),
            needed("grading", GRADING, "The grading exponent belongs to the capacitance law."),
            optional(
                    "series_resistance",
                    Quantities.one(Unit.OHM, 0, 1e4),
                    "The series resistance is zero if left out."),
            optional("saturation_current", SATURATION, "The saturation current is 10 fA if left out."),
            optional("leakage", LEAKAGE, "The leakage conductance across the junction is 1 pS if left out."));

    static final Form BIPOLAR = Form.of(
            "a bipolar transistor's parameters",
            needed("saturation_current", SATURATION, "The saturation current is that of the transport law at 25 °C."),
            needed("beta", Quantities.one(Unit.NUMBER, 1, 1e5), "The forward current gain is a number from 1 up."),
            optional(
                    "reverse_beta",
                    Quantities.one(Unit.NUMBER, 0.01, 1e4),
                    "The reverse current gain is 4 if left out."),
            optional(
                    "early_voltage", Quantities.one(Unit.VOLT, 1.1, 1e4), "The Early voltage is infinite if left out."),
            optional("transit_time", TIME, "The forward transit time is zero if left out."),
            optional("reverse_transit_time", TIME, "The reverse transit time is zero if left out."),
            optional(
                    "emitter_capacitance",
                    CAPACITANCE,
                    "The base-emitter capacitance at zero bias is none if left out."),
            optional(
                    "emitter_built_in",
                    BUILT_IN,
                    "The built-in potential of the emitter junction is 0.75 V if left out."),
            optional("emitter_grading", GRADING, "The grading exponent of the emitter junction is 0.33 if left out."),
            optional(
                    "collector_capacitance",
                    CAPACITANCE,
                    "The base-collector capacitance at zero bias is none if left out."),
            optional(
                    "collector_built_in",
                    BUILT_IN,
                    "The built-in potential of the collector junction is 0.75 V if left out."),
            optional(
                    "collector_grading",
                    GRADING,
                    "The grading exponent of the collector junction is 0.33 if left out."),
            optional("base_resistance", Quantities.one(Unit.OHM, 0, 1e5), "The base resistance is zero if left out."));

    static final Form JFET = Form.of(
            "a JFET's parameters",
            needed(
                    "saturation_current",
                    Quantities.one(Unit.AMPERE, 1e-6, 10),
                    "The saturation current (IDSS) flows at zero gate voltage."),
            needed(
                    "pinch_off",
                    Quantities.one(Unit.VOLT, -50, -0.05),
                    "The pinch-off voltage is negative, for either channel as an n-channel sheet prints it."),
            optional("channel_length_modulation", SLOPE, "The channel-length modulation is 0.01 /V if left out."),
            optional(
                    "gate_source_capacitance",
                    CAPACITANCE,
                    "The gate-source capacitance at zero bias is none if left out."),
            optional(
                    "gate_drain_capacitance",
                    CAPACITANCE,
                    "The gate-drain capacitance at zero bias is none if left out."),
            optional("built_in", BUILT_IN, "The built-in potential of the gate junctions is 0.8 V if left out."),
            optional("grading", GRADING, "The grading exponent of the gate junctions is 0.4 if left out."),
            optional(
                    "gate_saturation_current",
                    SATURATION,
                    "The saturation current of each gate junction is 10 fA if left out."),
            optional("emission", EMISSION, "The emission coefficient of the gate junctions is 1 if left out."),
            optional("leakage", LEAKAGE, "The leakage conductance across each gate junction is 1 pS if left out."));

    private static final Field[] CHANNEL = {
        needed("threshold", Quantities.one(Unit.VOLT, -20, 20), "The threshold is negative for depletion types."),
        needed(
                "square_law",
                Quantities.one(Unit.AMPERE_PER_SQUARE_VOLT, 1e-9, 1e3),
                "The square-law coefficient is the saturation current at 1 V above threshold, per square volt."),
        optional("channel_length_modulation", SLOPE, "The channel-length modulation is zero if left out."),
        optional("gate_source_capacitance", CAPACITANCE, "The gate-source capacitance is none if left out."),
        optional("gate_drain_capacitance", CAPACITANCE, "The gate-drain capacitance is none if left out."),
        optional("drain_source_capacitance", CAPACITANCE, "The drain-source capacitance is none if left out."),
        optional(
                "leakage",
                Quantities.one(Unit.SIEMENS, 1e-15, 1e-3),
                "The leakage of the channel is 1 nS if left out."),
    };

    static final Form MOSFET = Form.of("a MOSFET's parameters", CHANNEL)
            .with(optional(
                    "body_diode", new Group(DIODE), "The body diode runs from source to drain; none if left out."));

    static final Form DUAL_GATE_MOSFET = Form.of(
            "a dual-gate MOSFET's parameters",
            needed("lower", new Group(Form.of("a channel", CHANNEL)), "The lower channel is the one under gate 1."),
            needed("upper", new Group(Form.of("a channel", CHANNEL)), "The upper channel is the one under gate 2."));

    static final Form OPAMP = Form.of(
            "an op-amp's parameters",
            needed(
                    "gain_bandwidth",
                    Quantities.one(Unit.HERTZ, 1e3, 1e9),
                    "The gain-bandwidth is the frequency at which the open-loop gain has fallen to 1."),
            needed(
                    "slew_rate",
                    Quantities.one(Unit.VOLT_PER_SECOND, 1e3, 1e10),
                    "The slew rate is how fast the output moves at most."),
            needed(
                    "swing_low",
                    Quantities.one(Unit.VOLT, 0, 20),
                    "The low swing is how far above the negative rail the output stops."),
            needed(
                    "swing_high",
                    Quantities.one(Unit.VOLT, 0, 20),
                    "The high swing is how far below the positive rail the output stops."),
            optional("gain", Quantities.one(Unit.NUMBER, 10, 1e8), "The open-loop gain is 100000 if left out."),
            optional(
                    "output_resistance",
                    Quantities.one(Unit.OHM, 0.01, 1e5),
                    "The open-loop output resistance is 100 Ω if left out."),
            optional(
                    "output_current",
                    Quantities.one(Unit.AMPERE, 1e-6, 10),
                    "The greatest output current is 20 mA if left out."),
            optional(
                    "supply_current",
                    Quantities.one(Unit.AMPERE, 0, 1),
                    "The supply current at rest is 1 mA if left out."),
            optional(
                    "input_bias",
                    Quantities.one(Unit.AMPERE, -1e-3, 1e-3),
                    "The input bias flows into each input; none if left out."),
            optional(
                    "input_resistance",
                    Quantities.one(Unit.OHM, 1e3, 1e15),
                    "The resistance between the inputs is 10 MΩ if left out."));

    private DeviceForms() {}
}
