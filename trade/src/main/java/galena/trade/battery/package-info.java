/**
 * Batteries: electromotive force against state of charge, internal resistance, capacity, and hours at a current.
 *
 * <p>Belongs here: cells and blocks as data with sources, and packs of them in series. Does not belong here: charging.
 * Promises: state of charge is 1 when full and 0 when the delivered charge is spent; every curve held is a typical shape,
 * recalled and not measured, and says so by its basis; hours come as an interval where capacity does. Shorted cells
 * burn: fuse a pack, and charge lithium cells only behind their protection circuit. Open first: {@link
 * galena.trade.battery.Battery}.
 */
@NullMarked
package galena.trade.battery;

import org.jspecify.annotations.NullMarked;
