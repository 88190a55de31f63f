/**
 * How a guard report is drawn: {@link galena.packet.guard.SensitivityRanking} ranks its causes. Absent on purpose: finding them.
 */
@NullMarked
package galena.packet.guard;

import org.jspecify.annotations.NullMarked;
