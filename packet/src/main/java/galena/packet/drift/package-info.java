/**
 * How a run from switch-on is drawn: {@link galena.packet.drift.DriftChart}. Absent on purpose: running it.
 */
@NullMarked
package galena.packet.drift;

import org.jspecify.annotations.NullMarked;
