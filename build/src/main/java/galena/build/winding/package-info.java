/**
 * Winding a coil: from what a builder says of former, wire and core to turns and all that follows, and from a trial winding back to
 * its core.
 *
 * <p>Belongs here: shapes as a builder measures them ({@link galena.build.winding.Shape}), wire as it stands on the reel ({@link
 * galena.build.winding.Reel}), the uncertainty that hands and rulers bring, and figures for a page. The physics is {@code
 * galena.trade.coil}'s and {@code galena.trade.ferrite}'s. Promised: what lies outside a formula's range is refused with the range;
 * figures that rest on recalled data say so. Open first: {@link galena.build.winding.Winder}.
 */
@NullMarked
package galena.build.winding;

import org.jspecify.annotations.NullMarked;
