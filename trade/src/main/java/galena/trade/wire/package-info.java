/**
 * Wire as a winder meets it: gauges, metals, solid and stranded wire, and what alternating current does inside one
 * straight strand.
 *
 * <p>Open {@link Wire} first. {@link SkinEffect} holds the exact Bessel solutions of a round conductor; {@link
 * WireTable} and {@link Metal} are data, each row with its source and its {@link galena.trade.source.Basis}: a row recalled from memory
 * says so and is to be shown as unverified. What neighbouring turns do to each other belongs to {@code trade.coil}.
 * Thickness of enamel is not guessed: the builder measures over the insulation.
 *
 * <p>Lengths in metres, resistivity in ohm metres, temperature in degrees Celsius, frequency in hertz. A value outside
 * what a formula or table covers is refused by {@link OutOfRange}, which names the range.
 */
@NullMarked
package galena.trade.wire;

import org.jspecify.annotations.NullMarked;
