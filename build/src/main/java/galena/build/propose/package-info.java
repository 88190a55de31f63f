/**
 * From an intent and a drawer to a build: start values by the trade's rules of thumb, then changes one at a time, each by
 * prediction, then a proof by copies. Open {@link galena.build.propose.Propose} first; {@code docs/propose.md} tells the method.
 *
 * <p>Promised: the same wish, seed and drawer give the same build; a proposal that misses the intent says which line gives way and
 * which nearest intent it meets, by prediction; nothing that is on the disk is overwritten.
 *
 * <p>Absent on purpose: arrangements of parts. Those are {@link galena.build.pattern}'s; values alone are chosen here.
 */
@NullMarked
package galena.build.propose;

import org.jspecify.annotations.NullMarked;
