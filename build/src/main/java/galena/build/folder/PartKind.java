package galena.build.folder;

import java.util.Arrays;
import java.util.List;

/**
 * The kinds of part that a build may hold. The key tells the kind, never the part's name.
 *
 * <p>Tolerances and temperature coefficients stand where a part names none; all are common practice: ordinary film
 * resistors and film or class 1 ceramic capacitors, hand-wound coils, a rod whose permeability climbs when it warms, a wire
 * whose capacitance the walls around it change. Spread of semiconductors comes from their data instead.
 */
public enum PartKind {
    RESISTOR("resistor", "a resistor", "from to", 0.05, 0),
    PRESET("preset", "a preset", "from wiper to", 0.2, 0),
    CAPACITOR("capacitor", "a capacitor", "from to", 0.1, 0),
    TRIMMER("trimmer", "a trimmer", "from to", 0.1, 0),
    COIL("coil", "a coil", "from to", 0.1, 50e-6),
    LOOPSTICK("loopstick", "a loopstick", "from to", 0.1, 150e-6),
    LOOP("loop", "a loop", "from to", 0.1, 50e-6),
    WIRE("wire", "a wire", "from to", 0.1, 0),
    CRYSTAL("crystal", "a crystal", "from to", 30e-6, 0),
    RESONATOR("resonator", "a ceramic resonator", "from to", 5e-3, 0),
    DIODE("diode", "a diode", "anode cathode", 0, 0),
    TUNING_DIODE("tuning_diode", "a tuning diode", "anode cathode", 0, 0),
    NPN("npn", "an npn transistor", "collector base emitter", 0, 0),
    PNP("pnp", "a pnp transistor", "collector base emitter", 0, 0),
    JFET("jfet", "a JFET", "drain gate source", 0, 0),
    MOSFET("mosfet", "a MOSFET", "drain gate source", 0, 0),
    DUAL_GATE_MOSFET("dual_gate_mosfet", "a dual-gate MOSFET", "drain gate2 gate1 source", 0, 0),
    OPAMP("opamp", "an op-amp", "noninverting inverting output plus minus", 0, 0),
    VOLTAGE("voltage", "a voltage source", "plus minus", 0, 0),
    CURRENT("current", "a current source", "from to", 0, 0),
    AUDIO("audio", "an audio source", "plus minus", 0, 0),
    STEREO("stereo", "a stereo source", "left right minus", 0, 0),
    LOAD("load", "a load", "from to", 0, 0);

    private final String key;
    private final String noun;
    private final String pins;
    private final double tolerance;
    private final double temperatureCoefficient;

    PartKind(String key, String noun, String pins, double tolerance, double temperatureCoefficient) {
        this.key = key;
        this.noun = noun;
        this.pins = pins;
        this.tolerance = tolerance;
        this.temperatureCoefficient = temperatureCoefficient;
    }

    /** The key that tells the kind: {@code trimmer}. */
    public String key() {
        return key;
    }

    /** "a trimmer": for sentences. */
    public String noun() {
        return noun;
    }

    /** The keys of the pins, in the order of the engine's part. */
    public List<String> pins() {
        return Arrays.asList(pins.split(" "));
    }

    /** Tolerance where a part names none, as a fraction; zero for kinds whose spread comes from device data. */
    public double usualTolerance() {
        return tolerance;
    }

    /** Temperature coefficient where a part names none, per kelvin. */
    public double usualTemperatureCoefficient() {
        return temperatureCoefficient;
    }

    /** Whether it has a value with a tolerance, as passive parts have. */
    public boolean isPassive() {
        return tolerance > 0;
    }

    /** Whether the builder's coupling may name it. */
    public boolean isCoil() {
        return this == COIL || this == LOOPSTICK || this == LOOP;
    }

    /** Whether the programme comes from it. */
    public boolean isProgramme() {
        return this == AUDIO || this == STEREO;
    }

    /** Whether it is there to radiate. */
    public boolean isAerial() {
        return this == LOOPSTICK || this == LOOP || this == WIRE;
    }

    static PartKind of(String key) {
        return Arrays.stream(values())
                .filter(kind -> kind.key.equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no kind of part is " + key));
    }
}
