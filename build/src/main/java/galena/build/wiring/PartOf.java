package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.Calibration.Correction;
import galena.build.folder.Intent;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.form.Filled;
import galena.build.quantity.AtFrequency;
import galena.build.quantity.Quantity;
import galena.build.quantity.Range;
import galena.engine.part.Bipolar;
import galena.engine.part.Capacitor;
import galena.engine.part.Coil;
import galena.engine.part.CurrentSource;
import galena.engine.part.Diode;
import galena.engine.part.DualGateMosfet;
import galena.engine.part.Jfet;
import galena.engine.part.Load;
import galena.engine.part.Mosfet;
import galena.engine.part.OpAmp;
import galena.engine.part.Part;
import galena.engine.part.Polarity;
import galena.engine.part.Preset;
import galena.engine.part.Resistor;
import galena.engine.part.Resonator;
import galena.engine.part.Trimmer;
import galena.engine.part.VoltageSource;
import galena.engine.part.Wave;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The engine's parts for one entry of a build: the entry itself first, then what goes with it. */
final class PartOf {
    private static final double TWO_PI = 2 * Math.PI;

    /** Test tone of an audio source that names none, Hz. */
    private static final double TEST_TONE = 1000;

    private final Build build;
    private final Overlay overlay;
    private final DeviceModels models;

    PartOf(Build build, Overlay overlay) {
        this.build = build;
        this.overlay = overlay;
        this.models = new DeviceModels(build.devices());
    }

    List<Part> parts(PartEntry entry) {
        String name = entry.name();
        Filled v = entry.values();
        return switch (entry.kind()) {
            case RESISTOR ->
                List.of(new Resistor(name, pin(entry, 0), pin(entry, 1), main(entry), entry.temperatureCoefficient()));
            case PRESET -> List.of(preset(entry));
            case CAPACITOR ->
                List.of(new Capacitor(name, pin(entry, 0), pin(entry, 1), main(entry), entry.temperatureCoefficient()));
            case TRIMMER -> List.of(trimmer(entry));
            case COIL, LOOPSTICK, LOOP -> List.of(coil(entry));
            case WIRE -> wire(entry);
            case CRYSTAL, RESONATOR -> List.of(resonator(entry));
            case DIODE -> diode(entry, models.diode(entry));
            case TUNING_DIODE -> diode(entry, models.tuningDiode(entry));
            case NPN -> List.of(bipolar(entry, Polarity.N));
            case PNP -> List.of(bipolar(entry, Polarity.P));
            case JFET ->
                List.of(new Jfet(
                        name, models.channel(entry), pin(entry, 0), pin(entry, 1), pin(entry, 2), jfetModel(entry)));
            case MOSFET ->
                List.of(new Mosfet(
                        name,
                        models.channel(entry),
                        pin(entry, 0),
                        pin(entry, 1),
                        pin(entry, 2),
                        models.mosfet(entry)));
            case DUAL_GATE_MOSFET -> dualGate(entry);
            case OPAMP ->
                List.of(new OpAmp(
                        name,
                        pin(entry, 0),
                        pin(entry, 1),
                        pin(entry, 2),
                        pin(entry, 3),
                        pin(entry, 4),
                        models.opAmp(entry)));
            case VOLTAGE -> voltage(entry, wave(entry), v.si("resistance", 0));
            case CURRENT -> List.of(new CurrentSource(name, pin(entry, 0), pin(entry, 1), wave(entry)));
            case AUDIO -> voltage(entry, tone(entry), v.si("resistance", 0));
            case STEREO -> stereo(entry, tone(entry));
            case LOAD -> List.of(new Load(name, pin(entry, 0), pin(entry, 1), main(entry), v.si("capacitance", 0)));
        };
    }

    /** The net of a pin by its place in the engine's part. */
    private static String pin(PartEntry entry, int index) {
        return entry.pin(entry.kind().pins().get(index));
    }

    private double main(PartEntry entry) {
        return factor(entry) * entry.value().orElseThrow().value();
    }

