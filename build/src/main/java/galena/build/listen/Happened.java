package galena.build.listen;

import java.util.List;

/**
 * What happened while a programme was listened to.
 *
 * @param seconds of programme
 * @param overmodulation the carrier was gone
 * @param stops the oscillation was lost in a trough
 * @param beyond the programme went further than the solved curve
 * @param diagonal the set's detector did not follow the envelope
 * @param softened share of the output that the guard bent
 */
public record Happened(
        double seconds, Event overmodulation, Event stops, Event beyond, Event diagonal, double softened) {
    /**
     * @param name in words
     * @param count stretches, those closer than 50 ms taken as one
     * @param seconds in all
     * @param first when the first few begin, s
     */
    public record Event(String name, long count, double seconds, List<Double> first) {
        public Event {
            first = List.copyOf(first);
        }
    }

    public List<Event> events() {
        return List.of(overmodulation, stops, beyond, diagonal);
    }
}
