package galena.packet.schematic;

import java.util.Arrays;
import java.util.List;

/**
 * The symbols, drawn upright about their own middle with y downwards. Shapes after IEC 60617 and IEEE 315; a diagonal or a wiper
 * that ends in a short bar says "set once with a tool", as both standards have it.
 */
@SuppressWarnings("ImmutableEnumChecker") // its lists are unmodifiable and hold records
enum Glyph {
    RESISTOR(-7, -19, 7, 19, "N:0,-25 S:0,25", "M0-25V-17M0 17V25M-6-17H6V17H-6Z", ""),
    PRESET(-7, -19, 10, 19, "N:0,-25 E:25,0 S:0,25", "M0-25V-17M0 17V25M-6-17H6V17H-6ZM25 0H9M9-6V6", ""),
    CAPACITOR(-13, -19, 13, 19, "N:0,-25 S:0,25", "M0-25V-4M-12-4H12M-12 4H12M0 4V25", ""),
    TRIMMER(-17, -17, 17, 17, "N:0,-25 S:0,25", "M0-25V-4M-12-4H12M-12 4H12M0 4V25M-14 13L13-12M9.9-15.3L16.1-8.7", ""),
    COIL(-4, -19, 8, 19, "N:0,-25 S:0,25", Strokes.TURNS, ""),
    SLUG_COIL(-13, -19, 15, 19, "N:0,-25 S:0,25", Strokes.TURNS + "M-12 12L13-11M9.9-14.3L16.1-7.7", ""),
    LOOPSTICK(-10, -24, 8, 24, "N:0,-25 S:0,25", Strokes.TURNS + "M-9-24H-5V24H-9Z", ""),
    COUPLED(-13, -21, 13, 21, "N:-10,-25 S:-10,25 N:10,-25 S:10,25", Strokes.TWO_WINDINGS, ""),
    COUPLED_ON_CORE(-13, -21, 13, 21, "N:-10,-25 S:-10,25 N:10,-25 S:10,25", Strokes.TWO_WINDINGS + "M0-22V22", ""),
    /** Fed from above at its side; what the fork stands against is the earth below. */
    AERIAL(-17, -24, 9, 19, "N:-15,-25 S:0,25", "M-15-25V7H0V-23M-8-23L0-11L8-23M-7 13H7M0 13V25", ""),
    CRYSTAL(-11, -19, 11, 19, "N:0,-25 S:0,25", "M0-25V-11M-10-11H10M-9-6H9V6H-9ZM-10 11H10M0 11V25", ""),
    DIODE(-9, -19, 9, 19, "N:0,-25 S:0,25", "M0-25V25M-8-7H8L0 7ZM-8 7H8", ""),
    TUNING_DIODE(-9, -19, 9, 19, "N:0,-25 S:0,25", "M0-25V4M-8-10H8L0 4ZM-8 4H8M-8 10H8M0 10V25", ""),
    NPN(-28, -22, 16, 22, Strokes.THREE_PINS, Strokes.JUNCTION_DEVICE, "M-2 14.4L-10.2 12L-6.3 7Z"),
    PNP(-28, -22, 16, 22, Strokes.THREE_PINS, Strokes.JUNCTION_DEVICE, "M-12 6.6L-7.8 13.8L-3.9 8.8Z"),
    N_JFET(-28, -22, 16, 22, Strokes.THREE_PINS, Strokes.CHANNEL_DEVICE, "M-13 0L-21-3.4V3.4Z"),
    P_JFET(-28, -22, 16, 22, Strokes.THREE_PINS, Strokes.CHANNEL_DEVICE, "M-23 0L-15-3.4V3.4Z"),
    N_MOSFET(-28, -22, 16, 22, Strokes.THREE_PINS, Strokes.BROKEN_CHANNEL, "M-11 0L-4-3.2V3.2Z"),
    P_MOSFET(-28, -22, 16, 22, Strokes.THREE_PINS, Strokes.BROKEN_CHANNEL, "M-2 0L-9-3.2V3.2Z"),
    N_DEPLETION_MOSFET(-28, -22, 16, 22, Strokes.THREE_PINS, Strokes.SOLID_CHANNEL, "M-11 0L-4-3.2V3.2Z"),
    P_DEPLETION_MOSFET(-28, -22, 16, 22, Strokes.THREE_PINS, Strokes.SOLID_CHANNEL, "M-2 0L-9-3.2V3.2Z"),
    DUAL_GATE_MOSFET(
            -32,
            -34,
            20,
            18,
            "N:0,-40 W:-35,-17 W:-35,0 S:0,30",
            Strokes.circle(-6, -8, 25) + "M-35 0H-16M-16-6V6M-35-17H-16M-16-23V-11"
                    + "M-11-26V10M-11-22H0V-40M-11 6H0V30M-11-8H0V6",
            "M-11-8L-4-11.2V-4.8Z"),
    BATTERY(
            -13,
            -19,
            13,
            19,
            "N:0,-25 S:0,25",
            "M0-25V-12M-12-12H12M-6-7H6M0-5V-2M0 0V3M-12 6H12M-6 11H6M0 11V25M5-19H11M8-22V-16",
            ""),
    DIRECT_VOLTAGE(-14, -19, 14, 19, "N:0,-25 S:0,25", "M0-25V25M5-19H11M8-22V-16" + Strokes.circle(0, 0, 13), ""),
    ALTERNATING_VOLTAGE(-14, -19, 14, 19, "N:0,-25 S:0,25", Strokes.ALTERNATING, ""),
    STEREO(
            -14,
            -19,
            14,
            19,
            "N:-10,-25 N:10,-25 S:0,25",
            Strokes.circle(0, 0, 13) + "M-10-25V-8.3M10-25V-8.3M0 13V25M-8 0C-5-10-3-10 0 0S5 10 8 0",
            ""),
    OPAMP(
            -26,
            -24,
            24,
            24,
            "W:-35,-10 W:-35,10 E:30,0 N:0,-30 S:0,30",
            "M-24-24V24L24 0ZM-35-10H-24M-35 10H-24M24 0H30M0-30V-12M0 30V12M-20-10H-12M-16-14V-6M-20 10H-12",
            ""),
    CURRENT(
            -14,
            -19,
            18,
            19,
            "N:0,-25 S:0,25",
            "M0-25V-13M0 13V25M-13 0H13M18-8V8" + Strokes.circle(0, 0, 13),
            "M18 12L15 5H21Z"),
    LOAD(-7, -19, 7, 19, "N:0,-25 S:0,25", "M0-25V-17M0 17V25M-6-17H6V17H-6ZM-6 17L6-17", ""),
    TEST_POINT(-5, -20, 5, -10, "ON:0,0", "M0 0V-11" + Strokes.circle(0, -15, 4), ""),
    GROUND(-10, 0, 10, 13, "N:0,0", "M0 0V5M-9 5H9M-5.5 9H5.5M-2 13H2", ""),
    RAIL(-8, -6, 8, 0, "S:0,0", "M0 0V-6M-8-6H8", "");

