/**
 * Readings of a build as functions of everything that is not known of it: part values within tolerance, devices within their sheets,
 * strays, stray couplings, where an adjustment really stood, the supply. Each reading is taken under its own circumstances, its
 * probe connected; derivatives are exact, one adjoint solve a reading.
 *
 * <p>Every unknown is carried on a scale on which it is standard normal before anything is read, so that a fit has one law for all
 * of them and no bounds to mind. Promised: the readings come from the same equations as the prediction; a circuit that does not
 * oscillate is an outcome. Not here: what to make of readings (bench). Open first: {@link galena.build.readings.ReadingModel}.
 */
@NullMarked
package galena.build.readings;

import org.jspecify.annotations.NullMarked;
