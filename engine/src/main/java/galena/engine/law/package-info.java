/**
 * The textbook equations of devices with their analytic derivatives, at one temperature: junction, square-law channel,
 * bipolar transport. Pure arithmetic on primitive numbers; nothing allocates, nothing knows nets or solvers.
 *
 * <p>Voltages and currents are those of the n-type device; the caller reverses signs for the other polarity. Results go to
 * an array at a given place, in the order that each law states. Source for the laws: S. M. Sze, Physics of Semiconductor
 * Devices, 2nd ed., Wiley 1981, ch. 2, 3 and 6; temperature laws ibid. and P. Antognetti and G. Massobrio, Semiconductor
 * Device Modeling, McGraw-Hill 1988, ch. 1 (both cited from memory). Start at {@link galena.engine.law.JunctionLaw}.
 */
@NullMarked
package galena.engine.law;

import org.jspecify.annotations.NullMarked;
