/**
 * Plots of a report as SVG, in ink on paper: pure functions from a report to text, the same text every time. Each plot
 * names its quantity and units, and says in its description what it shows. Nothing is measured here.
 * Open first: {@link galena.bench.plot.Plots}.
 */
@NullMarked
package galena.bench.plot;

import org.jspecify.annotations.NullMarked;
