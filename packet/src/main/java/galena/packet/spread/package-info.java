/**
 * How a spread is drawn: {@link galena.packet.spread.SpreadChart} turns one quantity of it into a histogram. Absent on purpose: drawing
 * and solving copies.
 */
@NullMarked
package galena.packet.spread;

import org.jspecify.annotations.NullMarked;
