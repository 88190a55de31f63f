package galena.build.wiring;

/** Names of parts and nets that a circuit has beyond those of the build. None can be a builder's own: they hold a dot or a (. */
public final class Names {
    private Names() {}

    /** A resistance that belongs to a part: its source's, or its series loss. */
    public static String resistance(String part) {
        return part + ".resistance";
    }

    /** The resistance in series with the right channel of a stereo source. */
    public static String right(String part) {
        return part + ".right";
    }

    /** The net between a part and its resistance. */
    public static String inner(String part) {
        return part + ".inner";
    }

    /** What measures the current at the foot of a wire, and the net above it. */
    public static String foot(String part) {
        return part + ".foot";
    }

    /** @param number from 1, as in the list of strays */
    public static String stray(String from, String to, int number) {
        return "stray" + number + "(" + from + "," + to + ")";
    }

    public static String coupling(String first, String second) {
        return "k(" + first + "," + second + ")";
    }

    /** The load that a probe at a test point is. */
    public static String probe(String point) {
        return "probe(" + point + ")";
    }
}
