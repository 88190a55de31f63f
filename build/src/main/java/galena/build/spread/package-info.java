/**
 * Predictions over everything that is not known of a build before it is built: tolerances, devices within their sheets,
 * temperature, state of the battery. Each drawn build is solved in full and trimmed as a builder would trim it. Draws come
 * from a Sobol sequence with a random shift that the seed defines, so that build number k of a seed is the same for ever and can
 * be called back by its number. Start at {@link galena.build.spread.Spread}.
 */
@NullMarked
package galena.build.spread;

import org.jspecify.annotations.NullMarked;
