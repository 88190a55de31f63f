package galena.packet.schematic;

/** Path data that several symbols share. */
final class Strokes {
    static final String THREE_PINS = "N:0,-30 W:-35,0 S:0,30";
    static final String TURNS = "M0-25V-20A5 5 0 0 1 0-10A5 5 0 0 1 0 0A5 5 0 0 1 0 10A5 5 0 0 1 0 20V25";
    static final String TWO_WINDINGS = "M-10-25V-20A5 5 0 0 1-10-10A5 5 0 0 1-10 0A5 5 0 0 1-10 10A5 5 0 0 1-10 20V25"
            + "M10-25V-20A5 5 0 0 0 10-10A5 5 0 0 0 10 0A5 5 0 0 0 10 10A5 5 0 0 0 10 20V25";
    static final String ENVELOPE = circle(-6, 0, 21);
    static final String JUNCTION_DEVICE = ENVELOPE + "M-35 0H-14M-14-12V12M-14-5L0-16V-30M-14 5L0 16V30";
    static final String CHANNEL_DEVICE = ENVELOPE + "M-35 0H-12M-12-13V13M-12-8H0V-30M-12 8H0V30";
    static final String INSULATED_GATE = ENVELOPE + "M-35 0H-17M-17-10V10M-11-10H0V-30M-11 10H0V30M-11 0H0V10";
    static final String BROKEN_CHANNEL = INSULATED_GATE + "M-11-14V-6.5M-11-3.5V3.5M-11 6.5V14";
    static final String SOLID_CHANNEL = INSULATED_GATE + "M-11-14V14";
    static final String ALTERNATING = circle(0, 0, 13) + "M0-25V-13M0 13V25M-8 0C-5-10-3-10 0 0S5 10 8 0";

    private Strokes() {}

    static String circle(int x, int y, int r) {
        return "M" + (x - r) + " " + y + "a" + r + " " + r + " 0 1 0 " + 2 * r + " 0a" + r + " " + r + " 0 1 0 "
                + -2 * r + " 0";
    }
}
