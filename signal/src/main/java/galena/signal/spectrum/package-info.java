/**
 * Spectra: the Fourier transform (JTransforms), windows with their gains, and the harmonics of a periodic waveform.
 * Conventions: a harmonic's amplitude is its peak; dBc is 20 log of its ratio to the first harmonic's amplitude.
 * Open first: {@link galena.signal.spectrum.PeriodicWaveform}.
 */
@NullMarked
package galena.signal.spectrum;

import org.jspecify.annotations.NullMarked;
