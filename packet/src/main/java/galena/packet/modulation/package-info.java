/**
 * Drawings of how a build is modulated: {@link galena.packet.modulation.ModulationCharts}. Pure functions from record to chart;
 * nothing is computed here.
 */
@NullMarked
package galena.packet.modulation;

import org.jspecify.annotations.NullMarked;
