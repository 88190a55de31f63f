package galena.trade.limit;

import java.util.OptionalDouble;

/**
 * What rules ask about a build that no field tells. An empty figure is asked for in the answer.
 *
 * @param finalStageInput d.c. input power of the final radio-frequency stage, all of it (W)
 * @param aerialAndFeed length of aerial and feed line (m); for a loop the wire of the loop stands in {@code coilWire}
 * @param groundLead length of the ground lead, 0 if none (m)
 * @param coilWire wire in a loading coil or loop (m): whether it counts is not settled, so both ways are shown
 */
public record BuildFacts(
        OptionalDouble finalStageInput,
        OptionalDouble aerialAndFeed,
        OptionalDouble groundLead,
        OptionalDouble coilWire) {
    /** Nothing is known. */
    public static final BuildFacts NONE = new BuildFacts(
            OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());

    public BuildFacts {
        for (OptionalDouble each : new OptionalDouble[] {finalStageInput, aerialAndFeed, groundLead, coilWire}) {
            if (each.isPresent() && !(each.getAsDouble() >= 0 && each.getAsDouble() < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("a power or length is zero or more, not " + each.getAsDouble());
            }
        }
    }
}
