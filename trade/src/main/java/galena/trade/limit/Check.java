package galena.trade.limit;

import java.util.OptionalDouble;

/**
 * One rule against one emission or one fact of the build.
 *
 * @param rule the rule
 * @param subject what is judged, in words
 * @param frequency of the emission (Hz), none for a fact of the build
 * @param outcome of the stricter reading, modulated
 * @param limit in the unit of the rule's quantity
 * @param distance at which the region reads (m), if it reads at one
 * @param found unmodulated, in the rule's own quantity: true E for a limit in V/m
 * @param loopEquivalent greatest H times 377 Ω (V/m), beside a limit in V/m alone: what a loop antenna shows there
 * @param margin limit over the stricter unmodulated reading (dB); negative if exceeded; none for lengths, and for
 *     something that isn't there
 * @param modulatedMargin the same at the crest of modulation, which a quasi-peak detector approaches
 * @param words remark, or the question to answer
 */
public record Check(
        Rule rule,
        String subject,
        OptionalDouble frequency,
        Outcome outcome,
        OptionalDouble limit,
        OptionalDouble distance,
        OptionalDouble found,
        OptionalDouble loopEquivalent,
        OptionalDouble margin,
        OptionalDouble modulatedMargin,
        String words) {}
