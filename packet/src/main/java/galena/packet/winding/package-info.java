/**
 * How a coil is drawn: {@link galena.packet.winding.QChart} its Q over medium waves. Absent on purpose: reckoning it.
 */
@NullMarked
package galena.packet.winding;

import org.jspecify.annotations.NullMarked;