    private double factor(PartEntry entry) {
        return CircuitOf.correction(overlay, entry.name())
                .flatMap(Correction::factor)
                .map(Quantity::value)
                .orElse(1.0);
    }

    private double position(PartEntry entry) {
        Double laidOver = overlay.adjustments().get(entry.name());
        return laidOver != null ? laidOver : entry.position().orElse(PartEntry.MIDDLE);
    }

    private Preset preset(PartEntry entry) {
        double track = entry.value().orElseThrow().value();
        double end = entry.values().si("end_resistance", Preset.USUAL_END_SHARE * track);
        double factor = factor(entry);
        return new Preset(
                entry.name(),
                pin(entry, 0),
                pin(entry, 1),
                pin(entry, 2),
                factor * track,
                position(entry),
                factor * end);
    }

    private Trimmer trimmer(PartEntry entry) {
        Range range = entry.range().orElseThrow();
        return new Trimmer(
                entry.name(),
                pin(entry, 0),
                pin(entry, 1),
                factor(entry) * range.low().value(),
                factor(entry) * range.high().value(),
                position(entry),
                entry.temperatureCoefficient());
    }

    /** A Q holds at every position of a slug or slide: the loss follows the inductance. */
    private Coil coil(PartEntry entry) {
        Filled v = entry.values();
        double inductance =
                entry.isAdjustable() ? factor(entry) * Travel.inductance(entry, position(entry)) : main(entry);
        Optional<AtFrequency> q = v.atFrequency("q");
        double resistance = q.isPresent()
                ? TWO_PI
                        * q.get().frequency().value()
                        * inductance
                        / q.get().value().value()
                : v.si("resistance");
        return new Coil(
                entry.name(),
                pin(entry, 0),
                pin(entry, 1),
                inductance,
                resistance,
                v.si("self_capacitance", 0),
                entry.temperatureCoefficient());
    }

    /** Capacitance, what is lost in the ground and radiated, and a meter for the current that makes the field. */
    private List<Part> wire(PartEntry entry) {
        String name = entry.name();
        String inner = Names.inner(name), foot = Names.foot(name);
        return List.of(
                new Capacitor(
                        name,
                        pin(entry, 0),
                        inner,
                        factor(entry) * AerialWire.of(entry).capacitance()),
                new Resistor(Names.resistance(name), inner, foot, AerialWire.resistance(build, entry)),
                new VoltageSource(foot, foot, pin(entry, 1), new Wave.Direct(0)));
    }

    private Resonator resonator(PartEntry entry) {
        Filled v = entry.values();
        double omega = TWO_PI * main(entry);
        double inductance = v.quantity("motional_inductance")
                .map(Quantity::value)
                .orElseGet(() -> 1 / (omega * omega * v.si("motional_capacitance")));
        double capacitance = 1 / (omega * omega * inductance);
        double resistance =
                v.quantity("resistance").map(Quantity::value).orElseGet(() -> omega * inductance / v.si("q"));
        return new Resonator(
                entry.name(),
                pin(entry, 0),
                pin(entry, 1),
                inductance,
                capacitance,
                resistance,
                v.si("shunt_capacitance"));
    }

    private static List<Part> diode(PartEntry entry, DeviceModels.DiodeParts model) {
        String name = entry.name();
        if (model.seriesResistance() == 0)
            return List.of(new Diode(name, pin(entry, 0), pin(entry, 1), model.junction()));
        String inner = Names.inner(name);
        return List.of(
                new Diode(name, inner, pin(entry, 1), model.junction()),
                new Resistor(Names.resistance(name), pin(entry, 0), inner, model.seriesResistance()));
    }

