/**
 * Values as builders meet them: the preferred value nearest to a reckoned one, what two parts of the drawer make, and what stands
 * printed on a part.
 *
 * <p>Belongs here: choosing a kind of part for a value, joining the drawer to the trade's search, listing every way a marking can
 * be read. The series and codes themselves are {@code galena.trade.preferred}'s. Promised: a marking that can mean several things
 * gives all of them. Open first: {@link galena.build.preferred.ValueSheet}.
 */
@NullMarked
package galena.build.preferred;

import org.jspecify.annotations.NullMarked;
