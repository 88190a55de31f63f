/**
 * Fitting lines to samples: least squares with the noise taken from what the fit leaves over, in the band where it
 * matters, and intervals for amplitudes near the noise. Knows nothing of carriers.
 * Open first: {@link galena.signal.fit.SeriesFit}.
 */
@NullMarked
package galena.signal.fit;

import org.jspecify.annotations.NullMarked;
