package galena.build.propose;

import galena.build.attempt.Line;
import galena.build.attempt.Neighbour;
import galena.build.figure.Figure;
import galena.build.folder.Build;
import java.util.List;
import java.util.Optional;

/**
 * A complete build for an intent, with everything that was found about it.
 *
 * @param pattern it was made from; empty where the builder's own build was the start
 * @param build proposed
 * @param text of its {@code build.yaml}, with reasons as comments
 * @param verdicts how it stands to each line
 * @param yield share of copies that meet every line that copies are held to, over −10 to +50 °C, fresh battery to flat
 * @param count copies drawn for it
 * @param seed of their sequence
 * @param meets whether it meets the intent: 95 of 100 copies, and the lines of the typical build
 * @param values every part with its reason and what its neighbours would do
 * @param changes made to the builder's own build, each with what it bought; to a pattern's start likewise
 * @param considered patterns that were looked at, the proposal's own first
 * @param givesWay lines that the intent would have to ease; empty where it is met
 * @param eased yield of the same build against the intent eased so
 * @param notes what to know besides
 */
public record Proposal(
        Optional<String> pattern,
        Build build,
        String text,
        List<Verdict> verdicts,
        Figure.Known yield,
        int count,
        long seed,
        boolean meets,
        List<Value> values,
        List<Change> changes,
        List<Considered> considered,
        List<GivesWay> givesWay,
        double eased,
        List<String> notes)
        implements ProposeAnswer {
    public Proposal {
        verdicts = List.copyOf(verdicts);
        values = List.copyOf(values);
        changes = List.copyOf(changes);
        considered = List.copyOf(considered);
        givesWay = List.copyOf(givesWay);
        notes = List.copyOf(notes);
    }

    /**
     * One line of the intent.
     *
     * @param wanted in words
     * @param found in figures, over the copies or of typical parts
     * @param meeting share of copies that meet it; 0 or 1 where typical parts are judged
     * @param ofCopies whether copies are held to it
     */
    public record Verdict(Line line, String wanted, Figure found, double meeting, boolean ofCopies) {}

    /**
     * One part.
     *
     * @param value in words
     * @param reason in words; empty for parts of the builder's own
     * @param up what the next value upwards does; empty for parts that aren't varied
     * @param down likewise downwards
     */
    public record Value(String part, String value, String reason, Optional<Neighbour> up, Optional<Neighbour> down) {}

    /**
     * A change on the way.
     *
     * @param buys what it does to the figures
     * @param before share of copies that met every line before
     * @param after and after
     */
    public record Change(String part, String from, String to, String buys, double before, double after) {}

    /**
     * A pattern looked at.
     *
     * @param outcome in words
     * @param yield of the copies drawn of it; none where it can't serve
     */
    public record Considered(String pattern, String outcome, Optional<Double> yield) {}
}