    /** Which way a pin's wire leaves. */
    enum Side {
        N,
        E,
        S,
        W,
        /** The pin sits on its net's line. */
        ON
    }

    /** A pin of a symbol: where it is, and which way its wire leaves. */
    record Pin(Side side, int x, int y) {}

    private final Box body;
    private final List<Pin> pins;
    private final String lines;
    private final String solids;

    Glyph(int left, int top, int right, int bottom, String pins, String lines, String solids) {
        this.body = new Box(left, top, right, bottom);
        this.pins = Arrays.stream(pins.split(" ")).map(Glyph::pin).toList();
        this.lines = lines;
        this.solids = solids;
    }

    private static Pin pin(String text) {
        String[] parts = text.split("[:,]");
        return new Pin(Side.valueOf(parts[0]), Integer.parseInt(parts[1]), Integer.parseInt(parts[2]));
    }

    /** What no wire and no label may enter. */
    Box body() {
        return body;
    }

    /** In the order of the build's pins, except where {@link Element} says otherwise. */
    List<Pin> pins() {
        return pins;
    }

    /** SVG path data to be stroked. */
    String lines() {
        return lines;
    }

    /** SVG path data to be filled; may be empty. */
    String solids() {
        return solids;
    }

    /** A device with a control pin at its side. */
    boolean isDevice() {
        return pins.size() >= 3 && this != PRESET && this != STEREO && this != COUPLED && this != COUPLED_ON_CORE;
    }

    /** Whether it may lie on its side between two nets. */
    boolean mayLie() {
        return pins.size() == 2 && this != BATTERY && this != AERIAL;
    }

    /** Whether its middle stands on a net's line; other symbols stand between lines. */
    boolean standsOnLine() {
        return pins.get(0).side() == Side.ON || pins.stream().anyMatch(p -> p.side() == Side.W || p.side() == Side.E);
    }
}
