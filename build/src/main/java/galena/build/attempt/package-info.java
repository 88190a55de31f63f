/**
 * Builds as they might be: a text with values exchanged, solved and read as a copy of a spread is, and held against every line of the
 * intent. What proposing and substituting share. Open {@link galena.build.attempt.Tried} first, then
 * {@link galena.build.attempt.Looking}.
 *
 * <p>Promised: what is tried is a text that can be written as it stands; every figure is a prediction. Slack says how far a line is
 * from being missed, in the unit that {@link galena.build.attempt.Line} names beside it. Copies are
 * {@link galena.build.spread.Spread}'s own, depth is judged there and nowhere here.
 *
 * <p>Absent on purpose: which values to try. That is proposing's and substituting's.
 */
@NullMarked
package galena.build.attempt;

import org.jspecify.annotations.NullMarked;
