package galena.engine.circuit;

import java.util.List;

/**
 * Something wrong or unusual in a circuit's structure, with its place.
 *
 * @param kind what it is
 * @param parts the parts concerned, by name
 * @param nets the nets concerned
 */
public record Fault(Kind kind, List<String> parts, List<String> nets) {
    public Fault {
        parts = List.copyOf(parts);
        nets = List.copyOf(nets);
    }

    /** What can be wrong; {@link #fatal} kinds have no solution, the others are solved and worth knowing. */
    public enum Kind {
        /** No pin is joined to ground: voltages have no reference. */
        NO_GROUND(true, "no pin is joined to ground", "join the common net to ground"),
        /** A net with a single pin: nothing can flow there. */
        LONE_PIN(true, "only one pin is joined here", "join the pin to something, or leave the part out"),
        /** Ideal sources and coils without resistance in a loop: nothing limits the direct current. */
        SOURCE_LOOP(
                true,
                "ideal sources and coils without resistance form a loop, which carries unlimited direct current",
                "give the source an internal resistance or the coil a Q"),
        /** A part of the circuit that no direct current can reach: its voltage is undetermined. */
        NO_DIRECT_PATH(
                true,
                "no direct-current path leads to ground, so the standing voltage is undetermined",
                "add a resistor to ground or to a bias net (a gate leak, a bleeder)"),
        /** Current sources alone feed a net: their sum must be zero and is not held by anything. */
        CURRENT_SOURCE_CUT(
                true,
                "only current sources feed this, and nothing sets the voltage",
                "put a resistance beside one of the sources"),
        /** A capacitor straight across an ideal source: solved; the source takes the capacitor's current. */
        CAPACITOR_ACROSS_SOURCE(
                false,
                "capacitors and ideal sources form a loop: the source carries whatever the capacitor asks",
                "an internal resistance makes the current real"),
        /** Coils alone meet at a net, or with current sources: solved; they carry the same current. */
        COILS_IN_SERIES(
                false,
                "only coils meet here, so they share one current and any small capacitance here rings",
                "add the self-capacitance of the coils");

        private final boolean fatal;
        private final String rule;
        private final String remedy;

        Kind(boolean fatal, String rule, String remedy) {
            this.fatal = fatal;
            this.rule = rule;
            this.remedy = remedy;
        }

        public boolean fatal() {
            return fatal;
        }

        /** What is wrong, in words. */
        public String rule() {
            return rule;
        }

        /** What helps, in words. */
        public String remedy() {
            return remedy;
        }
    }

    @Override
    public String toString() {
        String place = parts.isEmpty() ? "" : String.join(", ", parts);
        if (!nets.isEmpty()) place += (place.isEmpty() ? "" : " at ") + "net " + String.join(", ", nets);
        return (place.isEmpty() ? "" : place + ": ") + kind.rule() + "; " + kind.remedy();
    }
}
