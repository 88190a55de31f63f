/**
 * Programmes as samples: WAV in and out in blocks of constant memory ({@link galena.signal.audio.WavSource}, {@link
 * galena.signal.audio.WavSink}), rates times and over a whole number by polyphase filters ({@link
 * galena.signal.audio.Interpolator}, {@link galena.signal.audio.Decimator}), and a programme that nobody recorded ({@link
 * galena.signal.audio.InventedProgramme}). Full scale is 1.
 *
 * <p>Block methods allocate nothing. Absent on purpose: what is done with a programme. Open first: {@link
 * galena.signal.audio.WavSource}.
 */
@NullMarked
package galena.signal.audio;

import org.jspecify.annotations.NullMarked;
