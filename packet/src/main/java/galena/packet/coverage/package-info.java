/**
 * How a coverage is drawn: {@link galena.packet.coverage.CoverageChart} turns it into a chart. Absent on purpose: sweeping.
 */
@NullMarked
package galena.packet.coverage;

import org.jspecify.annotations.NullMarked;
