/**
 * Line charts as pure functions of a record: {@link galena.packet.chart.Chart} (open it first) to SVG by {@link
 * galena.packet.chart.ChartSvg}, to terminal text by {@link galena.packet.chart.ChartText}.
 *
 * <p>They look like a page of an engineer's notebook: paper, ink and thin ruled lines, names written at the lines' ends. Lines
 * differ by dashes and markers, so that they can be told apart in print and without colour. Values are SI; an axis says in which
 * unit it is written. The same record gives the same text, character for character, so that reviewed copies can be compared.
 * Absent on purpose: computing anything that is shown, and any interaction.
 */
@NullMarked
package galena.packet.chart;

import org.jspecify.annotations.NullMarked;
