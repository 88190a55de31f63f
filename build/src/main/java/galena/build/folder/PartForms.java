package galena.build.folder;

import static galena.build.form.Field.needed;
import static galena.build.form.Field.optional;

import galena.build.form.Coefficient;
import galena.build.form.DeviceRef;
import galena.build.form.Field;
import galena.build.form.Form;
import galena.build.form.Quantities;
import galena.build.form.Text;
import galena.build.form.Tolerance;
import galena.build.form.Type;
import galena.build.form.WordOr;
import galena.build.form.Words;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The keys of each kind of part. The first is the one that tells the kind. */
final class PartForms {
    /** The level of an audio source that is the intent's. */
    static final String PROGRAMME = "programme";

    private static final Type POSITION = Quantities.one(Unit.FRACTION, 0, 1);
    private static final Type INDUCTANCE = Quantities.oneOrRange(Unit.HENRY, 1e-10, 1e3);
    private static final Type CAPACITANCE = Quantities.one(Unit.FARAD, 1e-15, 1);
    private static final Type RESISTANCE = Quantities.one(Unit.OHM, 1e-3, 1e12);
    private static final Type FREQUENCY = Quantities.one(Unit.HERTZ, 1e-3, 1e9);
    private static final Type VOLTAGE = Quantities.one(Unit.VOLT, -1e3, 1e3);
    private static final Type PHASE = Quantities.one(Unit.NUMBER, -360, 360);

    private static final Field SET =
            optional("set", POSITION, "The position runs from 0 % to 100 %; 50 % if left out.");
    private static final Field SOURCE_RESISTANCE =
            optional("resistance", Quantities.one(Unit.OHM, 0, 1e12), "The resistance in series is zero if left out.");

    private static final Map<PartKind, Form> FORMS = new EnumMap<>(PartKind.class);

    static {
        for (PartKind kind : PartKind.values()) FORMS.put(kind, build(kind));
    }

    private PartForms() {}

    static Form of(PartKind kind) {
        Form form = FORMS.get(kind);
        if (form == null) throw new IllegalStateException("no form for " + kind);
        return form;
    }

    static List<Form> all() {
        return Arrays.stream(PartKind.values()).map(PartForms::of).toList();
    }

    private static Form build(PartKind kind) {
        List<Field> fields = new ArrayList<>(own(kind));
        if (kind.isPassive()) {
            fields.add(optional(
                    "tolerance", new Tolerance(), "The tolerance is a fraction of the value, as 5 %, or its letter."));
            boolean drifts = kind != PartKind.CRYSTAL
                    && kind != PartKind.RESONATOR
                    && kind != PartKind.PRESET
                    && kind != PartKind.WIRE;
            if (drifts)
                fields.add(optional(
                        "tempco",
                        new Coefficient(),
                        "The temperature coefficient is given in ppm/K, or as NP0, N750, P100."));
        }
        for (String pin : kind.pins())
            fields.add(Field.pin(
                    pin,
                    Text.NAME,
                    "Every pin of " + kind.noun() + " is joined to a net: " + String.join(", ", kind.pins()) + "."));
        fields.add(optional("note", Text.ANY, "A note is for readers."));
        return new Form(kind.noun(), fields, (part, problems) -> PartChecks.check(kind, part, problems));
    }