    private Bipolar bipolar(PartEntry entry, Polarity polarity) {
        Bipolar.Model m = models.bipolar(entry);
        Optional<Correction> c = CircuitOf.correction(overlay, entry.name());
        Bipolar.Model corrected = new Bipolar.Model(
                c.flatMap(Correction::saturationCurrent).map(Quantity::value).orElse(m.saturationCurrent()),
                c.flatMap(Correction::beta).map(Quantity::value).orElse(m.forwardBeta()),
                m.reverseBeta(),
                m.earlyVoltage(),
                m.forwardTransitTime(),
                m.reverseTransitTime(),
                m.emitterCapacitance(),
                m.emitterBuiltIn(),
                m.emitterGrading(),
                m.collectorCapacitance(),
                m.collectorBuiltIn(),
                m.collectorGrading(),
                m.baseResistance());
        return new Bipolar(entry.name(), polarity, pin(entry, 0), pin(entry, 1), pin(entry, 2), corrected);
    }

    private Jfet.Model jfetModel(PartEntry entry) {
        Jfet.Model m = models.jfet(entry);
        Optional<Correction> c = CircuitOf.correction(overlay, entry.name());
        return new Jfet.Model(
                c.flatMap(Correction::saturationCurrent).map(Quantity::value).orElse(m.saturationCurrent()),
                c.flatMap(Correction::pinchOff).map(Quantity::value).orElse(m.pinchOff()),
                m.channelLengthModulation(),
                m.gateSource(),
                m.gateDrain());
    }

    private List<Part> dualGate(PartEntry entry) {
        String drain = pin(entry, 0);
        String gate2 = pin(entry, 1);
        String gate1 = pin(entry, 2);
        String source = pin(entry, 3);
        List<Part> parts = new ArrayList<>();
        parts.add(new DualGateMosfet(
                entry.name(), Polarity.N, drain, gate2, gate1, source, models.lower(entry), models.upper(entry)));
        models.between(entry).ifPresent(m -> {
            addCapacitor(parts, entry.name() + ".gate1", gate1, source, m.gate1Capacitance());
            addCapacitor(parts, entry.name() + ".gate2", gate2, source, m.gate2Capacitance());
            addCapacitor(parts, entry.name() + ".feedback", drain, gate1, m.feedbackCapacitance());
            addCapacitor(parts, entry.name() + ".output", drain, source, m.outputCapacitance());
        });
        return parts;
    }

    private static void addCapacitor(List<Part> parts, String name, String from, String to, double farads) {
        if (farads > 0 && !from.equals(to)) parts.add(new Capacitor(name, from, to, farads));
    }

    private static List<Part> voltage(PartEntry entry, Wave wave, double resistance) {
        String name = entry.name();
        if (resistance == 0) return List.of(new VoltageSource(name, pin(entry, 0), pin(entry, 1), wave));
        String inner = Names.inner(name);
        return List.of(
                new VoltageSource(name, inner, pin(entry, 1), wave),
                new Resistor(Names.resistance(name), inner, pin(entry, 0), resistance));
    }

    /** One voltage behind two resistances: both channels carry the same, as a test tone does. */
    private static List<Part> stereo(PartEntry entry, Wave wave) {
        String name = entry.name(), inner = Names.inner(name);
        double resistance = entry.values().si("resistance");
        return List.of(
                new VoltageSource(name, inner, pin(entry, 2), wave),
                new Resistor(Names.resistance(name), inner, pin(entry, 0), resistance),
                new Resistor(Names.right(name), inner, pin(entry, 1), resistance));
    }

    private static Wave wave(PartEntry entry) {
        Filled v = entry.values();
        double value = entry.value().orElseThrow().value();
        if (!v.has("frequency")) return new Wave.Direct(value);
        return new Wave.Sine(v.si("offset", 0), value, v.si("frequency"), Math.toRadians(v.si("phase", 0)));
    }

    private Wave tone(PartEntry entry) {
        double level = entry.value()
                .or(() -> build.intent().programme().map(Intent.Programme::level))
                .orElseThrow(() -> new IllegalStateException(entry.name() + " passed the reading without a level"))
                .value();
        return new Wave.Sine(0, level, entry.values().si("frequency", TEST_TONE), 0);
    }
}
