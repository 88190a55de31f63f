/**
 * What modulation does to a carrier, one definition of each figure for predicted and measured signals. Positive peak is
 * Emax/Ec − 1, negative peak 1 − Emin/Ec, along the carrier's own phase so that they hold past 100 %; Ec is the
 * unmodulated carrier or the mean envelope, and the result says which. Swing is peak Hz, 50 Hz to 5 kHz, with troughs
 * below 5 % of the carrier masked.
 * Open first: {@link galena.signal.modulation.ModulatedCarrier} (measured), {@link
 * galena.signal.modulation.EnvelopePeriod} (predicted).
 */
@NullMarked
package galena.signal.modulation;

import org.jspecify.annotations.NullMarked;
