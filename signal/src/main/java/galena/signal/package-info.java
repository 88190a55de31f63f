/**
 * Signals and their measures: WAV and IQ streams, spectra, envelope, depth, distortion and swing. One definition of
 * each figure, for predicted and for measured signals alike.
 *
 * <p>Promised: SI units; amplitudes are peak unless a name says {@code rms}; every measured number is an {@link
 * galena.signal.Estimate} with a 95 % interval that comes from the noise found in the same samples; arrays passed in
 * are read and never kept changed; no NaN comes out. Absent: files and their layouts, and anything about a build.
 *
 * <p>Open first: {@link galena.signal.modulation.ModulatedCarrier} for what a capture says, {@link
 * galena.signal.modulation.EnvelopePeriod} and {@link galena.signal.spectrum.PeriodicWaveform} for the definitions.
 */
@NullMarked
package galena.signal;

import org.jspecify.annotations.NullMarked;
