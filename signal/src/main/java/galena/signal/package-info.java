/**
 * Signals and their measures: WAV and IQ streams, spectra, envelope, depth, distortion and swing. One definition of
 * each figure, for predicted and for measured signals alike.
 */
@NullMarked
package galena.signal;

import org.jspecify.annotations.NullMarked;
