package galena.build.wiring;

import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.form.Filled;
import galena.engine.part.Bipolar;
import galena.engine.part.Jfet;
import galena.engine.part.Junction;
import galena.engine.part.Mosfet;
import galena.engine.part.OpAmp;
import galena.engine.part.Polarity;
import galena.trade.device.BipolarData;
import galena.trade.device.BipolarModel;
import galena.trade.device.DeviceLibrary;
import galena.trade.device.DiodeData;
import galena.trade.device.DiodeModel;
import galena.trade.device.DualGateMosfetData;
import galena.trade.device.DualGateMosfetModel;
import galena.trade.device.JfetData;
import galena.trade.device.JfetModel;
import galena.trade.device.TuningDiodeData;
import galena.trade.device.TuningDiodeModel;
import java.util.Optional;

/** The engine's parameters of a device: the typical one of its type number, or those written in the build. */
final class DeviceModels {
    private static final double SATURATION = 1e-14;
    private static final double JFET_BUILT_IN = 0.8;
    private static final double JFET_GRADING = 0.4;
    private static final double JFET_MODULATION = 0.01;
    private static final double BIPOLAR_BUILT_IN = 0.75;
    private static final double BIPOLAR_GRADING = 0.33;
    private static final double REVERSE_BETA = 4;
    private static final double DIODE_BUILT_IN = 0.7;
    private static final double DIODE_GRADING = 0.5;

    /** Channel leakage of a MOSFET whose sheet says nothing, siemens: 10 nA at 10 V. */
    private static final double CHANNEL_LEAKAGE = 1e-9;

    /** Of an op-amp whose sheet says nothing: common practice for audio types. */
    private static final double OPAMP_GAIN = 1e5;

    private static final double OPAMP_OUTPUT = 100;
    private static final double OPAMP_CURRENT = 20e-3;
    private static final double OPAMP_SUPPLY = 1e-3;
    private static final double OPAMP_INPUT = 10e6;

    private final DeviceLibrary library;

    DeviceModels(DeviceLibrary library) {
        this.library = library;
    }

    /** A junction and the resistance in series with it, ohms. */
    record DiodeParts(Junction junction, double seriesResistance) {}

    Jfet.Model jfet(PartEntry part) {
        if (part.parameters().isPresent()) return jfet(part.parameters().get());
        return jfet(library.require(type(part), JfetData.class).typical().orElseThrow());
    }

    static Jfet.Model jfet(JfetModel m) {
        return new Jfet.Model(
                m.saturationCurrent(),
                -Math.abs(m.pinchOff()),
                m.channelLengthModulation(),
                gate(m, m.gateSourceCapacitance()),
                gate(m, m.gateDrainCapacitance()));
    }

    private static Junction gate(JfetModel m, double capacitance) {
        return Junction.silicon(
                m.gateSaturationCurrent(), m.gateEmission(), capacitance, m.builtInPotential(), m.grading(), 0);
    }

    private static Jfet.Model jfet(Filled own) {
        return new Jfet.Model(
                own.si("saturation_current"),
                own.si("pinch_off"),
                own.si("channel_length_modulation", JFET_MODULATION),
                gate(own, "gate_source_capacitance"),
                gate(own, "gate_drain_capacitance"));
    }

    private static Junction gate(Filled own, String capacitance) {
        return Junction.silicon(
                        own.si("gate_saturation_current", SATURATION),
                        own.si("emission", 1),
                        own.si(capacitance, 0),
                        own.si("built_in", JFET_BUILT_IN),
                        own.si("grading", JFET_GRADING),
                        0)
                .withLeakage(own.si("leakage", Junction.USUAL_LEAKAGE));
    }

    /** n unless the library or the build says p. */
    Polarity channel(PartEntry part) {
        if (part.type().isPresent() && part.kind() == PartKind.JFET) {
            JfetModel m = library.require(type(part), JfetData.class).typical().orElseThrow();
            return m.channel() == JfetModel.Channel.P ? Polarity.P : Polarity.N;
        }
        return part.values().text("channel").orElse("n").equals("p") ? Polarity.P : Polarity.N;
    }

    Bipolar.Model bipolar(PartEntry part) {
        if (part.parameters().isPresent()) return bipolar(part.parameters().get());
        return bipolar(library.require(type(part), BipolarData.class).typical().orElseThrow());
    }

    static Bipolar.Model bipolar(BipolarModel m) {
        return new Bipolar.Model(
                m.saturationCurrent(),
                m.forwardBeta(),
                m.reverseBeta(),
                m.earlyVoltage(),
                m.forwardTransitTime(),
                m.reverseTransitTime(),
                m.emitterCapacitance(),
                m.emitterPotential(),
                m.emitterGrading(),
                m.collectorCapacitance(),
                m.collectorPotential(),
                m.collectorGrading(),
                0);
    }

    private static Bipolar.Model bipolar(Filled own) {
        return new Bipolar.Model(
                own.si("saturation_current"),
                own.si("beta"),
                own.si("reverse_beta", REVERSE_BETA),
                own.si("early_voltage", Double.POSITIVE_INFINITY),
                own.si("transit_time", 0),
                own.si("reverse_transit_time", 0),
                own.si("emitter_capacitance", 0),
                own.si("emitter_built_in", BIPOLAR_BUILT_IN),
                own.si("emitter_grading", BIPOLAR_GRADING),
                own.si("collector_capacitance", 0),
                own.si("collector_built_in", BIPOLAR_BUILT_IN),
                own.si("collector_grading", BIPOLAR_GRADING),
                own.si("base_resistance", 0));
    }

