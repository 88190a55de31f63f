/**
 * How a reach is drawn: {@link galena.packet.reach.FieldChart} field with distance and the limits, {@link
 * galena.packet.reach.ListeningChart} what sets make of it. Absent on purpose: computing either.
 */
@NullMarked
package galena.packet.reach;

import org.jspecify.annotations.NullMarked;
