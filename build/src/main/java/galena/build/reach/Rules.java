package galena.build.reach;

import galena.build.figure.Figure;
import java.util.List;
import java.util.Optional;

/** How a build stands to the rules of its region. */
public sealed interface Rules {
    /**
     * The figures held, applied.
     *
     * @param region its name
     * @param routes ways of meeting its rules; one that is met suffices
     * @param check where the rules in force are to be read
     * @param note what to know of the region
     */
    record Judged(String region, List<Route> routes, String check, String note) implements Rules {
        public Judged {
            routes = List.copyOf(routes);
        }
    }

    /** Nothing to judge by; why, and where to read. */
    record NotHeld(String region, String reason, String check) implements Rules {}

    /**
     * One way of meeting the rules.
     *
     * @param standing the worst of its lines
     * @param verified false where a figure that counts is recalled and not read
     * @param words why it isn't open, or empty
     */
    record Route(String name, Standing standing, boolean verified, List<Line> lines, String words) {
        public Route {
            lines = List.copyOf(lines);
        }
    }

    /**
     * One rule against one emission or one fact.
     *
     * @param subject what is judged: "carrier 999 kHz"
     * @param section of the regulation
     * @param limit in the rule's own quantity; empty where the rule forbids outright
     * @param distance at which it is read (m), where it names one
     * @param found in the same quantity, or why not
     * @param loopEquivalent beside a limit in V/m: 377 Ω times the greatest H
     * @param margin limit over the stricter reading, unmodulated (dB); none for lengths
     * @param crestMargin the same at the crest of modulation, which a quasi-peak detector approaches
     * @param outOfBand whether it is about a harmonic
     * @param verified whether the figure has been read rather than recalled
     * @param source of the figure, with its date
     * @param remark what to know or to answer
     */
    record Line(
            String subject,
            String section,
            Standing standing,
            Optional<Figure.Known> limit,
            Optional<Double> distance,
            Optional<Figure.Known> found,
            Optional<Figure.Known> loopEquivalent,
            Optional<Figure.Known> margin,
            Optional<Figure.Known> crestMargin,
            boolean outOfBand,
            boolean verified,
            String source,
            String remark) {
        /** The margin that decides. */
        public Optional<Figure.Known> decisive() {
            return crestMargin.or(() -> margin);
        }
    }
}
