/**
 * Limits of regions for small unlicensed transmitters, and how a transmission stands to them.
 *
 * <p>Belongs here: rules as data, each with section, date, source and basis ({@link galena.trade.limit.RuleBook}); their
 * judgement in the quantity and at the distance that the region itself names. Does not belong here: advice whether
 * anything may be switched on. Promises: H is never turned into E by 377 Ω or the other way, for that is wrong by tens of
 * decibels at these distances; where a region states µV/m and its receiver reads them with a loop, the loop-equivalent
 * stands beside the true E and the stricter of the two rules; a rule from memory is marked unverified; a region whose
 * figures haven't been read is "not held". What can't be computed from a field, such as input power, is asked.
 *
 * <p>Figures held may be out of date or misread: the local regulator and licensed practice decide. Open first: {@link
 * galena.trade.limit.RuleBook}.
 */
@NullMarked
package galena.trade.limit;

import org.jspecify.annotations.NullMarked;