    DiodeParts diode(PartEntry part) {
        if (part.parameters().isPresent()) return diode(part.parameters().get());
        DiodeModel m = library.require(type(part), DiodeData.class).typical().orElseThrow();
        Junction junction = Junction.silicon(
                m.saturationCurrent(),
                m.emission(),
                m.capacitance(),
                m.builtInPotential(),
                m.grading(),
                m.transitTime());
        return new DiodeParts(junction, m.seriesResistance());
    }

    private static DiodeParts diode(Filled own) {
        Junction junction = Junction.silicon(
                        own.si("saturation_current"),
                        own.si("emission", 1),
                        own.si("capacitance", 0),
                        own.si("built_in", DIODE_BUILT_IN),
                        own.si("grading", DIODE_GRADING),
                        own.si("transit_time", 0))
                .withLeakage(own.si("leakage", Junction.USUAL_LEAKAGE));
        return new DiodeParts(junction, own.si("series_resistance", 0));
    }

    DiodeParts tuningDiode(PartEntry part) {
        if (part.parameters().isPresent()) {
            Filled own = part.parameters().get();
            Junction junction = Junction.silicon(
                            own.si("saturation_current", SATURATION),
                            1,
                            own.si("capacitance"),
                            own.si("built_in"),
                            own.si("grading"),
                            0)
                    .withLeakage(own.si("leakage", Junction.USUAL_LEAKAGE));
            return new DiodeParts(junction, own.si("series_resistance", 0));
        }
        TuningDiodeModel m =
                library.require(type(part), TuningDiodeData.class).typical().orElseThrow();
        Junction junction = Junction.silicon(SATURATION, 1, m.capacitance(), m.potential(), m.grading(), 0);
        return new DiodeParts(junction, m.seriesResistance());
    }

    Mosfet.Model mosfet(PartEntry part) {
        Filled own = part.parameters().orElseThrow();
        Junction body = own.group("body_diode").map(d -> diode(d).junction()).orElse(null);
        Mosfet.Model channel = channelModel(own);
        return new Mosfet.Model(
                channel.threshold(),
                channel.beta(),
                channel.channelLengthModulation(),
                channel.gateSourceCapacitance(),
                channel.gateDrainCapacitance(),
                channel.drainSourceCapacitance(),
                channel.leakage(),
                body);
    }

    private static Mosfet.Model channelModel(Filled own) {
        return new Mosfet.Model(
                own.si("threshold"),
                own.si("square_law"),
                own.si("channel_length_modulation", 0),
                own.si("gate_source_capacitance", 0),
                own.si("gate_drain_capacitance", 0),
                own.si("drain_source_capacitance", 0),
                own.si("leakage", CHANNEL_LEAKAGE),
                null);
    }

    OpAmp.Model opAmp(PartEntry part) {
        Filled own = part.parameters().orElseThrow();
        return new OpAmp.Model(
                own.si("gain", OPAMP_GAIN),
                own.si("gain_bandwidth"),
                own.si("slew_rate"),
                own.si("swing_low"),
                own.si("swing_high"),
                own.si("output_resistance", OPAMP_OUTPUT),
                own.si("output_current", OPAMP_CURRENT),
                own.si("supply_current", OPAMP_SUPPLY),
                own.si("input_bias", 0),
                own.si("input_resistance", OPAMP_INPUT));
    }

    /** The channel under gate 1. */
    Mosfet.Model lower(PartEntry part) {
        if (part.parameters().isPresent())
            return channelModel(part.parameters().get().group("lower").orElseThrow());
        return lower(dualGate(part));
    }

    /**
     * Of capacitances only the island's: a sheet prints the others between the pins, {@link #between}. Without channel-length
     * modulation, for gate 2 holds its drain and IDSS is printed so.
     */
    static Mosfet.Model lower(DualGateMosfetModel m) {
        return new Mosfet.Model(
                m.lowerCutoff(), m.lowerCoefficient(), 0, 0, 0, m.islandCapacitance(), CHANNEL_LEAKAGE, null);
    }

    /** The channel under gate 2. */
    Mosfet.Model upper(PartEntry part) {
        if (part.parameters().isPresent())
            return channelModel(part.parameters().get().group("upper").orElseThrow());
        return upper(dualGate(part));
    }

    static Mosfet.Model upper(DualGateMosfetModel m) {
        return new Mosfet.Model(
                m.upperCutoff(), m.upperCoefficient(), m.channelLengthModulation(), 0, 0, 0, CHANNEL_LEAKAGE, null);
    }

    /** Capacitances between the pins of a dual-gate MOSFET named by its type. */
    Optional<DualGateMosfetModel> between(PartEntry part) {
        return part.type().map(type -> dualGate(part));
    }

    private DualGateMosfetModel dualGate(PartEntry part) {
        return library.require(type(part), DualGateMosfetData.class).typical().orElseThrow();
    }

    private static String type(PartEntry part) {
        return part.type().orElseThrow(() -> new IllegalStateException(part.name() + " names no type"));
    }
}
