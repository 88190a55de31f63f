/**
 * Fields of small aerials, near and far: tuned coils as magnetic dipoles, short wires by their current.
 *
 * <p>Belongs here: {@link galena.trade.field.MagneticDipole} and {@link galena.trade.field.ElectricDipole} with all terms
 * of the field at any angle, moment and radiation resistance of loops ({@link galena.trade.field.Loop}), capacitance,
 * loading and radiation of a short wire over ground ({@link galena.trade.field.ShortWire}). Does not belong here: what a
 * rule allows. Signs and senses: time factor exp(+jωt); a moment in rms gives fields in rms, a peak one peak fields.
 * Medium waves are near field for tens of metres: λ/2π is 48 m at 1 MHz, so E/H is not 377 Ω there and nothing here
 * converts one into the other.
 *
 * <p>A magnetic dipole is taken in free space: conducting ground close by changes its field by up to a factor of two
 * either way, by the direction of its axis. The wire stands on perfect ground by its image.
 *
 * <p>Source of the fields: C. A. Balanis, Antenna Theory, chapters 4 and 5. Open first: {@link
 * galena.trade.field.Radiator}.
 */
@NullMarked
package galena.trade.field;

import org.jspecify.annotations.NullMarked;