    private static List<Field> own(PartKind kind) {
        return switch (kind) {
            case RESISTOR -> List.of(value(kind, RESISTANCE, "A resistor takes a resistance."));
            case PRESET ->
                List.of(
                        value(kind, RESISTANCE, "A preset takes the resistance of its whole track."),
                        SET,
                        optional(
                                "end_resistance",
                                RESISTANCE,
                                "What is left at either stop is 0.5 % of the track if left out."));
            case CAPACITOR -> List.of(value(kind, CAPACITANCE, "A capacitor takes a capacitance."));
            case TRIMMER ->
                List.of(
                        value(kind, Quantities.range(Unit.FARAD, 1e-15, 1e-6), "A trimmer takes a capacitance range."),
                        SET);
            case COIL, LOOPSTICK, LOOP -> coil(kind);
            case WIRE -> AerialForms.wire();
            case CRYSTAL, RESONATOR -> resonator(kind);
            case DIODE ->
                List.of(value(
                        kind, new DeviceRef(DeviceForms.DIODE), "A diode is named by its type, or by its parameters."));
            case TUNING_DIODE ->
                List.of(value(
                        kind,
                        new DeviceRef(DeviceForms.TUNING_DIODE),
                        "A tuning diode is named by its type, or by its parameters."));
            case NPN, PNP ->
                List.of(value(
                        kind,
                        new DeviceRef(DeviceForms.BIPOLAR),
                        "A transistor is named by its type, or by its parameters."));
            case JFET ->
                List.of(
                        value(
                                kind,
                                new DeviceRef(DeviceForms.JFET),
                                "A JFET is named by its type, or by its parameters."),
                        channel());
            case MOSFET ->
                List.of(
                        value(
                                kind,
                                new DeviceRef(DeviceForms.MOSFET),
                                "A MOSFET is named by its type, or by its parameters."),
                        channel());
            case DUAL_GATE_MOSFET ->
                List.of(value(
                        kind,
                        new DeviceRef(DeviceForms.DUAL_GATE_MOSFET),
                        "A dual-gate MOSFET is named by its type, or by its parameters."));
            case OPAMP ->
                List.of(value(kind, new DeviceRef(DeviceForms.OPAMP), "An op-amp is given by its parameters."));
            case VOLTAGE ->
                source(
                        kind,
                        VOLTAGE,
                        "A voltage source takes a voltage: direct, or the peak of a sine if it has a frequency.",
                        SOURCE_RESISTANCE);
            case CURRENT ->
                source(
                        kind,
                        Quantities.one(Unit.AMPERE, -10, 10),
                        "A current source takes a current: direct, or the peak of a sine if it has a frequency.");
            case AUDIO ->
                List.of(
                        value(
                                kind,
                                new WordOr(Words.of(PROGRAMME), Quantities.one(Unit.VOLT, 0, 100)),
                                "An audio source takes its peak voltage, or the word programme for the level of the intent."),
                        optional("frequency", FREQUENCY, "The test tone is 1 kHz if left out."),
                        SOURCE_RESISTANCE);
            case STEREO ->
                List.of(
                        value(
                                kind,
                                new WordOr(Words.of(PROGRAMME), Quantities.one(Unit.VOLT, 0, 100)),
                                "A stereo source takes the peak voltage of each channel, or the word programme for the"
                                        + " level of the intent."),
                        optional("frequency", FREQUENCY, "The test tone, in both channels, is 1 kHz if left out."),
                        needed(
                                "resistance",
                                Quantities.one(Unit.OHM, 1e-3, 1e12),
                                "The resistance is that in series with each channel."));
            case LOAD ->
                List.of(
                        value(kind, RESISTANCE, "A load takes the resistance of the probe or meter."),
                        optional(
                                "capacitance",
                                Quantities.one(Unit.FARAD, 0, 1e-3),
                                "The capacitance beside the load is none if left out."));
        };
    }

    private static List<Field> coil(PartKind kind) {
        List<Field> fields = new ArrayList<>(List.of(
                value(kind, INDUCTANCE, "A coil takes an inductance, or a range if it has a slug."),
                SET,
                optional(
                        "q",
                        Quantities.atFrequency(Unit.NUMBER, 0.1, 1e6),
                        "The Q holds at one frequency: 85 @ 1 MHz."),
                optional(
                        "resistance",
                        Quantities.one(Unit.OHM, 0, 1e9),
                        "The resistance is the loss of the coil in series."),
                optional(
                        "self_capacitance",
                        Quantities.one(Unit.FARAD, 0, 1e-6),
                        "The self-capacitance is none if left out.")));
        if (kind == PartKind.LOOPSTICK) fields.addAll(AerialForms.rod());
        if (kind == PartKind.LOOP) fields.addAll(AerialForms.loop());
        return fields;
    }

    private static List<Field> resonator(PartKind kind) {
        return List.of(
                value(kind, Quantities.one(Unit.HERTZ, 1e3, 1e9), "A resonator takes its series-resonant frequency."),
                needed(
                        "shunt_capacitance",
                        CAPACITANCE,
                        "The shunt capacitance is that of the holder, across the pins."),
                optional(
                        "motional_capacitance",
                        Quantities.one(Unit.FARAD, 1e-18, 1e-6),
                        "The motional capacitance or inductance is needed, one of the two."),
                optional(
                        "motional_inductance",
                        Quantities.one(Unit.HENRY, 1e-9, 1e6),
                        "The motional capacitance or inductance is needed, one of the two."),
                optional("resistance", RESISTANCE, "The series resistance or the Q is needed, one of the two."),
                optional(
                        "q",
                        Quantities.one(Unit.NUMBER, 1, 1e9),
                        "The series resistance or the Q is needed, one of the two."));
    }

    private static List<Field> source(PartKind kind, Type amount, String rule, Field... more) {
        List<Field> fields = new ArrayList<>(List.of(
                value(kind, amount, rule),
                optional("frequency", FREQUENCY, "With a frequency the source is a sine."),
                optional("offset", amount, "The offset is what a sine swings about; zero if left out."),
                optional("phase", PHASE, "The phase of a sine is in degrees; zero if left out.")));
        fields.addAll(Arrays.asList(more));
        return fields;
    }

    private static Field channel() {
        return optional(
                "channel",
                Words.of("n", "p"),
                "The channel is n or p; of a type in the library it is known, else n if left out.");
    }

    private static Field value(PartKind kind, Type type, String rule) {
        return needed(kind.key(), type, rule);
    }
}
